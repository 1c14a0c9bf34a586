// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/table_reader.h"

#include <numeric>

#include <fmt/format.h>

namespace soakwright {
namespace {

/// Fewest single letters to add, drop or change (Levenshtein).
std::size_t letters_apart(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t change = diagonal + (a[i] == b[j] ? 0U : 1U);
      diagonal = row[j + 1];
      row[j + 1] = std::min({change, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row.back();
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) {
    if (!out.empty()) out += ", ";
    out += word;
  }
  return out;
}

}  // namespace

void Complaints::add(std::size_t line, std::string what, std::string help) {
  problems_.push_back({ProblemKind::bad_input, file_, line, std::move(what), std::move(help)});
}

Problems Complaints::in_order() const {
  Problems out = problems_;
  std::stable_sort(out.begin(), out.end(),
                   [](const Problem& a, const Problem& b) { return a.line < b.line; });
  return out;
}

std::nullopt_t FoundValue::refuse(const std::string& what, std::string help) const {
  complaints.add(value.line, fmt::format("`{}` {}", name, what), std::move(help));
  return std::nullopt;
}

std::nullopt_t FoundValue::refuse_kind(std::string help) const {
  return refuse("is " + described(value), std::move(help));
}

std::string suggestion(std::string_view found, const std::vector<std::string>& known, bool even_if_far) {
  constexpr std::size_t kLongestWord = 40;  // a longer word is near to nothing of ours
  const std::string* nearest = nullptr;
  std::size_t fewest = 0;
  if (!found.empty() && found.size() <= kLongestWord)
    for (const std::string& word : known) {
      const std::size_t letters = letters_apart(found, word);
      if (nearest && letters >= fewest) continue;
      fewest = letters;
      nearest = &word;
    }
  // With half of its letters changed it would be another word.
  const bool near = nearest && fewest <= (found.size() + 2) / 3 && 2 * fewest < nearest->size();
  if (near) return fmt::format("did you mean `{}`?", *nearest);
  if (!nearest || !even_if_far) return fmt::format("known here: {}", joined(known));
  return fmt::format("did you mean `{}`? known here: {}", *nearest, joined(known));
}

void TableReader::must_have_a_limit() {
  const bool any =
      std::any_of(limits_.begin(), limits_.end(), [this](const auto& key) { return entry(key); });
  if (!any)
    complain(line_, fmt::format("{} sets no limit", where_),
             fmt::format("give at least one of {}", joined(limits_)));
}

void TableReader::finish() {
  if (skip_) return;
  for (const TomlEntry& entry : table_.entries)
    if (std::find(asked_.begin(), asked_.end(), entry.key) == asked_.end() &&
        std::find(elsewhere_.begin(), elsewhere_.end(), entry.key) == elsewhere_.end())
      complain(entry.line, fmt::format("`{}` is not a key of {}", shown(entry.key), where_),
               suggestion(entry.key, asked_, true));
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

void TableReader::elsewhere(std::string_view key, std::string help) {
  const TomlEntry* const found = entry(key);
  if (!found) return;
  elsewhere_.emplace_back(key);
  complain(found->line, fmt::format("`{}` is not a key of {}", key, where_), std::move(help));
}

const TomlEntry* TableReader::ask(std::string_view key) {
  asked_.emplace_back(key);
  return entry(key);
}

void TableReader::missing(std::string_view key) {
  complain(line_, fmt::format("`{}` is missing in {}", key, where_), fmt::format("add `{} = …`", key));
}

void TableReader::not_a_table(const TomlEntry& found, std::string_view open, std::string_view close) {
  complain(found.line, fmt::format("`{}` is {}", found.key, described(found.value)),
           fmt::format("write it as {}{}{}", open, found.key, close));
}

void TableReader::upside_down(std::string_view low, std::string_view high, std::string_view relation) {
  complain(std::max(line_of(low), line_of(high)),
           fmt::format("`{}` {} of {} is not {} `{}` {}", low, described(entry(low)->value), where_, relation,
                       high, described(entry(high)->value)),
           "have they changed places?");
}

bool is_version_1(TableReader& in, const std::string& kind) {
  const std::string wanted = fmt::format("{} 1", kind);
  const std::string help = fmt::format("write `soakwright = \"{}\"`", wanted);
  const auto version = [&](const FoundValue& found) -> std::optional<std::string> {
    const auto* const text = found.value.as<std::string>();
    if (!text) return found.refuse_kind(help);
    if (*text == wanted) return *text;
    for (const std::string other : {"procedure", "job", "review"})
      if (other != kind && text->starts_with(fmt::format("{} ", other)))
        return found.refuse(
            fmt::format("is \"{}\": this file is a {}, not a {}", shown(*text), other, kind),
            fmt::format("name it as the {}; a {} is needed here, which begins with `soakwright = \"{}\"`",
                        other, kind, wanted));
    return found.refuse_kind(text->starts_with(fmt::format("{} ", kind))
                                 ? fmt::format("this program reads \"{}\"", wanted)
                                 : fmt::format("a {} is needed here: {}", kind, help));
  };
  std::string found;
  // A missing line is one problem among others; a wrong one says that this is another kind of file.
  return in.must("soakwright", version, found) || !in.entry("soakwright");
}

}  // namespace soakwright
