// SPDX-License-Identifier: GPL-3.0-or-later
// Edits in the text of a TOML file at the places that the parser reports: a key set or taken out, an entry of
// a list added, taken out or moved.
//
// Comments, order and line ends of everything else stay as they are, to the byte. Each edit gives the whole
// new text. A text that is not TOML is a problem; what the keys mean is the file parsers' to say.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/problems/problem.h"

namespace soakwright {

/// The keys before every table (`name` empty), the table `[name]`, or the entry `entry`, from 0, of
/// `[[name]]`.
struct TomlTableName {
  std::string name;
  std::optional<std::size_t> entry = std::nullopt;
  bool operator==(const TomlTableName&) const = default;
};

/// A key and its value as TOML writes it.
struct TomlKey {
  std::string key;
  std::string value;
};

/// `value` is as TOML writes it; none takes the key out. A table that is not there is made; an entry of a
/// list that is not there changes nothing.
Result<std::string> with_toml_key(std::string_view text, const TomlTableName& table, const std::string& key,
                                  const std::optional<std::string>& value, const std::string& file);
/// A new entry behind those that there are.
Result<std::string> with_toml_entry(std::string_view text, const std::string& list,
                                    const std::vector<TomlKey>& keys, const std::string& file);
/// The entry goes, and the comments directly above it with it.
Result<std::string> without_toml_entry(std::string_view text, const std::string& list, std::size_t entry,
                                       const std::string& file);
/// The entry and the one behind it change places, each with the comments directly above it.
Result<std::string> with_toml_entries_swapped(std::string_view text, const std::string& list,
                                              std::size_t entry, const std::string& file);

/// A key of a table as it stands in the text.
struct TomlShownKey {
  std::string key;
  std::string value;     ///< a text without its quotes, anything else as it is written
  std::size_t line = 0;  ///< of the key, from 1
  bool spread = false;   ///< a table of its own under the table: `value` is empty
};

/// The keys before every table come first, then the tables in the order of the text.
struct TomlShownTable {
  TomlTableName table;
  std::size_t line = 0;  ///< of its header; 1 for the keys before every table
  std::vector<TomlShownKey> keys;
  [[nodiscard]] const TomlShownKey* find(std::string_view key) const;
};
Result<std::vector<TomlShownTable>> shown_toml_tables(std::string_view text, const std::string& file);

/// What a person types for a value: as it is where TOML reads one value of it (590, { over = 5500 },
/// 2031-09-30), else as a text (95 min).
std::string toml_as_typed(std::string_view typed);
/// What a person types, as a text whatever it looks like.
std::string toml_words(std::string_view typed);

}  // namespace soakwright
