// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/table_assembly.h"

#include <algorithm>
#include <limits>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "core/read/table_problems.h"
#include "core/read/table_rows.h"
#include "core/read/text_encoding.h"
#include "core/read/time/date_order.h"
#include "core/read/time/time_problems.h"
#include "core/units/local_time.h"

namespace soakwright {
namespace {

struct PlacedBlock {
  BlockOutcome outcome;
  std::size_t thread = 0;
};

std::vector<PlacedBlock> in_order(std::vector<ThreadResult>& thread_results) {
  std::vector<PlacedBlock> blocks;
  for (std::size_t t = 0; t < thread_results.size(); ++t)
    for (BlockOutcome& outcome : thread_results[t].blocks) blocks.push_back({std::move(outcome), t});
  std::sort(blocks.begin(), blocks.end(), [](const PlacedBlock& a, const PlacedBlock& b) {
    return a.outcome.sequence < b.outcome.sequence;
  });
  for (PlacedBlock& block : blocks)
    std::sort(block.outcome.wide.begin(), block.outcome.wide.end(),
              [](const auto& a, const auto& b) { return a.first < b.first; });
  return blocks;
}

/// The doubles of `column` in this block; null where it holds decimals there.
const std::vector<double>* doubles_of(const BlockOutcome& outcome, std::size_t column) {
  const auto entry = std::lower_bound(outcome.wide.begin(), outcome.wide.end(), column,
                                      [](const auto& a, std::size_t wanted) { return a.first < wanted; });
  return entry != outcome.wide.end() && entry->first == column ? &entry->second : nullptr;
}

/// Brings all blocks of a column to `places`; false where a decimal does not fit then.
bool rescale_column(ColumnStore& store, const std::vector<PlacedBlock>& blocks, std::size_t column,
                    int places) {
  std::int32_t out = 0;
  for (const bool write : {false, true})
    for (const PlacedBlock& block : blocks) {
      const BlockOutcome& outcome = block.outcome;
      const int from = outcome.places[column];
      if (from == places) continue;
      bool fit = true;
      store.visit(column, outcome.first_row, outcome.first_row + outcome.rows,
                  [&](std::size_t, std::size_t count, std::int32_t* units) {
                    for (std::size_t i = 0; i < count && fit; ++i) {
                      if (units[i] == ColumnStore::kMissing) continue;
                      fit = fits_rescaled(units[i], from, places, out);
                      if (write) units[i] = out;
                    }
                  });
      if (!fit) return false;
    }
  return true;
}

std::vector<double> column_as_doubles(const ColumnStore& store, const std::vector<PlacedBlock>& blocks,
                                      std::size_t column, std::size_t rows) {
  std::vector<double> values(rows, std::numeric_limits<double>::quiet_NaN());
  for (const PlacedBlock& block : blocks) {
    const BlockOutcome& outcome = block.outcome;
    if (const auto* wide = doubles_of(outcome, column)) {
      std::copy(wide->begin(), wide->end(), values.begin() + static_cast<std::ptrdiff_t>(outcome.first_row));
      continue;
    }
    const auto power = static_cast<double>(power_of_ten(outcome.places[column]));
    store.visit(column, outcome.first_row, outcome.first_row + outcome.rows,
                [&](std::size_t first, std::size_t count, const std::int32_t* units) {
                  for (std::size_t i = 0; i < count; ++i)
                    if (units[i] != ColumnStore::kMissing) values[first + i] = units[i] / power;
                });
  }
  return values;
}

void unify_column(ColumnStore& store, const std::vector<PlacedBlock>& blocks, std::size_t rows,
                  LogColumn& column) {
  const std::size_t c = column.store_column;
  bool wide = false;
  for (const PlacedBlock& block : blocks) {
    column.places = std::max(column.places, block.outcome.places[c]);
    wide = wide || doubles_of(block.outcome, c) != nullptr;
  }
  if (wide || !rescale_column(store, blocks, c, column.places))
    column.wide = column_as_doubles(store, blocks, c, rows);
}

/// One table of dates for all threads; the packed stamps then hold places in it. False where there are more
/// than they can hold.
bool join_dates(const std::vector<ThreadResult>& thread_results, const std::vector<PlacedBlock>& blocks,
                std::int64_t* stamps, std::vector<DateFields>& dates) {
  const auto key = [](const DateFields& d) {
    return std::tuple{d.first, d.second, d.third, d.first_digits, d.third_digits, d.month_place};
  };
  std::map<decltype(key(DateFields{})), std::size_t> places;
  std::vector<std::vector<std::size_t>> of_thread;
  for (const ThreadResult& thread_result : thread_results) {
    std::vector<std::size_t>& own = of_thread.emplace_back();
    for (const DateFields& date : thread_result.days) {
      const auto [entry, is_new] = places.try_emplace(key(date), dates.size());
      if (is_new) dates.push_back(date);
      own.push_back(entry->second);
    }
  }
  if (dates.size() > packed_stamp::kMostDays) return false;
  for (const PlacedBlock& block : blocks) {
    const std::vector<std::size_t>& own = of_thread[block.thread];
    bool moved = false;
    for (std::size_t day = 0; day < own.size() && !moved; ++day) moved = own[day] != day;
    if (!moved) continue;
    const std::size_t end = block.outcome.first_row + block.outcome.rows;
    for (std::size_t row = block.outcome.first_row; row < end; ++row)
      if (stamps[row] != 0)  // a dropped row has no date
        stamps[row] =
            packed_stamp::pack(own[packed_stamp::day_of(stamps[row])], packed_stamp::clock_of(stamps[row]));
  }
  return true;
}

/// The median of the steps between neighbours of one date; 0 where there is none.
std::int64_t usual_step(const std::int64_t* stamps, std::size_t rows) {
  constexpr std::size_t kEnough = 20'000;
  std::vector<std::int64_t> steps;
  for (std::size_t row = 1; row < rows && steps.size() < kEnough; ++row)
    if (packed_stamp::day_of(stamps[row]) == packed_stamp::day_of(stamps[row - 1]) &&
        packed_stamp::clock_of(stamps[row]) > packed_stamp::clock_of(stamps[row - 1]))
      steps.push_back(packed_stamp::clock_of(stamps[row]) - packed_stamp::clock_of(stamps[row - 1]));
  if (steps.empty()) return 0;
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  return *middle;
}

/// Packed stamps of `rows` kept rows into local time.
Problems unpack_dates(const std::vector<DateFields>& dates, const std::int64_t* stamps, std::size_t rows,
                      std::optional<FieldOrder> given, const std::string& path, LogTable& table) {
  DateEvidence evidence;
  constexpr std::size_t kNowhere = static_cast<std::size_t>(-1);
  evidence.first_rows.assign(dates.size(), kNowhere);
  std::size_t before = kNowhere;
  for (std::size_t row = 0; row < rows; ++row) {
    const std::size_t day = packed_stamp::day_of(stamps[row]);
    if (day == before) continue;
    if (evidence.first_rows[day] == kNowhere) evidence.first_rows[day] = row;
    if (row > 0)
      evidence.changes.push_back(
          {row, before, day, packed_stamp::clock_of(stamps[row]) - packed_stamp::clock_of(stamps[row - 1])});
    before = day;
  }
  // Dates that stand only in rows that were dropped prove nothing.
  std::vector<std::size_t> place_of(dates.size(), kNowhere);
  std::vector<std::size_t> first_rows;
  for (std::size_t day = 0; day < dates.size(); ++day)
    if (evidence.first_rows[day] != kNowhere) {
      place_of[day] = evidence.dates.size();
      evidence.dates.push_back(dates[day]);
      first_rows.push_back(evidence.first_rows[day]);
    }
  evidence.first_rows = std::move(first_rows);
  for (DateChange& change : evidence.changes) {
    change.from = place_of[change.from];
    change.to = place_of[change.to];
  }
  evidence.interval_ns = usual_step(stamps, rows);
  auto settled = settle_dates(evidence, given, table.lines, path);
  if (!settled) return settled.problems();
  table.dates = settled.value().order;
  table.dates_by_pace = settled.value().even_order;
  std::vector<std::int64_t> midnight_ns(dates.size());
  for (std::size_t day = 0; day < dates.size(); ++day)
    if (place_of[day] != kNowhere)
      midnight_ns[day] = settled.value().day_numbers[place_of[day]] * kNanosecondsPerDay;
  table.stamps_ns.resize(rows);
  for (std::size_t row = 0; row < rows; ++row)
    table.stamps_ns[row] =
        midnight_ns[packed_stamp::day_of(stamps[row])] + packed_stamp::clock_of(stamps[row]);
  return {};
}

}  // namespace

Problems assemble_table(const TablePlan& plan, const TableHeader& header,
                        std::vector<ThreadResult> thread_results, std::int64_t* stamps, std::size_t rows,
                        std::optional<FieldOrder> given_order, const std::string& path, LogTable& table) {
  const std::vector<PlacedBlock> blocks = in_order(thread_results);

  std::vector<std::size_t> dropped;
  LineMap lines;
  for (const PlacedBlock& block : blocks) {
    dropped.insert(dropped.end(), block.outcome.dropped.begin(), block.outcome.dropped.end());
    for (const auto& [row, line] : block.outcome.pieces) lines.add(row, line);
  }
  for (std::size_t c = 0; c < plan.number_cells.size(); ++c) {
    LogColumn column;
    const std::size_t cell = plan.number_cells[c];
    column.number = cell + 1;
    column.header = header.columns[cell].header;
    column.name = header.columns[cell].name;
    column.unit = header.columns[cell].unit;
    column.store_column = c;
    ColumnSummary facts;
    for (const ThreadResult& thread_result : thread_results)
      if (!thread_result.facts.empty()) add_facts(facts, thread_result.facts[c]);
    column.numbers = facts.numbers;
    column.lowest = facts.lowest;
    column.highest = facts.highest;
    column.empties = {facts.empties, facts.empties == 0 ? 0 : lines.line_of(facts.first_empty_row), {}};
    column.texts = facts.texts;
    column.each_text = std::move(facts.each_text);
    std::sort(column.each_text.begin(), column.each_text.end(),
              [](const TextCount& a, const TextCount& b) { return a.line < b.line; });
    for (TextCount& one : column.each_text) one.text = to_utf8(one.text);
    column.grouped = facts.grouped;
    unify_column(*table.store, blocks, rows, column);
    table.columns.push_back(std::move(column));
  }
  LineIssue other_headers;
  for (const ThreadResult& thread_result : thread_results) {
    add_line_issue(other_headers, thread_result.line_issues.other_headers);
    add_line_issue(table.repeat_rows, thread_result.line_issues.repeat_rows);
    add_line_issue(table.repeated_headers, thread_result.line_issues.repeated_headers);
    add_line_issue(table.short_rows, thread_result.line_issues.short_rows);
    add_line_issue(table.long_rows, thread_result.line_issues.long_rows);
    add_line_issue(table.odd_lines, thread_result.line_issues.odd_lines);
  }
  if (other_headers.count != 0)
    return {table_problems::another_table(path, other_headers.line, other_headers.text)};

  const bool dated = plan.time.kind == TimeKind::date_time;
  std::vector<DateFields> dates;
  if (dated && !join_dates(thread_results, blocks, stamps, dates))
    return {time_problems::too_many_dates(path, plan.lines_before + 1, packed_stamp::kMostDays)};
  if (!dropped.empty()) take_cells_out(dropped, stamps, rows, table);
  const std::size_t kept = rows - dropped.size();
  table.lines = dropped.empty() ? std::move(lines) : lines.without(dropped);
  if (kept == 0) return {};
  if (dated) return unpack_dates(dates, stamps, kept, given_order, path, table);
  table.stamps_ns.assign(stamps, stamps + kept);
  return {};
}

}  // namespace soakwright
