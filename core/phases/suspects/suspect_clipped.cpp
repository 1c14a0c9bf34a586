// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_clipped.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace soakwright {

namespace {

// It comes to the end of a range, and leaves it, by so many digits and kelvins at least, over so many
// readings.
constexpr std::int64_t kComesDigits = 3;
constexpr double kComesK = 1.0;
constexpr std::size_t kComesReadings = 4;
// Steps of the walk along the range's end: one up for each reading at it, one down for each other.
constexpr int kLeastScore = 6;
constexpr int kMostScore = 6;
// The group goes beyond by this much, and is back when the channel moves again.
constexpr double kBeyondK = 5.0;
constexpr double kEntryOverExitShare = 0.5;

/// Mean of the readings just before the run (step -1) or after it, less the run's; 0 where there are too few.
double comes_from(const RowReadings& channel, const RowRun& run, bool before) {
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t row = before ? run.first : run.last; count < kComesReadings;) {
    if (before ? row == 0 : row + 1 >= channel.rows()) break;
    before ? --row : ++row;
    if (!channel.known(row)) continue;
    sum += static_cast<double>(channel.units[row]) - static_cast<double>(channel.units[run.first]);
    ++count;
  }
  return count == kComesReadings ? sum / static_cast<double>(count) : 0.0;
}

/// 1 where the run is at the channel's highest reading, -1 at its lowest, and the channel came there and left
/// in full course; else 0.
int range_end(const RowReadings& channel, const RowRun& run) {
  const double least =
      std::max(static_cast<double>(kComesDigits * channel.digit), kComesK / channel.kelvin_per_unit);
  const double before = comes_from(channel, run, true);
  const double after = comes_from(channel, run, false);
  const bool starts_there = run.first == 0;
  const bool stays_there = run.last + 1 == channel.rows();
  const auto none_beyond = [&](int side) {
    return std::all_of(channel.units.begin(), channel.units.end(), [&](std::int32_t units) {
      return units == Readings::kMissingUnits ||
             side * (std::int64_t{units} - std::int64_t{channel.units[run.first]}) <= 0;
    });
  };
  if (starts_there && stays_there) return 0;
  if ((starts_there || before <= -least) && (stays_there || after <= -least) && none_beyond(1)) return 1;
  if ((starts_there || before >= least) && (stays_there || after >= least) && none_beyond(-1)) return -1;
  return 0;
}

/// Whether the group goes beyond where it is at the beginning of the time, upwards (1) or downwards (-1), and
/// comes back.
bool group_goes_beyond(const GroupCourse& course, const Suspect& suspect, int side) {
  double entry_c = 0.0;
  double exit_c = 0.0;
  double farthest_c = 0.0;
  bool any = false;
  for (std::size_t i = 0; i < course.points(); ++i) {
    if (course.times_s[i] < suspect.from_s || course.times_s[i] > suspect.to_s) continue;
    if (!any) entry_c = farthest_c = course.celsius[i];
    any = true;
    exit_c = course.celsius[i];
    if (side * (course.celsius[i] - farthest_c) > 0.0) farthest_c = course.celsius[i];
  }
  const double beyond_k = side * (farthest_c - entry_c);
  return any && beyond_k >= kBeyondK && side * (entry_c - exit_c) <= kEntryOverExitShare * beyond_k;
}

/// The rows around the run on which the channel is at the same reading most of the time: near the range's end
/// noise takes it below now and then.
RowRun widened(const RowReadings& channel, RowRun run) {
  const std::int32_t end = channel.units[run.first];
  const auto walk = [&](std::size_t from, int step) {
    std::size_t best = from;
    int score = 0;
    for (std::size_t row = from; score > -kLeastScore;) {
      if (step < 0 ? row == 0 : row + 1 >= channel.rows()) break;
      row = step < 0 ? row - 1 : row + 1;
      if (!channel.known(row)) continue;
      score = channel.units[row] == end ? std::min(score + 1, kMostScore) : score - 1;
      if (channel.units[row] == end) best = row;
    }
    return best;
  };
  run.first = walk(run.first, -1);
  run.last = walk(run.last, 1);
  return run;
}

bool may_be_clipped(const Suspect& suspect) {
  using Kind = SuspectEvidence::Kind;
  return suspect.code == Suspect::Code::stuck &&
         (suspect.evidence.kind == Kind::stands_as_others_move ||
          suspect.evidence.kind == Kind::repeats_reading || suspect.evidence.kind == Kind::all_repeat_row);
}

}  // namespace

void tell_clipped(const RowTable& table, const GroupCourse& course,
                  std::vector<std::vector<Suspect>>& found) {
  const auto times = table.record->evaluated_times_s();
  const auto row_of = [&](double at_s) {
    const auto at = std::lower_bound(times.begin(), times.end(), at_s - 1e-6) - times.begin();
    return std::min(static_cast<std::size_t>(at), table.rows() - 1);
  };
  struct AtEnd {
    Suspect* suspect = nullptr;
    std::pair<int, std::int32_t> side_and_units;
    RowRun run;
  };
  std::vector<AtEnd> ends;
  std::map<std::pair<int, std::int32_t>, std::size_t> channels_at;
  for (std::size_t place = 0; place < found.size(); ++place)
    for (Suspect& suspect : found[place]) {
      if (!may_be_clipped(suspect)) continue;
      const RowRun run{row_of(suspect.from_s), row_of(suspect.to_s), 0};
      const RowReadings& channel = table.channels[place];
      const int side = range_end(channel, run);
      if (side == 0) continue;
      ends.push_back({&suspect, {side, channel.units[run.first]}, widened(channel, run)});
      ++channels_at[ends.back().side_and_units];
    }
  for (const AtEnd& end : ends) {
    const int side = end.side_and_units.first;
    if (channels_at[end.side_and_units] < 2 && !group_goes_beyond(course, *end.suspect, side)) continue;
    end.suspect->code = Suspect::Code::clipped;
    end.suspect->evidence.kind = SuspectEvidence::Kind::ends_at_reading;
    end.suspect->evidence.highest = side > 0;
    end.suspect->from_s = table.time_s(end.run.first);
    end.suspect->to_s = table.time_s(end.run.last);
    end.suspect->evidence.seconds = end.suspect->to_s - end.suspect->from_s;
  }
}

}  // namespace soakwright
