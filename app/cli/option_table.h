// SPDX-License-Identifier: GPL-3.0-or-later
// Commands and options as a value: help, the manual page and the completion of shells are all made from it.
#pragma once

#include <string>
#include <vector>

namespace soakwright::cli {

struct OptionWords {
  std::vector<std::string> names;  ///< "--json"; "-h", "--help"
  std::string value;               ///< "FILE", "C|F"; empty where the option takes none
  std::string about;
  [[nodiscard]] const std::string& longest() const { return names.back(); }
  /// The words that the value may be; empty where it is something else.
  [[nodiscard]] std::vector<std::string> choices() const;
};

struct ArgumentWords {
  std::string name;  ///< "LOG"
  std::string about;
};

struct CommandWords {
  std::string name;  ///< empty: the program itself
  std::string about;
  std::vector<ArgumentWords> arguments;
  std::vector<OptionWords> options;
};

/// The program, then its commands in the order of --help. (arguments.cpp)
std::vector<CommandWords> option_table();

/// The exit codes as --help has them, without its first words.
std::string exit_codes_text();

/// The manual page (section 1) in the man macros of groff_man(7).
std::string manual_page(const std::vector<CommandWords>& commands, const std::string& version);

/// Completion for a shell, as the shell reads it.
std::string bash_completion(const std::vector<CommandWords>& commands);
std::string zsh_completion(const std::vector<CommandWords>& commands);
std::string fish_completion(const std::vector<CommandWords>& commands);

}  // namespace soakwright::cli
