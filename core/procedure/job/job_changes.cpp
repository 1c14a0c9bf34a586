// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/job_changes.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>

#include <fmt/format.h>

#include "core/procedure/toml/toml_text.h"
#include "core/procedure/toml/toml_tree.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

/// Keys whose values are no texts (TOML 1.0: integer, local date, local date-time).
std::string written(const JobChange& change) {
  const bool of_import = !change.column && change.table == "import";
  const bool bare =
      (of_import && (change.key == "header_line" || change.key == "date" || change.key == "start")) ||
      (!change.column && change.table.empty() && change.key == "cycle") || change.key == "valid_until";
  return bare ? *change.value : toml_text(*change.value);
}

/// A value of an added entry: moments may be seconds, which are no text.
std::string written_in_entry(const std::string& key, const std::string& value) {
  const bool moment = key == "from" || key == "to" || key == "at";
  return moment && parse_number(value) ? value : toml_text(value);
}

/// Column names match whatever their case and outer spaces.
std::string folded(std::string_view name) {
  std::string out{trimmed(name)};
  for (char& letter : out)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return out;
}

const TomlEntry* entry_of(const TomlTable& table, std::string_view key) {
  for (const TomlEntry& entry : table.entries)
    if (entry.key == key) return &entry;
  return nullptr;
}

/// Where a value and all that is under it ends.
std::size_t last_byte_of(const TomlValue& value) {
  std::size_t end = value.place.end;
  const auto* table = value.as<TomlTable>();
  if (table != nullptr && table->form != TomlTableForm::braces)
    for (const TomlEntry& entry : table->entries) end = std::max(end, last_byte_of(entry.value));
  return end;
}

/// As the text's first line has it.
std::string line_end_of(std::string_view text) {
  const std::size_t end = text.find('\n');
  return end != std::string_view::npos && end > 0 && text[end - 1] == '\r' ? "\r\n" : "\n";
}

class JobText {
 public:
  JobText(std::string_view text, const TomlTable& tree)
      : text_(text), tree_(tree), line_end_(line_end_of(text)) {}

  std::string with(const JobChange& change) {
    if (change.added) {
      add_to_list(*change.added);
      return text_;
    }
    if (!change.column && change.table.empty()) {
      if (entry_of(tree_, change.key) != nullptr)
        change_in({}, tree_, change);
      else if (change.value)
        add_before_tables(change.key + " = " + written(change));
      return text_;
    }
    if (!change.column) {
      const TomlEntry* const entry = entry_of(tree_, change.table);
      const auto* const table = entry != nullptr ? entry->value.as<TomlTable>() : nullptr;
      if (table != nullptr)
        change_in(entry->value, *table, change);
      else if (change.value)
        append("[" + change.table + "]" + line_end_ + change.key + " = " + written(change) + line_end_);
      return text_;
    }
    const TomlEntry* const all = entry_of(tree_, "thermocouple");
    const auto* const list = all != nullptr ? all->value.as<TomlArray>() : nullptr;
    if (list != nullptr)
      for (const TomlValue& item : list->values) {
        const auto* const table = item.as<TomlTable>();
        if (table == nullptr || !is_for(*table, *change.column)) continue;
        change_in(item, *table, change);
        return text_;
      }
    if (change.value) add_entry(all, list, change);
    return text_;
  }

 private:
  static bool is_for(const TomlTable& table, const ColumnNames& column) {
    const TomlEntry* const said = entry_of(table, "column");
    if (said == nullptr) return false;
    const auto* const text = said->value.as<std::string>();
    const auto* const number = said->value.as<std::int64_t>();
    if (text == nullptr && number == nullptr) return false;
    const std::string wanted = text != nullptr ? folded(*text) : std::to_string(*number);
    return std::any_of(column.names.begin(), column.names.end(),
                       [&](const std::string& name) { return folded(name) == wanted; });
  }

  void change_in(const TomlValue& value, const TomlTable& table, const JobChange& change) {
    const TomlEntry* const old = entry_of(table, change.key);
    if (old != nullptr && change.value) {
      const TomlPlace place = old->value.place;
      text_.replace(place.begin, place.end - place.begin, written(change));
    } else if (old != nullptr) {
      table.form == TomlTableForm::braces ? take_out_of_braces(table, *old) : take_line_out(*old);
    } else if (change.value) {
      add_key(value, table, change);
    }
  }

  /// The statement goes; a comment behind it stays, on a line of its own.
  void take_line_out(const TomlEntry& old) {
    const std::size_t begin = line_begin(old.key_place.begin);
    const std::size_t end = old.value.place.end;
    const std::size_t comment = text_.find_first_not_of(" \t", end);
    if (comment != std::string::npos && text_[comment] == '#')
      text_.erase(begin, comment - begin);
    else
      text_.erase(begin, line_after(end) - begin);
  }

  void take_out_of_braces(const TomlTable& table, const TomlEntry& old) {
    std::size_t begin = old.key_place.begin;
    std::size_t end = old.value.place.end;
    const std::size_t next = text_.find_first_not_of(" \t", end);
    if (next != std::string::npos && text_[next] == ',') {
      end = text_.find_first_not_of(" \t", next + 1);
    } else if (table.entries.size() > 1) {
      begin = text_.find_last_of(',', begin);
    }
    text_.erase(begin, end - begin);
  }

  /// Behind the last key that stands before every table.
  void add_before_tables(const std::string& line) {
    const TomlEntry* last = nullptr;
    for (const TomlEntry& entry : tree_.entries) {
      const auto* table = entry.value.as<TomlTable>();
      if (const auto* const list = entry.value.as<TomlArray>(); list != nullptr && !list->values.empty())
        table = list->values.front().as<TomlTable>();
      if (table != nullptr && table->form == TomlTableForm::header) continue;
      if (last == nullptr || last_byte_of(entry.value) > last_byte_of(last->value)) last = &entry;
    }
    if (last != nullptr)
      insert_line_after(last_byte_of(last->value), line);
    else
      text_.insert(0, line + line_end_);
  }

  void add_key(const TomlValue& value, const TomlTable& table, const JobChange& change) {
    const std::string line = change.key + " = " + written(change);
    const TomlEntry* last = nullptr;
    for (const TomlEntry& entry : table.entries)
      if (last == nullptr || last_byte_of(entry.value) > last_byte_of(last->value)) last = &entry;
    if (table.form == TomlTableForm::braces) {
      if (last != nullptr)
        text_.insert(last_byte_of(last->value), ", " + line);
      else
        text_.replace(value.place.begin, value.place.end - value.place.begin, "{ " + line + " }");
      return;
    }
    if (last == nullptr) return insert_line_after(value.place.end, line);
    // As the key before it is written: indented as it is, and behind the same dotted front.
    const std::size_t begin = line_begin(last->key_place.begin);
    std::string front = text_.substr(begin, last->key_place.begin - begin);
    if (table.form != TomlTableForm::dotted && front.find_first_not_of(" \t") != std::string::npos)
      front.clear();
    insert_line_after(last_byte_of(last->value), front + line);
  }

  void add_entry(const TomlEntry* all, const TomlArray* list, const JobChange& change) {
    const std::string column = "column = " + toml_text(change.column->names.front());
    const std::string key = change.key + " = " + written(change);
    const bool has_items = list != nullptr && !list->values.empty();
    const auto* const first = has_items ? list->values.front().as<TomlTable>() : nullptr;
    if (list != nullptr && (!has_items || (first != nullptr && first->form == TomlTableForm::braces))) {
      const std::string braces = "{ " + column + ", " + key + " }";
      if (has_items)
        text_.insert(list->values.back().place.end, ", " + braces);
      else
        text_.replace(all->value.place.begin, all->value.place.end - all->value.place.begin,
                      "[" + braces + "]");
      return;
    }
    std::string entry;
    entry.append("[[thermocouple]]").append(line_end_).append(column).append(line_end_).append(key);
    if (has_items) {
      const std::size_t end = last_byte_of(list->values.back());
      insert_line_after(end, line_end_ + entry);
    } else {
      append(entry + line_end_);
    }
  }

  void add_to_list(const AddedEntry& added) {
    const TomlEntry* const all = entry_of(tree_, added.list);
    const auto* const list = all != nullptr ? all->value.as<TomlArray>() : nullptr;
    const bool has_items = list != nullptr && !list->values.empty();
    const auto* const first = has_items ? list->values.front().as<TomlTable>() : nullptr;
    std::string keys;
    const bool in_braces =
        list != nullptr && (!has_items || (first != nullptr && first->form == TomlTableForm::braces));
    for (const auto& [key, value] : added.keys) {
      if (!keys.empty()) keys += in_braces ? ", " : line_end_;
      keys += key + " = " + written_in_entry(key, value);
    }
    if (in_braces) {
      const std::string braces = "{ " + keys + " }";
      if (has_items)
        text_.insert(list->values.back().place.end, ", " + braces);
      else
        text_.replace(all->value.place.begin, all->value.place.end - all->value.place.begin,
                      "[" + braces + "]");
      return;
    }
    const std::string entry = "[[" + added.list + "]]" + line_end_ + keys;
    if (has_items)
      insert_line_after(last_byte_of(list->values.back()), line_end_ + entry);
    else
      append(entry + line_end_);
  }

  void append(const std::string& block) {
    if (!text_.empty() && text_.back() != '\n') text_ += line_end_;
    if (!text_.empty()) text_ += line_end_;
    text_ += block;
  }

  /// Behind the line in which `at` lies, its comment included.
  void insert_line_after(std::size_t at, const std::string& line) {
    const std::size_t next = line_after(at);
    if (next == text_.size() && (text_.empty() || text_.back() != '\n'))
      text_ += line_end_ + line;
    else
      text_.insert(next, line + line_end_);
  }

  [[nodiscard]] std::size_t line_begin(std::size_t at) const {
    if (at == 0) return 0;
    const std::size_t end = text_.rfind('\n', at - 1);
    return end == std::string::npos ? 0 : end + 1;
  }
  [[nodiscard]] std::size_t line_after(std::size_t at) const {
    const std::size_t end = text_.find('\n', at);
    return end == std::string::npos ? text_.size() : end + 1;
  }

  std::string text_;
  const TomlTable& tree_;
  std::string line_end_;
};

}  // namespace

Result<std::string> changed_job(std::string_view text, const JobChange& change, const std::string& file) {
  if (change.whole) return *change.whole;
  const auto tree = parse_toml(text, file);
  if (!tree) return tree.problems();
  return JobText{text, tree.value()}.with(change);
}

Result<std::string> changed_job(std::string_view text, const std::vector<JobChange>& changes,
                                const std::string& file) {
  Result<std::string> changed = std::string{text};
  for (const JobChange& change : changes) {
    changed = changed_job(changed.value(), change, file);
    if (!changed) return changed;
  }
  return changed;
}

Result<std::vector<JobChange>> given_in_job(std::string_view text, const std::string& file) {
  const auto tree = parse_toml(text, file);
  if (!tree) return tree.problems();
  std::vector<JobChange> given;
  const TomlEntry* const reading = entry_of(tree.value(), "import");
  const auto* const table = reading != nullptr ? reading->value.as<TomlTable>() : nullptr;
  if (table == nullptr) return given;
  for (const TomlEntry& entry : table->entries)
    if (const auto* const words = entry.value.as<std::string>())
      given.push_back({std::nullopt, entry.key, *words});
    else if (const auto* const number = entry.value.as<std::int64_t>())
      given.push_back({std::nullopt, entry.key, std::to_string(*number)});
    else if (const auto* const day = entry.value.as<CivilDate>())
      given.push_back(
          {std::nullopt, entry.key, fmt::format("{:04}-{:02}-{:02}", day->year, day->month, day->day)});
    else if (const auto* const moment = entry.value.as<LocalTime>())
      given.push_back({std::nullopt, entry.key, moment->iso()});
  return given;
}

std::string new_job_text(std::string_view log, std::string_view procedure) {
  std::string text = "soakwright = \"job 1\"\n";
  if (!log.empty()) text += "log = " + toml_text(log) + "\n";
  if (!procedure.empty()) text += "procedure = " + toml_text(procedure) + "\n";
  return text;
}

}  // namespace soakwright
