// SPDX-License-Identifier: GPL-3.0-or-later
// Built and run by the build alone: writes the manual page and the completion of shells, made from the table
// of options.
//   made_texts FOLDER
#include <cstdio>
#include <fstream>
#include <string>
#include <utility>

#include "app/cli/option_table.h"

int main(int argc, char** argv) {
  using namespace soakwright::cli;
  if (argc != 2) return 64;
  const auto commands = option_table();
  const std::pair<const char*, std::string> files[] = {
      {"soakwright.1", manual_page(commands, SOAKWRIGHT_VERSION)},
      {"soakwright.bash", bash_completion(commands)},
      {"_soakwright", zsh_completion(commands)},
      {"soakwright.fish", fish_completion(commands)},
  };
  for (const auto& [name, text] : files) {
    std::ofstream file(std::string(argv[1]) + "/" + name, std::ios::binary);
    file << text;
    if (!file.flush()) {
      std::fprintf(stderr, "made_texts: %s/%s cannot be written\n", argv[1], name);
      return 73;
    }
  }
  return 0;
}
