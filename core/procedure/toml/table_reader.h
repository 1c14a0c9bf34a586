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
#include "core/procedure/toml/toml_tree.h"

namespace soakwright {

/// The problems of one file as they are met.
class Complaints {
 public:
  explicit Complaints(std::string file) : file_(std::move(file)) {}
  void add(std::size_t line, std::string what, std::string help);
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

  /// Complains "`name` …" at the value's line.
  std::nullopt_t refuse(const std::string& what, std::string help) const;
  /// Complains that the value is of another kind than what `help` asks for.
  std::nullopt_t refuse_kind(std::string help) const;
};

/// `Did you mean` with the nearest of `known`, or all of them where none is near; then also the nearest if it
/// is wanted `even_if_far`.
std::string suggestion(std::string_view found, const std::vector<std::string>& known,
                       bool even_if_far = false);

class TableReader {
 public:
  /// `where` names the table in messages: "the procedure", "a hold stage".
  TableReader(const TomlTable& table, std::size_t line, std::string where, Complaints& complaints)
      : table_(table), line_(line), where_(std::move(where)), complaints_(complaints) {}

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
  bool table(std::string_view key, const std::string& where, const Read& read) {
    const TomlEntry* const found = ask(key);
    if (!found) return false;
    const auto* const inner = found->value.as<TomlTable>();
    if (!inner) {
      not_a_table(*found, "[", "]");
      return false;
    }
    read_inner(*inner, found->value.line, where, read);
    return true;
  }

  /// `[[key]]`: any number of tables, each read by `read(TableReader&)`.
  template <typename Read>
  void each(std::string_view key, const std::string& where, const Read& read) {
    const TomlEntry* const found = ask(key);
    if (!found) return;
    const auto* const list = found->value.as<TomlArray>();
    if (!list) return not_a_table(*found, "[[", "]]");
    for (const TomlValue& item : list->values) {
      const auto* const inner = item.as<TomlTable>();
      if (!inner) return not_a_table(*found, "[[", "]]");
      read_inner(*inner, item.line, where, read);
    }
  }

  /// Complains where both keys were read and the first value is not below the second.
  template <typename T>
  void must_rise(std::string_view low, const T& low_value, std::string_view high, const T& high_value) {
    if (sound(low) && sound(high) && !(low_value < high_value)) upside_down(low, high, "below");
  }
  /// The same where equal values still make sense.
  template <typename T>
  void must_not_fall(std::string_view low, const T& low_value, std::string_view high, const T& high_value) {
    if (sound(low) && sound(high) && high_value < low_value) upside_down(low, high, "at most");
  }

  /// Complains about `key` where it is there, with where it belongs instead.
  void elsewhere(std::string_view key, std::string help);
  /// Complains about keys that nothing asked for.
  void finish();
  /// Takes every key as known, where what has gone wrong makes the others mean nothing.
  void skip_the_rest() { skip_ = true; }

  void complain(std::size_t line, std::string what, std::string help) {
    complaints_.add(line, std::move(what), std::move(help));
  }
  [[nodiscard]] const TomlEntry* entry(std::string_view key) const;
  /// True where the key was there and its value was read.
  [[nodiscard]] bool sound(std::string_view key) const {
    return std::find(sound_.begin(), sound_.end(), key) != sound_.end();
  }
  /// Of the key where it is there, else of the table.
  [[nodiscard]] std::size_t line_of(std::string_view key) const;
  [[nodiscard]] std::size_t line() const { return line_; }
  void call(std::string where) { where_ = std::move(where); }

 private:
  const TomlEntry* ask(std::string_view key);
  void missing(std::string_view key);
  void not_a_table(const TomlEntry& found, std::string_view open, std::string_view close);
  void upside_down(std::string_view low, std::string_view high, std::string_view relation);
  template <typename Read>
  void read_inner(const TomlTable& inner, std::size_t line, const std::string& where, const Read& read) {
    TableReader reader{inner, line, where, complaints_};
    read(reader);
    reader.finish();
  }

  const TomlTable& table_;
  std::size_t line_;
  std::string where_;
  Complaints& complaints_;
  std::vector<std::string> asked_;
  std::vector<std::string> elsewhere_;
  std::vector<std::string> limits_;
  std::vector<std::string> sound_;
  bool skip_ = false;
};

/// One file of ours from its text: TOML, then the version line `soakwright = "KIND 1"`, then `read`, which
/// gives the value; or all problems.
template <typename T, typename Read>
Result<T> read_document(std::string_view text, const std::string& file, const std::string& kind,
                        const Read& read);

/// The version line. False, with a complaint, where the rest cannot be a file of this kind.
bool is_version_1(TableReader& in, const std::string& kind);

template <typename T, typename Read>
Result<T> read_document(std::string_view text, const std::string& file, const std::string& kind,
                        const Read& read) {
  return caught(file, [&]() -> Result<T> {
    const Result<TomlTable> tree = parse_toml(text, file);
    if (!tree) return tree.problems();
    Complaints complaints{file};
    TableReader in{tree.value(), 1, std::string{"the "}.append(kind), complaints};
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
