// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/row_parser.h"

#include <algorithm>
#include <cstring>

#include "core/read/cell_split.h"
#include "core/read/text_encoding.h"
#include "core/read/unit_name.h"

namespace soakwright {
namespace {

constexpr std::size_t kIndexedAtOnce = std::size_t{16} << 10;
constexpr std::size_t kLongestTextNote = 60;

}  // namespace

RowParser::RowParser(const TablePlan& plan, ColumnStore& store, std::int64_t* stamps, bool careful)
    : plan_(plan),
      columns_(store, plan.places),
      stamps_in_(plan, careful),
      stamps_(stamps),
      can_index_(!careful && plan.delimiter != ' '),
      parse_cells_(hot_loops().parse_cells),
      repeats_(plan.header_text, plan.units_text, plan.delimiter, plan.time.cells.front()) {
  stamp_parts_.resize(plan.time.cells.size());
  left_.resize(plan.number_cells.size());
  plan_runs();
}

/// Neighbouring columns of the same places can be read with the same constants.
void RowParser::plan_runs() {
  runs_.clear();
  lone_columns_.clear();
  runs_version_ = columns_.version();
  int run_places = -1;
  for (std::size_t column = 0; column < plan_.number_cells.size(); ++column) {
    const int places = columns_.places()[column];
    const std::size_t cell = plan_.number_cells[column];
    if (columns_.is_wide(column) || places > DecimalShape::kMostPlaces) {
      lone_columns_.push_back(column);
      run_places = -1;
      continue;
    }
    if (run_places == places && runs_.back().last_cell == cell) {
      ++runs_.back().last_cell;
    } else {
      runs_.push_back({cell, cell + 1, column, DecimalShape::of(places, plan_.decimal)});
      run_places = places;
    }
  }
}

BlockOutcome RowParser::parse(const Block& block) {
  outcome_ = {};
  outcome_.sequence = block.sequence;
  outcome_.first_row = block.first_row;
  outcome_.rows = block.rows;
  outcome_.pieces.emplace_back(block.first_row, block.first_line);
  columns_.begin_block(block.first_row, block.rows);
  plan_runs();
  text_ = block.memory.get();
  row_ = block.first_row;
  line_ = block.first_line;
  row_text_before_ = block.line_before;
  stamp_before_known_ = false;
  const auto offset = [this](const char* at) { return static_cast<std::size_t>(at - text_); };
  const std::size_t end = offset(block.end);
  std::size_t indexed = offset(block.begin);
  auto line_begin = static_cast<std::uint32_t>(indexed);
  quotes_ = std::memchr(block.begin, '"', static_cast<std::size_t>(block.end - block.begin)) != nullptr;

  index_.clear();
  const char delimiter = can_index_ ? plan_.delimiter : plan_.line_end;
  std::size_t used = 0;
  while (indexed < end) {
    const std::size_t stop = std::min(end, indexed + kIndexedAtOnce);
    index_.add(text_, indexed, stop, delimiter, plan_.line_end, used);
    indexed = stop;
    used = 0;
    for (std::size_t i = 0; i < index_.line_count(); ++i) {
      const std::size_t line_place = index_.lines()[i];
      const std::uint32_t line_end = index_.ends()[line_place];
      unfinished_ = block.cut_at_end && line_end + 1U == end;
      std::uint32_t text_end = line_end;
      if (text_end > line_begin && text_[text_end - 1] == '\r') {
        --text_end;
        index_.ends()[line_place] = text_end;
      }
      if (text_end == line_begin) {
        // A line with nothing on it is no row; from here rows and lines part.
        outcome_.pieces.emplace_back(row_, line_ + 1);
      } else {
        parse_line(used, line_place + 1 - used, line_begin, text_end);
        ++row_;
      }
      ++line_;
      used = line_place + 1;
      line_begin = line_end + 1;
    }
  }
  outcome_.wide = columns_.end_block();
  outcome_.places = columns_.places();
  return std::move(outcome_);
}

void RowParser::parse_line(std::size_t first_end, std::size_t cells, std::uint32_t begin, std::uint32_t end) {
  const std::string_view line{text_ + begin, end - begin};
  const bool plain = can_index_ && cells == plan_.cells &&
                     !(quotes_ && std::memchr(line.data(), '"', line.size()) != nullptr);
  if (!plain || !fast_row(index_.ends() + first_end, begin, end)) careful_row(line);
}

bool RowParser::repeats_row_before(std::string_view line, std::int64_t stamp) {
  const bool same = (!stamp_before_known_ || stamp == stamp_before_) && line == row_text_before_;
  row_text_before_ = line;
  stamp_before_ = stamp;
  stamp_before_known_ = true;
  return same;
}

bool RowParser::fast_row(const std::uint32_t* ends, std::uint32_t begin, std::uint32_t end) {
  const auto begin_of = [ends, begin](std::size_t cell) { return cell == 0 ? begin : ends[cell - 1] + 1; };
  for (std::size_t i = 0; i < stamp_parts_.size(); ++i) {
    const std::size_t cell = plan_.time.cells[i];
    stamp_parts_[i] = {text_ + begin_of(cell), ends[cell] - begin_of(cell)};
  }
  std::int64_t stamp = 0;
  if (!stamps_in_.read(stamp_parts_.data(), stamp)) return false;
  stamps_[row_] = stamp;
  const std::string_view line{text_ + begin, end - begin};
  if (repeats_row_before(line, stamp)) {
    drop(line_issues_.repeat_rows, line);
    return true;
  }
  ColumnStore& store = columns_.store();
  const std::size_t stride = store.column_stride();
  for (const Run& run : runs_) {
    const std::size_t left =
        parse_cells_(run.shape, text_, begin_of(run.first_cell), ends + run.first_cell,
                     run.last_cell - run.first_cell, &store.at(run.first_column, row_), stride, left_.data());
    for (std::size_t i = 0; i < left; ++i) {
      const std::size_t cell = run.first_cell + left_[i];
      put_cell(run.first_column + left_[i], {text_ + begin_of(cell), ends[cell] - begin_of(cell)});
    }
  }
  for (const std::size_t column : lone_columns_) {
    const std::size_t cell = plan_.number_cells[column];
    put_cell(column, {text_ + begin_of(cell), ends[cell] - begin_of(cell)});
  }
  if (columns_.version() != runs_version_) plan_runs();
  return true;
}

void RowParser::put_cell(std::size_t column, std::string_view text) {
  // What is no number is one and the same word nearly every time.
  if (text != word_) {
    const Cell cell = parse_cell(text, plan_.decimal);
    if (cell.kind != Cell::Kind::text) return columns_.put(column, row_, cell, text, line_);
    word_ = text;
    word_cell_ = cell;
  }
  columns_.put(column, row_, word_cell_, text, line_);
}

void RowParser::careful_row(std::string_view line) {
  split_cells(line, plan_.delimiter, cells_);
  for (std::size_t i = 0; i < stamp_parts_.size(); ++i) {
    const std::size_t cell = plan_.time.cells[i];
    if (cell >= cells_.size()) return drop_line_without_time(line);
    stamp_parts_[i] = cells_[cell];
  }
  std::int64_t stamp = 0;
  if (!stamps_in_.read(stamp_parts_.data(), stamp)) return drop_line_without_time(line);
  stamps_[row_] = stamp;
  if (repeats_row_before(line, stamp)) return drop(line_issues_.repeat_rows, line);

  const bool is_short = cells_.size() < plan_.cells && !plan_.number_cells.empty() &&
                        cells_.size() <= plan_.number_cells.back();
  std::size_t trusted = cells_.size();
  const auto extra = cells_.begin() + static_cast<std::ptrdiff_t>(std::min(cells_.size(), plan_.cells));
  if (is_short) {
    // A number that the file's end cuts in two would still look like a number.
    if (unfinished_ && trusted > 0) --trusted;
    if (trusted == 0 || trusted <= plan_.time.cells.back()) return drop(line_issues_.short_rows, line);
    add_line_issue(line_issues_.short_rows, {1, line_, to_utf8(line.substr(0, kLongestTextNote))});
  } else if (std::any_of(extra, cells_.end(),
                         [](std::string_view cell) { return !without_spaces(cell).empty(); })) {
    // Nobody knows behind which cell the one too many was put in.
    trusted = 0;
    add_line_issue(line_issues_.long_rows, {1, line_, to_utf8(line.substr(0, kLongestTextNote))});
  }
  for (std::size_t column = 0; column < plan_.number_cells.size(); ++column) {
    const std::size_t cell = plan_.number_cells[column];
    if (cell < trusted)
      put_cell(column, cells_[cell]);
    else
      columns_.put_absent(column, row_);
  }
  if (columns_.version() != runs_version_) plan_runs();
}

void RowParser::drop_line_without_time(std::string_view line) {
  stamp_before_known_ = false;
  switch (repeats_.kind_of(line, plan_.delimiter)) {
    case HeaderRepeat::same_header:
      return drop(line_issues_.repeated_headers, line);
    case HeaderRepeat::same_units:
      // The units under a repeated header belong to it.
      drop(line_issues_.repeated_headers, line);
      --line_issues_.repeated_headers.count;
      return;
    case HeaderRepeat::other_header:
      return drop(line_issues_.other_headers, line);
    case HeaderRepeat::none:
      return drop(line_issues_.odd_lines, line);
  }
}

void RowParser::drop(LineIssue& line_issue, std::string_view line) {
  add_line_issue(line_issue, {1, line_, to_utf8(line.substr(0, kLongestTextNote))});
  row_text_before_ = line;
  outcome_.dropped.push_back(row_);
  stamps_[row_] = 0;
  for (std::size_t column = 0; column < plan_.number_cells.size(); ++column)
    columns_.put_absent(column, row_);
}

}  // namespace soakwright
