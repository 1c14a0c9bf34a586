// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/dialect_detection.h"

#include <algorithm>
#include <array>
#include <map>
#include <span>
#include <utility>

#include "core/read/cell.h"
#include "core/read/cell_split.h"
#include "core/read/table_problems.h"
#include "core/read/time/time_stamp.h"
#include "core/read/unit_name.h"

namespace soakwright {
namespace {

// Enough to tell dialects apart; more only costs time before the first row.
constexpr std::size_t kLinesTried = 2'000;
constexpr std::size_t kRowsWanted = 30;

/// The lines of one cell count under one delimiter.
struct Votes {
  long good = 0;
  long text = 0;
  std::vector<std::size_t> rows;
  [[nodiscard]] long score() const { return good - text; }
};

bool is_good(CellLook look) {
  return look == CellLook::number || look == CellLook::date || look == CellLook::clock ||
         look == CellLook::date_and_clock;
}

/// A number in either decimal sign.
bool is_good_cell(std::string_view cell, char delimiter) {
  if (is_good(look_of(cell, '.'))) return true;
  return delimiter != '.' && parse_cell(cell, ',').kind == Cell::Kind::number;
}

struct Candidate {
  char delimiter = ',';
  std::size_t cells = 0;
  Votes votes;
};

/// Rows that disagree about their number of cells have as many as the line of names above them, if any of
/// them has: the others have cells too many or too few. 0 where the lines say nothing.
std::size_t cells_named(const LogHead& head, char delimiter, const std::map<std::size_t, Votes>& by_count) {
  if (by_count.size() < 2 || delimiter == ' ') return 0;
  std::size_t first = head.lines.size();
  for (const auto& [count, votes] : by_count) first = std::min(first, votes.rows.front());
  while (first > 0 && without_spaces(head.lines[first - 1]).empty()) --first;
  if (first == 0) return 0;
  std::vector<std::string_view> cells;
  split_cells(head.lines[first - 1], delimiter, cells);
  while (!cells.empty() && without_spaces(cells.back()).empty()) cells.pop_back();
  const bool names = std::all_of(cells.begin(), cells.end(),
                                 [](std::string_view cell) { return look_of(cell, '.') == CellLook::text; });
  return names && by_count.count(cells.size()) != 0 ? cells.size() : 0;
}

/// `from`: rows stand behind a line of names that is given.
Candidate try_delimiter(const LogHead& head, char delimiter, std::size_t from) {
  std::map<std::size_t, Votes> by_count;
  std::vector<std::string_view> cells;
  std::size_t tried = 0;
  for (std::size_t i = from; i < head.lines.size() && tried < kLinesTried; ++i) {
    if (without_spaces(head.lines[i]).empty()) continue;
    ++tried;
    split_cells(head.lines[i], delimiter, cells);
    if (cells.size() < 2) continue;
    long good = 0;
    long text = 0;
    std::string_view last_text;
    // A line with more cells is refused in the end; how far they are numbers then only chooses the delimiter.
    const std::size_t looked_at = std::min(cells.size(), kMostColumns);
    for (const std::string_view cell : std::span{cells}.first(looked_at)) {
      if (is_good_cell(cell, delimiter)) {
        ++good;
      } else if (look_of(cell, '.') == CellLook::text && cell != last_text) {
        // One word in many columns is an input that is not there, and no sign of a wrong delimiter.
        ++text;
        last_text = cell;
      }
    }
    if (good < 2 || good < text) continue;
    Votes& votes = by_count[cells.size()];
    votes.good += good;
    votes.text += text;
    votes.rows.push_back(i);
    if (votes.rows.size() >= kRowsWanted) break;
  }
  Candidate best;
  best.delimiter = delimiter;
  if (const std::size_t count = cells_named(head, delimiter, by_count); count != 0) {
    best.cells = count;
    best.votes = std::move(by_count[count]);
    return best;
  }
  for (auto& [count, votes] : by_count)
    if (votes.score() > best.votes.score() || best.cells == 0) {
      best.cells = count;
      best.votes = std::move(votes);
    }
  return best;
}

Candidate best_candidate(const LogHead& head, std::optional<char> given, std::size_t from) {
  if (given) return try_delimiter(head, *given, from);
  Candidate best;
  for (const char delimiter : {',', ';', '\t', '|'}) {
    Candidate candidate = try_delimiter(head, delimiter, from);
    if (candidate.cells != 0 && (best.cells == 0 || candidate.votes.score() > best.votes.score()))
      best = std::move(candidate);
  }
  if (best.cells != 0 && best.votes.text == 0) return best;
  Candidate spaces = try_delimiter(head, ' ', from);
  if (spaces.cells != 0 && (best.cells == 0 || spaces.votes.text == 0)) return spaces;
  return best;
}

/// Decimal signs seen in the rows' numbers.
std::pair<std::size_t, std::size_t> points_and_commas(const LogHead& head, const Candidate& candidate) {
  std::size_t points = 0;
  std::size_t commas = 0;
  std::vector<std::string_view> cells;
  for (const std::size_t row : candidate.votes.rows) {
    split_cells(head.lines[row], candidate.delimiter, cells);
    for (const std::string_view cell : cells) {
      if (cell.find('.') != std::string_view::npos && parse_cell(cell, '.').kind == Cell::Kind::number)
        ++points;
      if (cell.find(',') != std::string_view::npos && parse_cell(cell, ',').kind == Cell::Kind::number)
        ++commas;
    }
  }
  return {points, commas};
}

Problem no_table(const LogHead& head, const std::string& path, const GivenSettings& settings) {
  const std::optional<char> given = settings.delimiter;
  const std::size_t from = settings.header_line.value_or(0);
  if (from != 0)
    if (const Candidate found = best_candidate(head, given, 0); found.cells != 0)
      return table_problems::no_rows_behind_names(path, from, found.votes.rows.front() + 1);
  if (given)
    if (const Candidate found = best_candidate(head, std::nullopt, from); found.cells != 0)
      return table_problems::other_delimiter(path, found.votes.rows.front() + 1, *given, found.delimiter);
  std::size_t line = 0;
  while (line < head.lines.size() && without_spaces(head.lines[line]).empty()) ++line;
  return line == head.lines.size() ? table_problems::only_empty_lines(path)
                                   : table_problems::no_rows(path, line + 1);
}

}  // namespace

CellLook look_of(std::string_view cell, char decimal) {
  cell = without_spaces(cell);
  if (cell.empty()) return CellLook::empty;
  const char c = cell.front();
  const bool may_be_number =
      (c >= '0' && c <= '9') || c == '-' || c == '+' || c == decimal || static_cast<unsigned char>(c) >= 0x80;
  if (may_be_number && parse_cell(cell, decimal).kind == Cell::Kind::number) return CellLook::number;
  if (const auto stamp = parse_stamp(cell)) {
    if (stamp->date && stamp->clock_ns) return CellLook::date_and_clock;
    return stamp->date ? CellLook::date : CellLook::clock;
  }
  if (parse_elapsed(cell)) return CellLook::clock;
  if (cell.find_first_not_of("-_*. ?#") == std::string_view::npos) return CellLook::no_value;
  const std::string lower = lower_case(cell.substr(0, 8));
  for (const std::string_view word : {"nan", "null", "none", "n/a", "na", "open", "inf", "-inf", "err",
                                      "error", "invalid", "over", "under", "#n/a", "bad"})
    if (lower == word) return CellLook::no_value;
  return CellLook::text;
}

Result<Dialect> detect_dialect(const LogHead& head, const GivenSettings& given, const std::string& path) {
  const Candidate candidate = best_candidate(head, given.delimiter, given.header_line.value_or(0));
  if (candidate.cells == 0) return no_table(head, path, given);
  if (candidate.cells > kMostColumns)
    return table_problems::too_many_columns(path, candidate.votes.rows.front() + 1, candidate.cells,
                                            kMostColumns);
  Dialect dialect;
  dialect.delimiter = setting_of(candidate.delimiter, given.delimiter.has_value());
  dialect.cells = candidate.cells;
  dialect.rows = candidate.votes.rows;
  const auto [points, commas] = points_and_commas(head, candidate);
  const char found = commas > points ? ',' : '.';
  if (given.decimal) {
    if (*given.decimal != found && points + commas != 0 && (points == 0 || commas == 0))
      return table_problems::other_decimal_sign(path, dialect.rows.front() + 1, *given.decimal, found);
    dialect.decimal = {*given.decimal, SettingBy::given};
  } else {
    dialect.decimal = {found};
  }
  return dialect;
}

}  // namespace soakwright
