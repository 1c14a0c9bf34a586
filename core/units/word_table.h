// SPDX-License-Identifier: GPL-3.0-or-later
// The words of an enumeration, both ways: one table in place of a switch here and a list there.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <type_traits>

namespace soakwright {

/// Words in the order of the values, from the first (0) to `last`.
template <typename Enum, Enum last>
struct WordTable {
  static constexpr std::size_t size = static_cast<std::size_t>(last) + 1;
  std::array<std::string_view, size> words;

  [[nodiscard]] constexpr std::string_view of(Enum value) const {
    return words[static_cast<std::size_t>(value)];
  }
  /// Returns nullopt for a word that is not in the table.
  [[nodiscard]] constexpr std::optional<Enum> named(std::string_view word) const {
    const auto found = std::find(words.begin(), words.end(), word);
    if (found == words.end()) return std::nullopt;
    return static_cast<Enum>(found - words.begin());
  }
};

/// Does not compile unless there is a word for each value up to `last`.
template <auto last, typename... Words>
constexpr auto word_table(Words... words) {
  using Enum = decltype(last);
  static_assert(sizeof...(words) == static_cast<std::size_t>(last) + 1, "one word for each value");
  return WordTable<Enum, last>{{std::string_view{words}...}};
}

}  // namespace soakwright
