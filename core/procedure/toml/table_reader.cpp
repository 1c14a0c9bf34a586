// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/table_reader.h"

#include "core/procedure/toml/toml_problems.h"

namespace soakwright {
void Complaints::add(std::size_t line, ProblemWords words) {
  problems_.push_back({ProblemKind::bad_input, file_, line, std::move(words.what), std::move(words.help)});
}

Problems Complaints::in_order() const {
  Problems out = problems_;
  std::stable_sort(out.begin(), out.end(),
                   [](const Problem& a, const Problem& b) { return a.line < b.line; });
  return out;
}

std::nullopt_t FoundValue::refuse(ProblemWords words) const {
  complaints.add(value.line, std::move(words));
  return std::nullopt;
}

void TableReader::must_have_a_limit() {
  const bool any =
      std::any_of(limits_.begin(), limits_.end(), [this](const auto& key) { return entry(key); });
  if (!any) complain(line_, toml_problems::no_limit(name_, limits_));
}

void TableReader::finish() {
  if (skip_) return;
  for (const TomlEntry& entry : table_.entries)
    if (std::find(specified_.begin(), specified_.end(), entry.key) == specified_.end() &&
        std::find(elsewhere_.begin(), elsewhere_.end(), entry.key) == elsewhere_.end())
      complain(entry.line, toml_problems::unknown_key(entry.key, name_, specified_));
}

const TomlEntry* TableReader::entry(std::string_view key) const {
  const auto found = std::find_if(table_.entries.begin(), table_.entries.end(),
                                  [key](const TomlEntry& one) { return one.key == key; });
  return found == table_.entries.end() ? nullptr : &*found;
}

std::size_t TableReader::line_of(std::string_view key) const {
  const TomlEntry* const found = entry(key);
  return found ? found->line : line_;
}

void TableReader::elsewhere(std::string_view key, ProblemWords words) {
  const TomlEntry* const found = entry(key);
  if (!found) return;
  elsewhere_.emplace_back(key);
  complain(found->line, std::move(words));
}

const TomlEntry* TableReader::ask(std::string_view key) {
  specified_.emplace_back(key);
  return entry(key);
}

void TableReader::missing(std::string_view key) { complain(line_, toml_problems::missing_key(key, name_)); }

void TableReader::not_a_table(const TomlEntry& found) {
  complain(found.line, toml_problems::not_a_table(found.key, found.value));
}

void TableReader::not_a_list_of_tables(const TomlEntry& found) {
  complain(found.line, toml_problems::not_a_list_of_tables(found.key, found.value));
}

void TableReader::not_below(std::string_view low, std::string_view high) {
  complain(std::max(line_of(low), line_of(high)),
           toml_problems::not_below({low, entry(low)->value}, {high, entry(high)->value}, name_));
}

void TableReader::above(std::string_view low, std::string_view high) {
  complain(std::max(line_of(low), line_of(high)),
           toml_problems::above({low, entry(low)->value}, {high, entry(high)->value}, name_));
}

bool is_version_1(TableReader& in, TomlFileKind kind) {
  const auto version_of = [](TomlFileKind of) { return std::string{kFileKindWords.of(of)} + " "; };
  const auto version = [&](const FoundValue& found) -> std::optional<std::string> {
    const auto* const text = found.value.as<std::string>();
    if (!text) return found.refuse(toml_problems::no_version(kind, found.value));
    if (*text == version_of(kind) + "1") return *text;
    for (const TomlFileKind other : {TomlFileKind::procedure, TomlFileKind::job, TomlFileKind::review})
      if (other != kind && text->starts_with(version_of(other)))
        return found.refuse(toml_problems::file_of_another_kind(kind, other, *text));
    return found.refuse(text->starts_with(version_of(kind))
                            ? toml_problems::version_of_another_program(kind, found.value)
                            : toml_problems::unknown_kind_of_file(kind, found.value));
  };
  std::string found;
  // A missing line is one problem among others; a wrong one says that this is another kind of file.
  return in.must("soakwright", version, found) || !in.entry("soakwright");
}

}  // namespace soakwright
