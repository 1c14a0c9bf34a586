#include "core/read/time_detection.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/read/cell.h"
#include "core/read/cell_split.h"
#include "core/read/time_stamp.h"
#include "core/read/unit_name.h"

namespace soakwright {
namespace {

/// How the cells of one column look in the sample rows.
struct ColumnLook {
  std::size_t full = 0, dates = 0, clocks = 0, numbers = 0, halves = 0, filled = 0;
  bool beyond_a_day = false;  ///< clocks that no clock shows: 25:10:00, -0:00:10
  std::vector<double> values;
  int most_places = 0;
};

bool mostly(std::size_t some, const ColumnLook& look) { return some > 0 && some * 10 >= look.filled * 8; }

std::vector<ColumnLook> look_at(const LogHead& head, const Dialect& dialect, std::size_t first_row) {
  std::vector<ColumnLook> looks(dialect.cells);
  std::vector<std::string_view> cells;
  for (const std::size_t row : dialect.rows) {
    if (row < first_row) continue;
    split_cells(head.lines[row], dialect.delimiter.value, cells);
    for (std::size_t c = 0; c < dialect.cells; ++c) {
      ColumnLook& look = looks[c];
      const std::string_view text = without_blanks(cells[c]);
      if (text.empty()) continue;
      ++look.filled;
      switch (look_of(text, dialect.decimal.value)) {
        case CellLook::date_and_clock:
          ++look.full;
          break;
        case CellLook::date:
          ++look.dates;
          break;
        case CellLook::clock:
          ++look.clocks;
          if (!parse_stamp(text)) look.beyond_a_day = true;
          break;
        case CellLook::number: {
          const Cell cell = parse_cell(text, dialect.decimal.value);
          ++look.numbers;
          look.values.push_back(cell.value);
          look.most_places = std::max(look.most_places, cell.places);
          break;
        }
        case CellLook::text:
        case CellLook::no_value:
          if (is_half_day_mark(text)) ++look.halves;
          break;
        case CellLook::empty:
          break;
      }
    }
  }
  return looks;
}

bool rises(const std::vector<double>& values) {
  if (values.size() < 2) return false;
  std::size_t up = 0;
  std::size_t down = 0;
  for (std::size_t i = 1; i < values.size(); ++i) {
    if (values[i] > values[i - 1]) ++up;
    if (values[i] < values[i - 1]) ++down;
  }
  return up > 0 && up * 10 >= (values.size() - 1) * 5 && down * 10 <= values.size();
}

/// What numbers in a time column count, by their size: serial days and Unix times are far from anything a run
/// lasts.
std::optional<TimeKind> kind_by_size(const ColumnLook& look) {
  const auto [low, high] = std::minmax_element(look.values.begin(), look.values.end());
  if (low == look.values.end()) return std::nullopt;
  constexpr double kYear2000 = 946'684'800.0;
  constexpr double kYear2100 = 4'102'444'800.0;
  if (*low >= kYear2000 && *high < kYear2100) return TimeKind::unix_s;
  if (*low >= kYear2000 * 1e3 && *high < kYear2100 * 1e3) return TimeKind::unix_ms;
  // 1982 to 2064 as spreadsheets count; their rows differ by parts of a day, so they have many places.
  const double step = (*high - *low) / static_cast<double>(std::max<std::size_t>(look.values.size() - 1, 1));
  if (*low >= 30'000.0 && *high < 60'000.0 && look.most_places >= 4 && step < 1.0)
    return TimeKind::serial_days;
  return std::nullopt;
}

/// The unit that the name itself is: a column headed "min" or "Seconds".
std::optional<SaidUnit> unit_said(const ColumnHeading& heading) {
  auto unit = unit_of(heading.unit);
  if (!unit && heading.named) unit = unit_of(heading.name);
  if (unit && measures_time(*unit)) return unit;
  const std::string lower = lower_case(heading.name);
  if (heading.named && heading.unit.empty() && lower.find("second") != std::string::npos)
    return SaidUnit::seconds;
  if (heading.named && heading.unit.empty() && lower.find("minute") != std::string::npos)
    return SaidUnit::minutes;
  return std::nullopt;
}

std::optional<TimeKind> elapsed_kind(SaidUnit unit) {
  switch (unit) {
    case SaidUnit::seconds:
      return TimeKind::elapsed_s;
    case SaidUnit::minutes:
      return TimeKind::elapsed_min;
    case SaidUnit::hours:
      return TimeKind::elapsed_h;
    default:
      return std::nullopt;
  }
}

std::optional<TimePlan> by_stamps(const std::vector<ColumnLook>& looks, const TableHeader& header) {
  const auto half_day_after = [&looks](std::size_t clock) -> std::optional<std::size_t> {
    if (clock + 1 < looks.size() && mostly(looks[clock + 1].halves, looks[clock + 1])) return clock + 1;
    return std::nullopt;
  };
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
    if (const auto half = half_day_after(*clock)) plan.cells.push_back(*half);
    return plan;
  }
  for (std::size_t c = 0; c < looks.size(); ++c) {
    if (!has_clocks(c)) continue;
    const std::string name = lower_case(header.columns[c].name);
    const bool elapsed = looks[c].beyond_a_day || name.find("elapsed") != std::string::npos ||
                         name.find("duration") != std::string::npos ||
                         name.find("runtime") != std::string::npos ||
                         name.find("run time") != std::string::npos;
    TimePlan plan{elapsed ? TimeKind::elapsed_hms : TimeKind::time_of_day, {c}, false};
    if (const auto half = half_day_after(c); half && !elapsed) plan.cells.push_back(*half);
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

Problem no_time(const LogHead& head, const Dialect& dialect, const TableHeader& header,
                const std::vector<ColumnLook>& looks, const std::string& path) {
  std::vector<std::string_view> cells;
  split_cells(head.lines[header.first_row], dialect.delimiter.value, cells);
  std::string what = "no column holds the time";
  for (std::size_t c = 0; c < looks.size(); ++c)
    if (mostly(looks[c].dates, looks[c]))
      what = "column " + std::to_string(c + 1) + " holds dates, but no column the time of day";
  what += "; the first row begins with ";
  for (std::size_t c = 0; c < cells.size() && c < 3; ++c) {
    if (c != 0) what += ", ";
    what += '\'' + header.columns[c].name + "' " + std::string{without_blanks(cells[c]).substr(0, 30)};
  }
  return {ProblemKind::bad_input, path, header.first_row + 1, std::move(what),
          "a log needs a column of dates with times, times of day, or elapsed s, min or h"};
}

}  // namespace

Result<TimePlan> detect_time(const LogHead& head, const Dialect& dialect, const TableHeader& header,
                             const std::string& path) {
  const std::vector<ColumnLook> looks = look_at(head, dialect, header.first_row);
  if (auto plan = by_stamps(looks, header)) return *std::move(plan);
  if (auto plan = by_numbers(looks, header)) return *std::move(plan);
  return no_time(head, dialect, header, looks, path);
}

}  // namespace soakwright
