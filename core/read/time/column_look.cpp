// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/column_look.h"

#include <algorithm>
#include <string_view>

#include "core/read/cell.h"
#include "core/read/cell_split.h"
#include "core/read/text_encoding.h"
#include "core/read/time/time_stamp.h"

namespace soakwright {

bool mostly(std::size_t some, const ColumnLook& look) { return some > 0 && some * 10 >= look.filled * 8; }

std::vector<ColumnLook> look_at(const LogHead& head, const Dialect& dialect, std::size_t first_row) {
  std::vector<ColumnLook> looks(dialect.cells);
  std::vector<std::string_view> cells;
  for (const std::size_t row : dialect.rows) {
    if (row < first_row) continue;
    split_cells(head.lines[row], dialect.delimiter.value, cells);
    for (std::size_t c = 0; c < dialect.cells; ++c) {
      ColumnLook& look = looks[c];
      const std::string_view text = without_spaces(cells[c]);
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
          if (look.clocks++ == 0) look.first_clock = text;
          if (std::count(text.begin(), text.end(), ':') == 1) ++look.two_parts;
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

std::optional<std::size_t> half_day_after(const std::vector<ColumnLook>& looks, std::size_t clock) {
  if (clock + 1 < looks.size() && mostly(looks[clock + 1].halves, looks[clock + 1])) return clock + 1;
  return std::nullopt;
}

bool is_called_elapsed(const ColumnHeading& heading) {
  std::string name = lower_case(heading.name);
  for (const char* word : {"elapsed", "duration"})
    if (name.find(word) != std::string::npos) return true;
  std::erase(name, ' ');
  return name.find("runtime") != std::string::npos;
}

}  // namespace soakwright
