// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/printing/text_outputs.h"

#include "app/cli/printing/standard_output.h"
#include "core/system/atomic_file.h"

namespace soakwright::cli {

bool text_to_standard_output(const Arguments& arguments) {
  return arguments.json == "-" || arguments.csv == "-" || arguments.readings == "-";
}

std::optional<Problem> write_text_outputs(const std::vector<TextOutput>& outputs) {
  for (const TextOutput& output : outputs)
    if (!output.path.empty() && output.path != "-")
      if (auto problem = write_file_whole(output.path, output.text)) return problem;
  for (const TextOutput& output : outputs)
    if (output.path == "-") return write_standard_output(output.text);
  return std::nullopt;
}

}  // namespace soakwright::cli
