// SPDX-License-Identifier: GPL-3.0-or-later
// Reading a table of a TOML file key by key, each key named once with how its value is read.
//
//   in.must("low", temperature, hold.low);      // a key that has to be there
//   in.may("high", temperature, hold.high);     // one that may be absent
//   in.limit("time_min", duration, hold.time);  // one that may be absent and sets a requirement
//
// A key that no line asked for is unknown: finish() says so and names the nearest that was asked for. Every
// problem is collected with its line; reading goes on, so that one answer holds all problems of a file.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/problems/caught.h"
#include "core/problems/problem.h"
#include "core/problems/problem_words.h"
#include "core/procedure/toml/table_name.h"
#include "core/procedure/toml/toml_tree.h"

namespace soakwright {

/// The problems of one file as they are met.
class Complaints {
 public:
  explicit Complaints(std::string file) : file_(std::move(file)) {}
  void add(std::size_t line, ProblemWords words);
  [[nodiscard]] bool empty() const { return problems_.empty(); }
  [[nodiscard]] std::size_t count() const { return problems_.size(); }
  [[nodiscard]] const std::string& file() const { return file_; }
  /// In the order of lines.
  [[nodiscard]] Problems in_order() const;

 private:
  std::string file_;
  Problems problems_;
};

/// One value on its way to a type of ours: the value, what it is called, and where to complain. A way to read
/// a value is anything that takes a FoundValue and gives an optional; where it gives nothing, it has
/// complained.
struct FoundValue {
  const TomlValue& value;
  std::string name;
  Complaints& complaints;

  /// Complains at the value's line.
  std::nullopt_t refuse(ProblemWords words) const;
};

class TableReader {
 public:
  TableReader(const TomlTable& table, std::size_t line, TableName name, Complaints& complaints)
      : table_(table), line_(line), name_(std::move(name)), complaints_(complaints) {}

  template <typename Read, typename Target>
  bool must(std::string_view key, const Read& read, Target& target) {
    if (may(key, read, target)) return true;
    if (!entry(key)) missing(key);
    return false;
  }

  /// True where the key is there and its value was read.
  template <typename Read, typename Target>
  bool may(std::string_view key, const Read& read, Target& target) {
    const TomlEntry* const found = ask(key);
    if (!found) return false;
    auto value = read(FoundValue{found->value, std::string{key}, complaints_});
    if (!value) return false;
    target = std::move(*value);
    sound_.emplace_back(key);
    return true;
  }

  template <typename Read, typename Target>
  bool limit(std::string_view key, const Read& read, Target& target) {
    limits_.emplace_back(key);
    return may(key, read, target);
  }
  /// Complains where none of the keys read with limit() is there.
  void must_have_a_limit();

  /// `[key]`: one table, read by `read(TableReader&)`.
  template <typename Read>
  bool table(std::string_view key, const TableName& name, const Read& read) {
    const TomlEntry* const found = ask(key);
    if (!found) return false;
    const auto* const inner = found->value.as<TomlTable>();
    if (!inner) {
      not_a_table(*found);
      return false;
    }
    read_inner(*inner, found->value.line, name, read);
    return true;
  }

  /// `[[key]]`: any number of tables, each read by `read(TableReader&)`.
  template <typename Read>
  void each(std::string_view key, const TableName& name, const Read& read) {
    const TomlEntry* const found = ask(key);
    if (!found) return;
    const auto* const list = found->value.as<TomlArray>();
    if (!list) return not_a_list_of_tables(*found);
    for (const TomlValue& item : list->values) {
      const auto* const inner = item.as<TomlTable>();
      if (!inner) return not_a_list_of_tables(*found);
      read_inner(*inner, item.line, name, read);
    }
  }

  /// Complains where both keys were read and the first value is not below the second.
  template <typename T>
  void must_rise(std::string_view low, const T& low_value, std::string_view high, const T& high_value) {
    if (sound(low) && sound(high) && !(low_value < high_value)) not_below(low, high);
  }
  /// The same where equal values still make sense.
  template <typename T>
  void must_not_fall(std::string_view low, const T& low_value, std::string_view high, const T& high_value) {
    if (sound(low) && sound(high) && high_value < low_value) above(low, high);
  }

  /// Complains about `key` if it is there; `words` say where it belongs.
  void elsewhere(std::string_view key, ProblemWords words);
  /// Complains about keys that nothing asked for.
  void finish();
  /// Takes every key as known, where what has gone wrong makes the others mean nothing.
  void skip_the_rest() { skip_ = true; }

  void complain(std::size_t line, ProblemWords words) { complaints_.add(line, std::move(words)); }
  [[nodiscard]] const TomlEntry* entry(std::string_view key) const;
  /// True where the key was there and its value was read.
  [[nodiscard]] bool sound(std::string_view key) const {
    return std::find(sound_.begin(), sound_.end(), key) != sound_.end();
  }
  /// Of the key where it is there, else of the table.
  [[nodiscard]] std::size_t line_of(std::string_view key) const;
  [[nodiscard]] std::size_t line() const { return line_; }
  void call(TableName name) { name_ = std::move(name); }

 private:
  const TomlEntry* ask(std::string_view key);
  void missing(std::string_view key);
  void not_a_table(const TomlEntry& found);
  void not_a_list_of_tables(const TomlEntry& found);
  void not_below(std::string_view low, std::string_view high);
  void above(std::string_view low, std::string_view high);
  template <typename Read>
  void read_inner(const TomlTable& inner, std::size_t line, const TableName& name, const Read& read) {
    TableReader reader{inner, line, name, complaints_};
    read(reader);
    reader.finish();
  }

  const TomlTable& table_;
  std::size_t line_;
  TableName name_;
  Complaints& complaints_;
  std::vector<std::string> specified_;
  std::vector<std::string> elsewhere_;
  std::vector<std::string> limits_;
  std::vector<std::string> sound_;
  bool skip_ = false;
};

/// One file of ours from its text: TOML, then the version line `soakwright = "KIND 1"`, then `read`, which
/// gives the value; or all problems.
template <typename T, typename Read>
Result<T> read_document(std::string_view text, const std::string& file, TomlFileKind kind, const Read& read);

/// The version line. False, with a complaint, where the rest cannot be a file of this kind.
bool is_version_1(TableReader& in, TomlFileKind kind);

template <typename T, typename Read>
Result<T> read_document(std::string_view text, const std::string& file, TomlFileKind kind, const Read& read) {
  return caught(file, [&]() -> Result<T> {
    const Result<TomlTable> tree = parse_toml(text, file);
    if (!tree) return tree.problems();
    Complaints complaints{file};
    TableReader in{tree.value(), 1, TableName::top_of(kind), complaints};
    T value;
    if (is_version_1(in, kind)) {
      read(in, value);
      in.finish();
    }
    if (!complaints.empty()) return complaints.in_order();
    return value;
  });
}

}  // namespace soakwright
