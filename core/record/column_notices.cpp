// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/column_notices.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "core/record/column_name.h"

namespace soakwright {
namespace {

/// How many cells hold which text; only the first text where there are too many.
Statement texts_of(const LogColumn& column) {
  constexpr std::size_t kMostNamed = 6;
  const Count all = how_many(column.texts.count);
  if (column.each_text.empty()) return state(Sentence::cells_of_text, all, AsWritten{column.texts.text});
  if (column.each_text.size() == 1)
    return state(Sentence::cells_of_one_text, all, AsWritten{column.each_text.front().text});
  std::vector<CountedText> named;
  std::size_t others = column.texts.count;
  for (std::size_t i = 0; i < column.each_text.size() && i < kMostNamed; ++i) {
    const TextCount& one = column.each_text[i];
    named.push_back({one.count, one.text});
    others -= std::min(others, one.count);
  }
  return others == 0 ? state(Sentence::cells_of_texts, all, named)
                     : state(Sentence::cells_of_many_texts, all, named, how_many(others));
}

}  // namespace

std::vector<Notice> cell_notices(const LogColumn& column, const std::string& channel,
                                 const LineIssue& out_of_range) {
  std::vector<Notice> notices;
  const auto add = [&](const char* code, const LineIssue& issue, Statement what) {
    if (issue.count != 0) notices.push_back({code, issue.line, issue.count, channel, std::move(what)});
  };
  add("missing-cell", column.empties, state(Sentence::cells_empty, how_many(column.empties.count)));
  add("missing-text", column.texts, texts_of(column));
  add("digit-grouping", column.grouped,
      state(Sentence::digits_grouped, how_many(column.grouped.count), AsWritten{column.grouped.text}));
  add("out-of-range", out_of_range,
      state(Sentence::numbers_out_of_range, how_many(out_of_range.count), AsWritten{out_of_range.text}));
  return notices;
}

Notice unclear_name_notice(const LogColumn& column, std::size_t names_line) {
  const ColumnContent suggested = meaning_of_name(column.name).why;
  const AsWritten name{column.name};
  return {"name-unclear", names_line, 1, column.name,
          suggested == ColumnContent::none ? state(Sentence::name_may_end_in_unit, name)
                                           : state(Sentence::name_suggests, name, OneOfContent{suggested})};
}

std::vector<Notice> duplicate_name_notices(const LogTable& table, std::size_t names_line) {
  std::map<std::string, std::vector<std::size_t>> numbers;
  for (const LogColumn& column : table.columns)
    if (!column.header.empty()) numbers[column.name].push_back(column.number);
  std::vector<Notice> notices;
  for (const auto& [name, columns] : numbers) {
    if (columns.size() < 2) continue;
    constexpr std::size_t kMostNumbers = 4;
    AsWritten listed;
    for (std::size_t i = 0; i < columns.size() && i < kMostNumbers; ++i)
      listed.text.append(i == 0 ? "" : ", ").append(std::to_string(columns[i]));
    notices.push_back({"name-unclear", names_line, columns.size(), name,
                       state(columns.size() > kMostNumbers ? Sentence::name_of_many_columns
                                                           : Sentence::name_of_several_columns,
                             std::move(listed))});
  }
  return notices;
}

}  // namespace soakwright
