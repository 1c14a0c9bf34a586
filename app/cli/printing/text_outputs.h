// SPDX-License-Identifier: GPL-3.0-or-later
// Results as text: to files, or one of them to standard output, where nothing else then goes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/cli/arguments.h"
#include "core/problems/problem.h"

namespace soakwright::cli {

/// Whether a result is to go to standard output.
bool text_to_standard_output(const Arguments& arguments);

struct TextOutput {
  const std::string& path;  ///< "-" is standard output; empty: not wanted
  const std::string& text;
};

/// Files first. Returns nullopt if all are written.
std::optional<Problem> write_text_outputs(const std::vector<TextOutput>& outputs);

}  // namespace soakwright::cli
