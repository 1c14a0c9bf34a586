// SPDX-License-Identifier: GPL-3.0-or-later
// A TOML file as a tree of plain values, each with its line. The only place that knows the TOML library is
// the .cpp beside this header.
//
// Decides nothing about what a key means: that is table_reader.h and the file parsers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/problems/problem.h"
#include "core/units/local_time.h"

namespace soakwright {

struct TomlValue;
struct TomlEntry;

/// A piece of the text, in bytes from its beginning; end not included.
struct TomlPlace {
  std::size_t begin = 0, end = 0;
};

/// How a table stands in the text: under its header `[a]` or `[[a]]`, between braces, or only as the front of
/// dotted keys.
enum class TomlTableForm { header, braces, dotted };

struct TomlArray {
  std::vector<TomlValue> values;
};

struct TomlTable {
  std::vector<TomlEntry> entries;  ///< by name
  /// Null where there is none.
  [[nodiscard]] const TomlEntry* find(std::string_view key) const;
  TomlTableForm form = TomlTableForm::header;
};

/// A kind of value that none of our files uses.
enum class TomlForeign { date_out_of_calendar, time_without_date, moment_with_offset };

struct TomlValue {
  std::size_t line = 0;
  TomlPlace place;  ///< of a table under a header: the header
  std::variant<std::string, std::int64_t, double, bool, CivilDate, LocalTime, TomlForeign, TomlArray,
               TomlTable>
      value;

  template <typename T>
  [[nodiscard]] const T* as() const {
    return std::get_if<T>(&value);
  }
};

struct TomlEntry {
  std::string key;
  std::size_t line = 0;
  TomlPlace key_place;
  TomlValue value;
};

/// The text as a table; one problem with its line where it is not TOML.
Result<TomlTable> parse_toml(std::string_view text, const std::string& file);

/// Text of the file on one line of a message: cut where it is long, spaces for control characters.
std::string shown(std::string_view text);
}  // namespace soakwright
