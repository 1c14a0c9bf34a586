// SPDX-License-Identifier: GPL-3.0-or-later
// Of the words that are known, the one that a misspelt word was meant for.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace soakwright {

struct NearestWord {
  std::string word;
  bool is_near = false;  ///< few enough letters apart to be what was meant
};

/// Nullopt if nothing is known, or if `found` is empty or longer than any word of ours.
std::optional<NearestWord> nearest_word(std::string_view found, const std::vector<std::string>& known);

}  // namespace soakwright
