// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_copied.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>

#include "core/phases/suspects/readings/equal_columns.h"
#include "core/phases/suspects/readings/repeat_odds.h"

namespace soakwright {

namespace {

// A hint is looked for in the cells first: equal in so many on end.
constexpr std::size_t kFewestEqualCells = 12;
constexpr double kLeastShareOfCells = 0.01;
// Scatter that both have is none by chance: so many turns back within so many rows, or so many strong bends.
constexpr std::size_t kFewestTurns = 60;
constexpr std::size_t kTurnRows = 6;
constexpr std::size_t kFewestStrong = 40;
// A set point is followed to the digit over so many changes and so far.
constexpr std::size_t kFewestChanges = 60;
constexpr double kLeastRangeK = 60.0;
constexpr double kNearlyAllRows = 0.98;  // of the rows between the first and the last change of the set point

/// What chance would have to do as well for the rows [first, last] of a channel to be met by another.
struct TurnsAndBends {
  std::size_t readings = 0;
  std::size_t turns = 0;
  std::size_t strong = 0;
  [[nodiscard]] bool enough() const { return turns >= kFewestTurns || strong >= kFewestStrong; }
};

TurnsAndBends scatter_within(const RowReadings& channel, std::size_t first, std::size_t last) {
  TurnsAndBends scatter;
  std::int64_t direction = 0;
  std::size_t changed_at = first;
  for (std::size_t row = first; row <= last; ++row) {
    if (!channel.known(row)) continue;
    ++scatter.readings;
    if (row == first || !channel.known(row - 1)) continue;
    const std::int64_t change = std::int64_t{channel.units[row]} - std::int64_t{channel.units[row - 1]};
    if (change != 0) {
      if (direction * change < 0 && row - changed_at <= kTurnRows) ++scatter.turns;
      direction = change > 0 ? 1 : -1;
      changed_at = row;
    }
    if (row + 1 <= last && channel.known(row + 1)) {
      const std::int64_t next = std::int64_t{channel.units[row + 1]} - std::int64_t{channel.units[row]};
      if (std::abs(next - change) >= kStrongDigits * channel.digit) ++scatter.strong;
    }
  }
  return scatter;
}

/// The longest run of cells in which both are known and equal, as rows around its middle; nullopt if it is
/// short.
std::optional<std::size_t> row_of_equal_cells(const RowTable& table, const SampledRecord& sampled,
                                              std::size_t a, std::size_t b) {
  const SampledTrace& one = sampled.traces[a];
  const SampledTrace& other = sampled.traces[b];
  const std::size_t least = std::max(
      kFewestEqualCells, static_cast<std::size_t>(kLeastShareOfCells * static_cast<double>(sampled.cells())));
  const auto equal = [&](std::size_t k) {
    return one.celsius[k] == other.celsius[k] && one.known[k] != 0 && other.known[k] != 0;
  };
  std::size_t best = 0;
  std::size_t end = 0;
  // A run long enough meets one of every `least` cells.
  for (std::size_t look = least - 1; look < sampled.cells(); look += least) {
    if (!equal(look)) continue;
    std::size_t first = look;
    std::size_t last = look;
    while (first > 0 && equal(first - 1)) --first;
    while (last + 1 < sampled.cells() && equal(last + 1)) ++last;
    if (last - first + 1 > best) {
      best = last - first + 1;
      end = last;
    }
  }
  if (best < least) return std::nullopt;
  const double middle_s = sampled.times_s[end - best / 2];
  const auto times = table.record->evaluated_times_s();
  const auto at = std::lower_bound(times.begin(), times.end(), middle_s - 1e-9) - times.begin();
  return std::min(static_cast<std::size_t>(at), table.rows() - 1);
}

/// Rows around `row` in which the two are equal, missing readings included; first and last are known.
std::optional<RowRun> equal_around(const RowReadings& a, const RowReadings& b, std::size_t row) {
  if (a.units[row] != b.units[row]) return std::nullopt;
  RowRun run{row, row, 0};
  while (run.first > 0 && a.units[run.first - 1] == b.units[run.first - 1]) --run.first;
  while (run.last + 1 < a.rows() && a.units[run.last + 1] == b.units[run.last + 1]) ++run.last;
  while (run.first < run.last && !a.known(run.first)) ++run.first;
  while (run.last > run.first && !a.known(run.last)) --run.last;
  return run;
}

Suspect copied_suspect(const RowTable& table, std::size_t place, const RowRun& run,
                       SuspectEvidence evidence) {
  Suspect suspect;
  suspect.channel = table.channels[place].channel;
  suspect.code = Suspect::Code::copied;
  suspect.from_s = table.time_s(run.first);
  suspect.to_s = table.time_s(run.last);
  suspect.evidence = evidence;
  return suspect;
}

/// The rows in which the channel equals the set point, where those are all the rows of its ramps.
std::optional<RowRun> follows(const RowReadings& channel, const RowReadings& set_point) {
  if (channel.kelvin_per_unit != set_point.kelvin_per_unit) return std::nullopt;
  std::size_t changes = 0;
  std::size_t alike = 0;
  std::int32_t low = 0;
  std::int32_t high = 0;
  RowRun run;
  for (std::size_t row = 1; row < channel.rows(); ++row) {
    if (!channel.known(row) || !set_point.known(row) || !set_point.known(row - 1)) continue;
    if (set_point.units[row] == set_point.units[row - 1]) continue;
    ++changes;
    if (channel.units[row] != set_point.units[row]) {
      if (changes > kFewestChanges && static_cast<double>(alike) < 0.5 * static_cast<double>(changes))
        return std::nullopt;
      continue;
    }
    low = alike == 0 ? channel.units[row] : std::min(low, channel.units[row]);
    high = alike == 0 ? channel.units[row] : std::max(high, channel.units[row]);
    ++alike;
  }
  if (alike < kFewestChanges || static_cast<double>(alike) < kNearlyAllRows * static_cast<double>(changes) ||
      channel.kelvin(std::int64_t{high} - std::int64_t{low}) < kLeastRangeK)
    return std::nullopt;
  bool any = false;
  for (std::size_t row = 0; row < channel.rows(); ++row) {
    if (!channel.known(row) || channel.units[row] != set_point.units[row]) continue;
    if (!any) run.first = row;
    any = true;
    run.last = row;
    ++run.count;
  }
  return run;
}

/// A column with the name of a set point whose readings are those of the thermocouples is read as one of
/// them, with this notice: then they may be those of the set point.
bool named_like_set_point(const Record& record, std::size_t channel) {
  return std::any_of(record.notices.begin(), record.notices.end(), [&](const Notice& notice) {
    return notice.code == "name-unclear" && notice.channel == record.channels[channel].name;
  });
}

}  // namespace

std::vector<Suspect> find_copied_channels(const RowTable& table, const SampledRecord& sampled) {
  std::vector<Suspect> found;
  std::vector<char> copied(table.channels.size());
  const auto later = pairs_to_compare(table, [&](std::size_t place) {
    return table.rows() > 0 && scatter_within(table.channels[place], 0, table.rows() - 1).enough();
  });
  for (std::size_t a = 0; a < table.channels.size(); ++a) {
    if (copied[a] != 0) continue;
    for (const std::size_t b : later[a]) {
      const RowReadings& one = table.channels[a];
      const RowReadings& other = table.channels[b];
      if (copied[b] != 0 || one.kelvin_per_unit != other.kelvin_per_unit) continue;
      const auto row = row_of_equal_cells(table, sampled, a, b);
      if (!row) continue;
      const auto run = equal_around(one, other, *row);
      if (!run) continue;
      const TurnsAndBends scatter = scatter_within(other, run->first, run->last);
      if (!scatter.enough()) continue;
      copied[b] = 1;
      found.push_back(copied_suspect(
          table, b, *run,
          {.kind = SuspectEvidence::Kind::equals_channel, .count = scatter.readings, .other = one.channel}));
    }
  }
  return found;
}

std::vector<Suspect> find_copied_set_point(const RowTable& table) {
  std::vector<Suspect> found;
  const auto hold_against = [&](const RowReadings& set_point, SuspectEvidence evidence) {
    for (std::size_t i = 0; i < table.channels.size(); ++i) {
      const bool itself = evidence.kind == SuspectEvidence::Kind::equals_channel &&
                          table.channels[i].channel == evidence.other;
      if (itself) continue;
      const auto run = follows(table.channels[i], set_point);
      if (!run) continue;
      evidence.count = run->count;
      found.push_back(copied_suspect(table, i, *run, evidence));
    }
  };
  const Record& record = *table.record;
  std::vector<std::int32_t> room(table.rows());
  for (std::size_t i = 0; i < record.other_columns.size(); ++i) {
    const OtherColumn& column = record.other_columns[i];
    if (column.readings && column.why.content == ColumnContent::set_point)
      hold_against(row_readings(record, *column.readings, room),
                   {.kind = SuspectEvidence::Kind::equals_set_point, .other_column = i});
  }
  for (std::size_t i = 0; i < record.channels.size(); ++i)
    if (record.channels[i].role == ThermocoupleRole::set_point || named_like_set_point(record, i))
      hold_against(row_readings(record, record.channels[i].readings, room),
                   {.kind = SuspectEvidence::Kind::equals_channel, .other = i});
  return found;
}

}  // namespace soakwright
