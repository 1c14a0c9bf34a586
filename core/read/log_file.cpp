// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/log_file.h"

#include <algorithm>
#include <memory>
#include <optional>
#include <thread>
#include <utility>
#include <vector>

#include "core/problems/caught.h"
#include "core/read/cell_split.h"
#include "core/read/dialect_detection.h"
#include "core/read/fast/block_reader.h"
#include "core/read/fast/row_parser.h"
#include "core/read/header_detection.h"
#include "core/read/log_file_problems.h"
#include "core/read/log_head.h"
#include "core/read/source_file.h"
#include "core/read/table_assembly.h"
#include "core/read/table_plan.h"
#include "core/read/table_problems.h"
#include "core/read/text_encoding.h"
#include "core/read/time/time_detection.h"
#include "core/read/time/time_problems.h"
#include "core/system/parallel_for.h"

namespace soakwright {
namespace {

constexpr std::size_t kHeadBytes = std::size_t{64} << 10;
constexpr std::size_t kLargestHead = std::size_t{4} << 20;
constexpr std::uint64_t kWorthThreads = 10'000'000;
constexpr unsigned kMostThreads = 8;

/// What the head of the file settles.
struct Opening {
  LogHead head;
  Dialect dialect;
  TableHeader header;
  TimePlan time;
};

Result<Opening> open_table(const SourceFile& file, const std::string& path, const GivenSettings& given) {
  for (std::size_t bytes = kHeadBytes;; bytes *= 8) {
    auto head = read_head(file, path, given.encoding, bytes);
    if (!head) return head.problems();
    auto dialect = detect_dialect(head.value(), given, path);
    if (!dialect) {
      // A heading longer than the piece that was read.
      if (!head.value().atomic_file && bytes < kLargestHead) continue;
      return dialect.problems();
    }
    auto header = detect_header(head.value(), dialect.value(), given.header_line, path);
    if (!header) return header.problems();
    auto time = detect_time(head.value(), dialect.value(), header.value(), given, path);
    if (!time) return time.problems();
    return Opening{std::move(head).value(), std::move(dialect).value(), std::move(header).value(),
                   std::move(time).value()};
  }
}

/// Decimal places and the stamps' zone, from the first rows.
void look_at_first_rows(const Opening& opening, TablePlan& plan) {
  std::vector<std::string_view> cells;
  bool first = true;
  for (const std::size_t row : opening.dialect.rows) {
    if (row < opening.header.first_row) continue;
    split_cells(opening.head.lines[row], plan.delimiter, cells);
    if (first && plan.time.kind == TimeKind::date_time && plan.time.cells.size() <= 2) {
      const auto stamp = parse_stamp(without_spaces(cells[plan.time.cells.back()]));
      if (stamp && stamp->offset_minutes) plan.base_offset_minutes = *stamp->offset_minutes;
    }
    first = false;
    for (std::size_t c = 0; c < plan.number_cells.size(); ++c) {
      const Cell cell = parse_cell(cells[plan.number_cells[c]], plan.decimal);
      if (cell.kind == Cell::Kind::number) plan.places[c] = std::max(plan.places[c], cell.places);
    }
  }
}

TablePlan plan_of(const Opening& opening) {
  TablePlan plan;
  plan.delimiter = opening.dialect.delimiter.value;
  plan.decimal = opening.dialect.decimal.value;
  plan.line_end = opening.head.line_end;
  plan.all_utf8 = opening.head.encoding.given() && opening.head.encoding.value == TextEncoding::utf_8;
  plan.cells = opening.dialect.cells;
  plan.time = opening.time;
  plan.lines_before = opening.header.first_row;
  if (opening.header.header_line != 0) plan.header_text = opening.head.lines[opening.header.header_line - 1];
  if (opening.header.units_line != 0) plan.units_text = opening.head.lines[opening.header.units_line - 1];
  for (std::size_t cell = 0; cell < plan.cells; ++cell)
    if (std::find(plan.time.cells.begin(), plan.time.cells.end(), cell) == plan.time.cells.end())
      plan.number_cells.push_back(cell);
  plan.places.assign(plan.number_cells.size(), 0);
  look_at_first_rows(opening, plan);
  return plan;
}

/// The first line with fewer bytes than a row has cells.
std::size_t first_short_line(const Block& block, const TablePlan& plan) {
  std::size_t line = block.first_line;
  for (const char* at = block.begin; at < block.end; ++line) {
    const char* const end = std::find(at, static_cast<const char*>(block.end), plan.line_end);
    if (static_cast<std::size_t>(end - at) < plan.cells) break;
    at = end + 1;
  }
  return line;
}

/// Where UTF-8 was given and the block has a byte that is none.
std::optional<Problem> wrong_byte(const Block& block, const TablePlan& plan, const std::string& path) {
  const std::string_view text{block.begin, static_cast<std::size_t>(block.end - block.begin)};
  const std::size_t at = first_not_utf8(text);
  if (at == std::string_view::npos) return std::nullopt;
  const auto lines = std::count(block.begin, block.begin + at, plan.line_end);
  return log_file_problems::not_utf8(path, block.first_line + static_cast<std::size_t>(lines), text[at]);
}

/// The one that stands first in the file; threads come upon theirs in any order.
std::optional<Problem> first_of(const std::vector<std::optional<Problem>>& failures) {
  std::optional<Problem> first;
  for (const auto& failure : failures)
    if (failure && (!first || failure->line < first->line)) first = failure;
  return first;
}

/// Takes blocks until there are none left. Exceptions end here: `failed` says what happened.
void thread_result(BlockReader& blocks, const TablePlan& plan, ColumnStore& store, std::int64_t* stamps,
                   const ReadingMeans& means, std::thread::id caller, ThreadResult& out,
                   std::optional<Problem>& failed, const std::string& path) {
  try {
    RowParser parser{plan, store, stamps, means.careful};
    Block block;
    while (blocks.next(block)) {
      blocks.feed_hash(block);
      if (means.watch.stopped()) return blocks.stop();
      if (std::this_thread::get_id() == caller) means.watch.report(blocks.share_read());
      if (plan.all_utf8) failed = wrong_byte(block, plan, path);
      if (failed) return blocks.stop();
      if (block.first_row + block.rows > store.capacity_rows()) {
        failed = table_problems::far_shorter_lines(path, first_short_line(block, plan));
        blocks.stop();
        return;
      }
      out.blocks.push_back(parser.parse(block));
    }
    out.facts = parser.facts();
    out.line_issues = parser.line_issues();
    out.days = parser.days();
  } catch (...) {
    failed = caught_problem(path);
    blocks.stop();
  }
}

unsigned threads_for(std::uint64_t bytes, const ReadingMeans& means) {
  if (means.threads != 0) return means.threads;
  if (bytes < kWorthThreads) return 1;
  return static_cast<unsigned>(std::min<std::size_t>(machine_threads(), kMostThreads));
}

struct Rows {
  std::vector<ThreadResult> thread_results;
  PageArena stamps;
  std::size_t count = 0;
};

Result<Rows> read_rows(const SourceFile& file, const std::string& path, const Opening& opening,
                       const TablePlan& plan, const ReadingMeans& means, LogTable& table) {
  // No row is shorter than one byte a cell, its line end included.
  const std::size_t most_rows = static_cast<std::size_t>(file.bytes()) / plan.cells + 2;
  Rows rows;
  table.store = std::make_shared<ColumnStore>(plan.number_cells.size(), most_rows);
  rows.stamps = PageArena(table.store->capacity_rows() * sizeof(std::int64_t));
  if (table.store->empty() || rows.stamps.empty()) return log_file_problems::too_little_memory(path);
  auto* const stamps = static_cast<std::int64_t*>(rows.stamps.data());

  BlockReader blocks{file,
                     path,
                     {opening.head.encoding.value, opening.head.mark_bytes, opening.head.line_end,
                      plan.lines_before, means.block_bytes}};
  const unsigned threads = threads_for(file.bytes(), means);
  rows.thread_results.resize(threads);
  std::vector<std::optional<Problem>> failures(threads);
  const std::thread::id caller = std::this_thread::get_id();
  parallel_for_on(threads, threads, [&](std::size_t i) {
    thread_result(blocks, plan, *table.store, stamps, means, caller, rows.thread_results[i], failures[i],
                  path);
  });

  if (means.watch.stopped()) return Problems{};
  if (blocks.problem()) return *blocks.problem();
  if (auto failure = first_of(failures)) return *failure;
  rows.count = blocks.rows();
  table.sha256 = blocks.finish_hash();
  table.bytes = blocks.bytes();
  return rows;
}

/// Where the rows that were read are too few to stand for the log.
std::optional<Problem> unreadable_times(const LogTable& table, const TablePlan& plan,
                                        const std::string& path) {
  const LineIssue& odd = table.odd_lines;
  if (odd.count == 0) return std::nullopt;
  std::vector<std::string_view> cells;
  split_cells(odd.text, plan.delimiter, cells);
  const std::size_t cell = plan.time.cells.back();
  const std::string_view time = cell < cells.size() ? without_spaces(cells[cell]) : std::string_view{};
  const bool minutes = plan.time.kind == TimeKind::time_of_day &&
                       std::count(time.begin(), time.end(), ':') == 1 && parse_elapsed(time) &&
                       !parse_stamp(time);
  constexpr std::size_t kOneInAHundred = 100;
  if (minutes && odd.count * kOneInAHundred > table.rows())
    return time_problems::clocks_of_minutes_and_seconds(
        path, {odd.count, odd.count + table.rows(), odd.line, std::string{time}});
  if (odd.count <= table.rows()) return std::nullopt;
  return time_problems::unreadable_times(path, {odd.count, odd.count + table.rows(), odd.line, odd.text});
}

}  // namespace

Result<LogTable> read_log(const std::string& path, const GivenSettings& given, const ReadingMeans& means) {
  auto file = SourceFile::open(path);
  if (!file) return file.problems();
  auto opening = open_table(file.value(), path, given);
  if (!opening) return opening.problems();
  const TablePlan plan = plan_of(opening.value());
  if (plan.number_cells.empty()) return table_problems::only_time(path, opening.value().header.first_row + 1);

  LogTable table;
  auto rows = read_rows(file.value(), path, opening.value(), plan, means, table);
  if (!rows) return rows.problems();

  table.encoding = opening.value().head.encoding;
  table.delimiter = opening.value().dialect.delimiter;
  table.decimal = opening.value().dialect.decimal;
  table.time = setting_of(plan.time.kind, given.time.has_value());
  table.time_unit_assumed = plan.time.unit_assumed;
  for (const std::size_t cell : plan.time.cells) table.time_columns.push_back(cell + 1);
  table.time_column =
      setting_of(opening.value().header.columns[plan.time.cells.front()].name, given.time_column.has_value());
  table.header_line = setting_of(opening.value().header.header_line, given.header_line.has_value());
  table.first_row_line = opening.value().header.first_row + 1;
  table.heading = opening.value().header.heading;
  Problems problems = assemble_table(plan, opening.value().header, std::move(rows.value().thread_results),
                                     static_cast<std::int64_t*>(rows.value().stamps.data()),
                                     rows.value().count, given.dates, path, table);
  if (!problems.empty()) return problems;
  if (auto problem = unreadable_times(table, plan, path)) return *std::move(problem);
  return table;
}

}  // namespace soakwright
