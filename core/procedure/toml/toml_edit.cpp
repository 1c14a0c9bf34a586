// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/toml_edit.h"

#include <algorithm>

#include "core/procedure/toml/toml_text.h"
#include "core/procedure/toml/toml_tree.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

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

class EditedText {
 public:
  EditedText(std::string_view text, const TomlTable& tree)
      : text_(text), tree_(tree), line_end_(line_end_of(text)) {}

  std::string with_key(const TomlTableName& place, const std::string& key,
                       const std::optional<std::string>& value) {
    if (place.entry) {
      const auto* const list = list_of(place.name);
      const auto* const table = list != nullptr && *place.entry < list->values.size()
                                    ? list->values[*place.entry].as<TomlTable>()
                                    : nullptr;
      if (table != nullptr) change_in(list->values[*place.entry], *table, key, value);
    } else if (place.name.empty()) {
      if (tree_.find(key) != nullptr)
        change_in({}, tree_, key, value);
      else if (value)
        add_before_tables(statement(key, *value));
    } else {
      const TomlEntry* const entry = tree_.find(place.name);
      const auto* const table = entry != nullptr ? entry->value.as<TomlTable>() : nullptr;
      if (table != nullptr)
        change_in(entry->value, *table, key, value);
      else if (value)
        append("[" + place.name + "]" + line_end_ + statement(key, *value) + line_end_);
    }
    return text_;
  }

  std::string with_entry(const std::string& name, const std::vector<TomlKey>& added) {
    const TomlEntry* const all = tree_.find(name);
    const TomlArray* const list = list_of(name);
    const bool has_items = list != nullptr && !list->values.empty();
    const auto* const first = has_items ? list->values.front().as<TomlTable>() : nullptr;
    std::string keys;
    const bool in_braces =
        list != nullptr && (!has_items || (first != nullptr && first->form == TomlTableForm::braces));
    for (const TomlKey& one : added) {
      if (!keys.empty()) keys += in_braces ? ", " : line_end_;
      keys += statement(one.key, one.value);
    }
    if (in_braces) {
      const std::string braces = "{ " + keys + " }";
      if (has_items)
        text_.insert(list->values.back().place.end, ", " + braces);
      else
        text_.replace(all->value.place.begin, all->value.place.end - all->value.place.begin,
                      "[" + braces + "]");
      return text_;
    }
    const std::string entry = "[[" + name + "]]" + line_end_ + keys;
    if (has_items)
      insert_line_after(last_byte_of(list->values.back()), line_end_ + entry);
    else
      append(entry + line_end_);
    return text_;
  }

  std::string without_entry(const std::string& name, std::size_t entry) {
    const TomlArray* const list = list_of(name);
    if (list == nullptr || entry >= list->values.size()) return text_;
    if (in_braces(*list)) {
      std::size_t begin = list->values[entry].place.begin;
      std::size_t end = list->values[entry].place.end;
      if (entry + 1 < list->values.size())
        end = list->values[entry + 1].place.begin;
      else if (entry > 0)
        begin = list->values[entry - 1].place.end;
      text_.erase(begin, end - begin);
      return text_;
    }
    take_block_out(list->values[entry]);
    return text_;
  }

  std::string without_table(const std::string& name) {
    const TomlEntry* const entry = tree_.find(name);
    const auto* const table = entry != nullptr ? entry->value.as<TomlTable>() : nullptr;
    if (table != nullptr && table->form == TomlTableForm::header) take_block_out(entry->value);
    return text_;
  }

  std::string with_swapped(const std::string& name, std::size_t entry) {
    const TomlArray* const list = list_of(name);
    if (list == nullptr || entry + 1 >= list->values.size()) return text_;
    const auto place_of = [&](const TomlValue& value) {
      return in_braces(*list) ? std::pair{value.place.begin, value.place.end} : block_of(value);
    };
    const auto first = place_of(list->values[entry]);
    const auto second = place_of(list->values[entry + 1]);
    if (first.second > second.first) return text_;
    std::string one = text_.substr(first.first, first.second - first.first);
    std::string other = text_.substr(second.first, second.second - second.first);
    // The last line of a text may have no end.
    if (!in_braces(*list) && !other.empty() && other.back() != '\n') {
      other += line_end_;
      while (!one.empty() && (one.back() == '\n' || one.back() == '\r')) one.pop_back();
    }
    text_.replace(second.first, second.second - second.first, one);
    text_.replace(first.first, first.second - first.first, other);
    return text_;
  }

 private:
  static std::string statement(const std::string& key, const std::string& value) {
    return std::string(key).append(" = ").append(value);
  }

  [[nodiscard]] const TomlArray* list_of(const std::string& name) const {
    const TomlEntry* const all = tree_.find(name);
    return all != nullptr ? all->value.as<TomlArray>() : nullptr;
  }

  static bool in_braces(const TomlArray& list) {
    const auto* const first = list.values.empty() ? nullptr : list.values.front().as<TomlTable>();
    return first != nullptr && first->form == TomlTableForm::braces;
  }

  /// An entry under its header: with the comment lines directly above it, to the end of its last line.
  [[nodiscard]] std::pair<std::size_t, std::size_t> block_of(const TomlValue& value) const {
    std::size_t begin = line_begin(value.place.begin);
    while (begin > 0) {
      const std::size_t above = line_begin(begin - 1);
      const std::size_t first = text_.find_first_not_of(" \t", above);
      if (first == std::string::npos || text_[first] != '#') break;
      begin = above;
    }
    return {begin, line_after(last_byte_of(value))};
  }

  void take_block_out(const TomlValue& value) {
    auto [begin, end] = block_of(value);
    // One of the blank lines around it goes too.
    if (end < text_.size() && blank_line(end)) end = line_after(end);
    text_.erase(begin, end - begin);
  }

  [[nodiscard]] bool blank_line(std::size_t begin) const {
    const std::size_t first = text_.find_first_not_of(" \t\r", begin);
    return first != std::string::npos && text_[first] == '\n';
  }

  void change_in(const TomlValue& where, const TomlTable& table, const std::string& key,
                 const std::optional<std::string>& value) {
    const TomlEntry* const old = table.find(key);
    if (old != nullptr && value) {
      const TomlPlace place = old->value.place;
      text_.replace(place.begin, place.end - place.begin, *value);
    } else if (old != nullptr) {
      table.form == TomlTableForm::braces ? take_out_of_braces(table, *old) : take_line_out(*old);
    } else if (value) {
      add_key(where, table, statement(key, *value));
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

  void add_key(const TomlValue& where, const TomlTable& table, const std::string& line) {
    const TomlEntry* last = nullptr;
    for (const TomlEntry& entry : table.entries)
      if (last == nullptr || last_byte_of(entry.value) > last_byte_of(last->value)) last = &entry;
    if (table.form == TomlTableForm::braces) {
      if (last != nullptr)
        text_.insert(last_byte_of(last->value), ", " + line);
      else
        text_.replace(where.place.begin, where.place.end - where.place.begin, "{ " + line + " }");
      return;
    }
    if (last == nullptr) return insert_line_after(where.place.end, line);
    // As the key before it is written: indented as it is, and behind the same dotted front.
    const std::size_t begin = line_begin(last->key_place.begin);
    std::string front = text_.substr(begin, last->key_place.begin - begin);
    if (table.form != TomlTableForm::dotted && front.find_first_not_of(" \t") != std::string::npos)
      front.clear();
    insert_line_after(last_byte_of(last->value), front + line);
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

template <typename Edit>
Result<std::string> edited(std::string_view text, const std::string& file, const Edit& edit) {
  const auto tree = parse_toml(text, file);
  if (!tree) return tree.problems();
  return edit(EditedText{text, tree.value()});
}

}  // namespace

Result<std::string> with_toml_key(std::string_view text, const TomlTableName& table, const std::string& key,
                                  const std::optional<std::string>& value, const std::string& file) {
  return edited(text, file, [&](EditedText now) { return now.with_key(table, key, value); });
}

Result<std::string> with_toml_entry(std::string_view text, const std::string& list,
                                    const std::vector<TomlKey>& keys, const std::string& file) {
  return edited(text, file, [&](EditedText now) { return now.with_entry(list, keys); });
}

Result<std::string> without_toml_entry(std::string_view text, const std::string& list, std::size_t entry,
                                       const std::string& file) {
  return edited(text, file, [&](EditedText now) { return now.without_entry(list, entry); });
}

Result<std::string> without_toml_table(std::string_view text, const std::string& table,
                                       const std::string& file) {
  return edited(text, file, [&](EditedText now) { return now.without_table(table); });
}

Result<std::string> with_toml_entries_swapped(std::string_view text, const std::string& list,
                                              std::size_t entry, const std::string& file) {
  return edited(text, file, [&](EditedText now) { return now.with_swapped(list, entry); });
}

std::string toml_as_typed(std::string_view typed) {
  const std::string front = "x = ";
  const std::string line = front + std::string(trimmed(typed));
  const auto tree = parse_toml(line, {});
  if (tree && tree.value().entries.size() == 1) {
    const TomlEntry& only = tree.value().entries.front();
    if (only.key == "x" && only.value.place.begin == front.size() && only.value.place.end == line.size())
      return line.substr(front.size());
  }
  return toml_text(trimmed(typed));
}

std::string toml_words(std::string_view typed) { return toml_text(trimmed(typed)); }

}  // namespace soakwright
