// SPDX-License-Identifier: GPL-3.0-or-later
// The tables of a TOML file as their text has them, for a form: what each key says, right or wrong, and in
// which line. What the keys mean is the file parsers' to say.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
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

}  // namespace soakwright
