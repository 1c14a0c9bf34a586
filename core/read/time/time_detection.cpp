// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/time_detection.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "core/read/cell.h"
#include "core/read/cell_split.h"
#include "core/read/text_encoding.h"
#include "core/read/time/clock_parts.h"
#include "core/read/time/column_look.h"
#include "core/read/time/time_problems.h"

namespace soakwright {
namespace {

std::optional<TimePlan> by_stamps(const std::vector<ColumnLook>& looks, const TableHeader& header) {
  for (std::size_t c = 0; c < looks.size(); ++c)
    if (mostly(looks[c].full, looks[c])) return TimePlan{TimeKind::date_time, {c}, false};
  const auto has_clocks = [&looks](std::size_t c) { return mostly(looks[c].clocks, looks[c]); };
  for (std::size_t date = 0; date < looks.size(); ++date) {
    if (!mostly(looks[date].dates, looks[date])) continue;
    std::optional<std::size_t> clock;
    for (std::size_t c = date + 1; c < looks.size() && !clock; ++c)
      if (has_clocks(c)) clock = c;
    for (std::size_t c = date; c-- > 0 && !clock;)
      if (has_clocks(c)) clock = c;
    if (!clock) continue;
    TimePlan plan{TimeKind::date_time, {date, *clock}, false};
    if (const auto half = half_day_after(looks, *clock)) plan.cells.push_back(*half);
    return plan;
  }
  for (std::size_t c = 0; c < looks.size(); ++c) {
    if (!has_clocks(c)) continue;
    const bool elapsed = looks[c].beyond_a_day || is_called_elapsed(header.columns[c]);
    TimePlan plan{elapsed ? TimeKind::elapsed_hms : TimeKind::time_of_day, {c}, false};
    if (const auto half = half_day_after(looks, c); half && !elapsed) plan.cells.push_back(*half);
    return plan;
  }
  return std::nullopt;
}

std::optional<TimePlan> by_numbers(const std::vector<ColumnLook>& looks, const TableHeader& header) {
  const auto is_numbers = [&looks](std::size_t c) { return mostly(looks[c].numbers, looks[c]); };
  // A unit of time says it all.
  for (std::size_t c = 0; c < looks.size(); ++c) {
    if (!is_numbers(c)) continue;
    const auto unit = unit_said(header.columns[c]);
    if (!unit || !(is_time_name(header.columns[c].name) || c == 0 || !header.columns[c].named)) continue;
    if (const auto by_size = kind_by_size(looks[c]);
        by_size && (*unit == SaidUnit::days || *unit == SaidUnit::milliseconds ||
                    (*unit == SaidUnit::seconds && *by_size == TimeKind::unix_s)))
      return TimePlan{*by_size, {c}, false};
    if (const auto kind = elapsed_kind(*unit)) return TimePlan{*kind, {c}, false};
  }
  // A name of time with no unit: the size tells calendars, else seconds are assumed.
  for (std::size_t c = 0; c < looks.size(); ++c) {
    if (!is_numbers(c) || !header.columns[c].named || !is_time_name(header.columns[c].name)) continue;
    if (const auto kind = kind_by_size(looks[c])) return TimePlan{*kind, {c}, false};
    if (header.columns[c].unit.empty() && rises(looks[c].values))
      return TimePlan{TimeKind::elapsed_s, {c}, true};
  }
  // Neither name nor unit.
  if (!looks.empty() && is_numbers(0) && !header.columns[0].named && header.columns[0].unit.empty() &&
      rises(looks[0].values)) {
    if (const auto kind = kind_by_size(looks[0])) return TimePlan{*kind, {0}, false};
    return TimePlan{TimeKind::elapsed_s, {0}, true};
  }
  return std::nullopt;
}

/// The first three cells of the first row, or fewer where it has fewer; it may also have cells too many.
std::vector<time_problems::NamedCell> first_cells(const LogHead& head, const Dialect& dialect,
                                                  const TableHeader& header) {
  constexpr std::size_t kFew = 3;
  constexpr std::size_t kLongest = 30;
  std::vector<std::string_view> cells;
  split_cells(head.lines[header.first_row], dialect.delimiter.value, cells);
  std::vector<time_problems::NamedCell> first;
  for (std::size_t c = 0; c < std::min({cells.size(), header.columns.size(), kFew}); ++c)
    first.push_back({header.columns[c].name, std::string{without_spaces(cells[c]).substr(0, kLongest)}});
  return first;
}

Problem no_time(const LogHead& head, const Dialect& dialect, const TableHeader& header,
                const std::vector<ColumnLook>& looks, const std::string& path) {
  std::optional<std::size_t> dates;
  for (std::size_t c = 0; c < looks.size(); ++c)
    if (mostly(looks[c].dates, looks[c])) dates = c + 1;
  const std::size_t line = header.first_row + 1;
  const auto cells = first_cells(head, dialect, header);
  return dates ? time_problems::dates_without_time_of_day(path, line, *dates, cells)
               : time_problems::no_time(path, line, cells);
}

/// The column that a person named, as GivenSettings::time_column says.
Result<std::size_t> named_column(const TableHeader& header, const std::string& said,
                                 const std::string& path) {
  const std::string wanted = lower_case(without_spaces(said));
  std::vector<std::size_t> found;
  std::vector<std::string> names;
  for (std::size_t c = 0; c < header.columns.size(); ++c) {
    const ColumnHeading& heading = header.columns[c];
    if (heading.named && (lower_case(heading.header) == wanted || lower_case(heading.name) == wanted))
      found.push_back(c);
    names.push_back(heading.name);
  }
  for (std::size_t c = 0; c < header.columns.size() && found.empty(); ++c)
    if (std::to_string(c + 1) == wanted) found.push_back(c);
  if (found.size() == 1) return found.front();
  const std::size_t line = header.header_line != 0 ? header.header_line : header.first_row + 1;
  return found.empty() ? time_problems::no_such_time_column(path, line, said, names)
                       : time_problems::several_such_time_columns(path, line, said);
}

/// Column `c` as a time of that kind, where its cells can be one.
std::optional<TimePlan> as_kind(const std::vector<ColumnLook>& looks, std::size_t c, TimeKind kind) {
  const ColumnLook& look = looks[c];
  const auto partner = [&](std::size_t ColumnLook::*cells) -> std::optional<std::size_t> {
    for (std::size_t other = 0; other < looks.size(); ++other)
      if (other != c && mostly(looks[other].*cells, looks[other])) return other;
    return std::nullopt;
  };
  const auto with_half_day = [&](TimePlan plan) {
    if (const auto half = half_day_after(looks, plan.cells.back())) plan.cells.push_back(*half);
    return plan;
  };
  const bool numbers = mostly(look.numbers, look);
  switch (kind) {
    case TimeKind::date_time:
      if (mostly(look.full, look)) return TimePlan{kind, {c}, false};
      if (mostly(look.dates, look))
        if (const auto clock = partner(&ColumnLook::clocks)) return with_half_day({kind, {c, *clock}, false});
      if (mostly(look.clocks, look))
        if (const auto date = partner(&ColumnLook::dates)) return with_half_day({kind, {*date, c}, false});
      return std::nullopt;
    case TimeKind::time_of_day:
      if (!mostly(look.clocks, look) || look.beyond_a_day) return std::nullopt;
      return with_half_day({kind, {c}, false});
    case TimeKind::elapsed_hms:
      return mostly(look.clocks, look) ? std::optional{TimePlan{kind, {c}, false}} : std::nullopt;
    case TimeKind::elapsed_s:
    case TimeKind::elapsed_min:
    case TimeKind::elapsed_h:
      return numbers ? std::optional{TimePlan{kind, {c}, false}} : std::nullopt;
    case TimeKind::serial_days:
    case TimeKind::unix_s:
    case TimeKind::unix_ms:
      if (!numbers || kind_by_size(look) != kind) return std::nullopt;
      return TimePlan{kind, {c}, false};
  }
  return std::nullopt;
}

/// What the cells of a named column say themselves.
std::optional<TimePlan> by_column(const std::vector<ColumnLook>& looks, const TableHeader& header,
                                  std::size_t c) {
  if (auto plan = as_kind(looks, c, TimeKind::date_time)) return plan;
  if (is_called_elapsed(header.columns[c]))
    if (auto plan = as_kind(looks, c, TimeKind::elapsed_hms)) return plan;
  for (const TimeKind kind : {TimeKind::time_of_day, TimeKind::elapsed_hms, TimeKind::unix_s,
                              TimeKind::unix_ms, TimeKind::serial_days})
    if (auto plan = as_kind(looks, c, kind)) return plan;
  const auto unit = unit_said(header.columns[c]);
  if (const auto kind = unit ? elapsed_kind(*unit) : std::nullopt) return as_kind(looks, c, *kind);
  auto plan = as_kind(looks, c, TimeKind::elapsed_s);
  if (plan) plan->unit_assumed = true;
  return plan;
}

/// The first column that can be of that kind: named as a time, or else rising.
std::optional<TimePlan> by_kind(const std::vector<ColumnLook>& looks, const TableHeader& header,
                                TimeKind kind) {
  for (const bool named : {true, false})
    for (std::size_t c = 0; c < looks.size(); ++c) {
      const bool time_named = is_time_name(header.columns[c].name) || unit_said(header.columns[c]);
      const bool fits = named ? time_named : !mostly(looks[c].numbers, looks[c]) || rises(looks[c].values);
      if (!fits) continue;
      if (auto plan = as_kind(looks, c, kind)) return plan;
    }
  return std::nullopt;
}

/// `given`, `column` or both were given and do not fit the cells.
Problem not_that_time(const LogHead& head, const Dialect& dialect, const TableHeader& header,
                      std::optional<TimeKind> given, std::optional<std::size_t> column,
                      const std::string& path) {
  std::vector<std::string_view> cells;
  split_cells(head.lines[header.first_row], dialect.delimiter.value, cells);
  constexpr std::size_t kLongest = 30;
  const std::string cell = to_utf8(without_spaces(cells[column.value_or(0)]).substr(0, kLongest));
  const std::size_t line = header.first_row + 1;
  if (!column) return time_problems::no_column_is_that_time(path, line, *given, cell);
  const std::string& name = header.columns[*column].name;
  return given ? time_problems::column_is_not_that_time(path, line, *given, {name, cell})
               : time_problems::column_is_no_time(path, line, {name, cell});
}

}  // namespace

Result<TimePlan> detect_time(const LogHead& head, const Dialect& dialect, const TableHeader& header,
                             const GivenSettings& given, const std::string& path) {
  const std::vector<ColumnLook> looks = look_at(head, dialect, header.first_row);
  if (given.time || given.time_column) {
    std::optional<std::size_t> column;
    if (given.time_column) {
      const auto named = named_column(header, *given.time_column, path);
      if (!named) return named.problems();
      column = named.value();
    }
    auto plan = !given.time ? by_column(looks, header, *column)
                : column    ? as_kind(looks, *column, *given.time)
                            : by_kind(looks, header, *given.time);
    if (plan) return *std::move(plan);
    return not_that_time(head, dialect, header, given.time, column, path);
  }
  if (auto plan = by_stamps(looks, header)) {
    const std::size_t c = plan->cells.front();
    const bool clock_alone = plan->kind == TimeKind::time_of_day || plan->kind == TimeKind::elapsed_hms;
    if (!clock_alone || looks[c].two_parts != looks[c].clocks || plan->cells.size() > 1)
      return *std::move(plan);
    const bool elapsed = looks[c].beyond_a_day || is_called_elapsed(header.columns[c]);
    const ClockParts parts = clock_parts_of(header.columns[c].header, looks[c].first_clock, elapsed);
    if (parts == ClockParts::minutes_and_seconds)
      return time_problems::minutes_and_seconds(path, header.first_row + 1, looks[c].first_clock);
    if (parts == ClockParts::nobody_knows)
      return time_problems::unclear_clock(path, header.first_row + 1, looks[c].first_clock);
    plan->unit_assumed = parts == ClockParts::assumed_hours_and_minutes;
    return *std::move(plan);
  }
  if (auto plan = by_numbers(looks, header)) return *std::move(plan);
  return no_time(head, dialect, header, looks, path);
}

}  // namespace soakwright
