// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/column_notices.h"

#include <map>
#include <utility>

#include "core/record/column_name.h"

namespace soakwright {
namespace {

std::string count_of(std::size_t count, const char* one, const char* many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string with_article(const std::string& why) {
  if (why == "pressure" || why == "another quantity" || why == "heat flux") return why;
  return (why == "output" || why == "alarm or event" ? "an " : "a ") + why;
}

/// How many cells hold which text; only the first text where there are too many.
std::string texts_of(const LogColumn& column) {
  constexpr std::size_t kMostNamed = 6;
  if (column.texts.count == 0) return {};
  const std::string all = count_of(column.texts.count, "cell holds ", "cells hold ");
  if (column.each_text.empty()) return all + "no number, the first '" + column.texts.text + "'";
  if (column.each_text.size() == 1) return all + "'" + column.each_text.front().text + "' and no number";
  std::string out = all + "no number: ";
  std::size_t named = 0;
  for (std::size_t i = 0; i < column.each_text.size() && i < kMostNamed; ++i) {
    const TextCount& one = column.each_text[i];
    out += (i == 0 ? "" : ", ") + std::to_string(one.count) + " × '" + one.text + "'";
    named += one.count;
  }
  if (named < column.texts.count)
    out += ", " + std::to_string(column.texts.count - named) + " with other texts";
  return out;
}

}  // namespace

std::vector<Notice> cell_notices(const LogColumn& column, const std::string& channel,
                                 const LineIssue& out_of_range) {
  std::vector<Notice> notices;
  const auto add = [&](const char* code, const LineIssue& issue, std::string text) {
    if (issue.count != 0) notices.push_back({code, issue.line, issue.count, channel, std::move(text)});
  };
  add("missing-cell", column.empties,
      count_of(column.empties.count, "cell is", "cells are") + " empty: no reading there.");
  add("missing-text", column.texts, texts_of(column) + "; taken as missing.");
  add("digit-grouping", column.grouped,
      count_of(column.grouped.count, "number is", "numbers are") +
          " written with digit grouping, the first '" + column.grouped.text + "'; taken as missing.");
  add("out-of-range", out_of_range,
      count_of(out_of_range.count, "number is", "numbers are") +
          " no temperature that a thermocouple measures, the first " + out_of_range.text +
          "; taken as missing.");
  return notices;
}

Notice unclear_name_notice(const LogColumn& column, std::size_t names_line) {
  const ColumnName name = meaning_of_name(column.name);
  const std::string doubt =
      name.why.empty() ? " ends in what may be a unit" : " suggests " + with_article(name.why);
  return {
      "name-unclear", names_line, 1, column.name,
      "The name '" + column.name + "'" + doubt +
          ", but the column reads like a thermocouple and is evaluated. If it is none, give its role in the "
          "job."};
}

std::vector<Notice> duplicate_name_notices(const LogTable& table, std::size_t names_line) {
  std::map<std::string, std::vector<std::size_t>> numbers;
  for (const LogColumn& column : table.columns)
    if (!column.header.empty()) numbers[column.name].push_back(column.number);
  std::vector<Notice> notices;
  for (const auto& [name, columns] : numbers) {
    if (columns.size() < 2) continue;
    std::string listed;
    for (std::size_t i = 0; i < columns.size() && i < 4; ++i)
      listed += (i == 0 ? "" : ", ") + std::to_string(columns[i]);
    if (columns.size() > 4) listed += " and more";
    notices.push_back({"name-unclear", names_line, columns.size(), name,
                       "Columns " + listed + " have one and the same name. Give each a name in the job."});
  }
  return notices;
}

}  // namespace soakwright
