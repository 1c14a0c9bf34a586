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
#include "core/procedure/toml/toml_shown.h"

namespace soakwright {

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
/// The table under its header goes, and the comments directly above it with it. A table that is written any
/// other way stays.
Result<std::string> without_toml_table(std::string_view text, const std::string& table,
                                       const std::string& file);
/// The entry and the one behind it change places, each with the comments directly above it.
Result<std::string> with_toml_entries_swapped(std::string_view text, const std::string& list,
                                              std::size_t entry, const std::string& file);

/// What a person types for a value: as it is where TOML reads one value of it (590, { over = 5500 },
/// 2031-09-30), else as a text (95 min).
std::string toml_as_typed(std::string_view typed);
/// What a person types, as a text whatever it looks like.
std::string toml_words(std::string_view typed);

}  // namespace soakwright
