// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/import_texts.h"

#include <algorithm>

#include "core/procedure/job/import_choices.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/toml_tree.h"

namespace soakwright {
namespace {

/// Numbers and dates as TOML has them; all else is a text.
TomlValue value_of(const std::string& key, const std::string& text) {
  const bool no_text = key == "header_line" || key == "date" || key == "start" || key == "clock_forward";
  if (no_text && text.find_first_not_of("0123456789-:.T ") == std::string::npos) {
    const auto tree = parse_toml("value = " + text + "\n", {});
    if (tree && tree.value().entries.size() == 1) {
      TomlValue value = tree.value().entries.front().value;
      value.line = 0;
      return value;
    }
  }
  TomlValue value;
  value.value = text;
  return value;
}

}  // namespace

std::string option_of_import_key(std::string key) {
  std::replace(key.begin(), key.end(), '_', '-');
  return key == "unit" ? "--log-unit" : "--" + key;
}

Result<ImportChoices> import_choices_of(const ImportTexts& texts) {
  ImportChoices choices;
  Problems problems;
  for (const auto& [key, text] : texts) {
    TomlTable table;
    TomlEntry entry;
    entry.key = key;
    entry.value = value_of(key, text);
    table.entries.push_back(std::move(entry));
    Complaints complaints{option_of_import_key(key)};
    TableReader in{table, 0, "[import]", complaints};
    read_import_choices(in, choices);
    in.finish();
    for (Problem problem : complaints.in_order()) {
      problem.kind = ProblemKind::usage;
      problems.push_back(std::move(problem));
    }
  }
  if (!problems.empty()) return problems;
  return choices;
}

Job with_import_choices(const Job* job, const ImportChoices& choices) {
  Job both = job != nullptr ? *job : Job{};
  ImportChoices& into = both.reading;
  const auto take = [](auto& own, const auto& given) {
    if (given) own = given;
  };
  take(into.encoding, choices.encoding);
  take(into.delimiter, choices.delimiter);
  take(into.decimal, choices.decimal);
  take(into.header_line, choices.header_line);
  take(into.time_column, choices.time_column);
  take(into.time, choices.time);
  take(into.dates, choices.dates);
  take(into.unit, choices.unit);
  take(into.unlisted_off, choices.unlisted_off);
  const auto take_with_line = [](auto& own, std::size_t& line, const auto& given) {
    if (!given) return;
    own = given;
    line = 0;  // no line of the job
  };
  take_with_line(into.date, into.date_line, choices.date);
  take_with_line(into.start, into.start_line, choices.start);
  take_with_line(into.clock_forward, into.clock_forward_line, choices.clock_forward);
  if (choices.unit) into.unit_line = 0;
  return both;
}

}  // namespace soakwright
