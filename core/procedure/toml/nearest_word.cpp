// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/nearest_word.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace soakwright {
namespace {

/// Fewest single letters to add, drop or change (Levenshtein).
std::size_t letters_apart(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t change = diagonal + (a[i] == b[j] ? 0U : 1U);
      diagonal = row[j + 1];
      row[j + 1] = std::min({change, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row.back();
}

}  // namespace

std::optional<NearestWord> nearest_word(std::string_view found, const std::vector<std::string>& known) {
  constexpr std::size_t kLongestWord = 40;  // a longer word is near to nothing of ours
  if (found.empty() || found.size() > kLongestWord) return std::nullopt;
  const std::string* nearest = nullptr;
  std::size_t fewest = 0;
  for (const std::string& word : known) {
    const std::size_t letters = letters_apart(found, word);
    if (nearest != nullptr && letters >= fewest) continue;
    fewest = letters;
    nearest = &word;
  }
  if (nearest == nullptr) return std::nullopt;
  // With half of its letters changed it would be another word.
  return NearestWord{*nearest, fewest <= (found.size() + 2) / 3 && 2 * fewest < nearest->size()};
}

}  // namespace soakwright
