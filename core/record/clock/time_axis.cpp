// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/time_axis.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "core/record/clock/clock_problems.h"
#include "core/record/clock/midnights.h"
#include "core/record/clock/stamp_clock.h"

namespace soakwright {
namespace {

constexpr std::int64_t kHourNs = 3600 * kNanosecondsPerSecond;
constexpr double kEvenStepShare = 0.95;
// Of a hundred rows more than one with a fault make an error; fewer rows say nothing, and two pass.
constexpr std::size_t kRowsToOneFault = 100;
constexpr std::size_t kFaultsOfAShortLog = 2;

BetweenStamps between(std::int64_t nanoseconds) {
  return {static_cast<double>(nanoseconds) / static_cast<double>(kNanosecondsPerSecond)};
}

void unfold_midnights(StampClock& clock, std::vector<Notice>& notices) {
  const StampClock::Moves midnights = midnights_of(clock);
  if (midnights.empty()) return;
  Notice notice{"midnight", clock.line(midnights.front().first), midnights.size(), std::nullopt,
                midnights.size() == 1 ? state(Sentence::midnight_passed)
                                      : state(Sentence::midnights_passed, how_many(midnights.size()))};
  clock.unfold(midnights);
  notices.push_back(std::move(notice));
}

/// Rows with one time, first and one past the last.
struct Run {
  std::size_t first, end;
};

std::vector<Run> runs_of_one_time(const StampClock& clock) {
  std::vector<Run> runs;
  for (std::size_t r = 0; r < clock.rows();) {
    std::size_t end = r + 1;
    while (end < clock.rows() && clock.time(end) == clock.time(r)) ++end;
    runs.push_back({r, end});
    r = end;
  }
  return runs;
}

/// The step that spreads a run up to the next later time; 0 where there is none.
std::int64_t spread_step(const StampClock& clock, const Run& run) {
  if (run.end == clock.rows() || clock.time(run.end) <= clock.time(run.first)) return 0;
  return (clock.time(run.end) - clock.time(run.first)) / static_cast<std::int64_t>(run.end - run.first);
}

void spread_repeats(StampClock& clock, std::vector<Notice>& notices) {
  if (clock.runs_forward()) return;
  bool any = false;
  for (std::size_t r = 0; r + 1 < clock.rows() && !any; ++r) any = clock.step(r) == 0;
  if (!any) return;
  const std::vector<Run> runs = runs_of_one_time(clock);
  std::vector<std::int64_t> steps;
  for (const Run& run : runs)
    if (const std::int64_t step = spread_step(clock, run); step > 0)
      steps.insert(steps.end(), run.end - run.first, step);
  const WideNs twice_interval = twice_median(std::move(steps));
  if (twice_interval == 0) return;
  Notice notice{"repeat-time", 0, 0, std::nullopt, {}};
  for (const Run& run : runs) {
    const auto count = static_cast<std::int64_t>(run.end - run.first);
    if (count < 2) continue;
    if (notice.count == 0) notice.line = clock.line(run.first + 1);
    notice.count += static_cast<std::size_t>(count - 1);
    const std::int64_t start = clock.time(run.first);
    const std::int64_t step = spread_step(clock, run);
    // Up to the next later time, unless a gap lies before it: rows are not strewn over a gap.
    const bool up_to_next = step > 0 && WideNs{2} * step <= StampClock::kIntervalsOfAGap * twice_interval;
    const WideNs length = up_to_next ? clock.time(run.end) - start : 0;
    for (std::int64_t i = 1; i < count; ++i)
      clock.set(run.first + static_cast<std::size_t>(i),
                start + (up_to_next ? length * i / count : twice_interval * i / 2));
  }
  notice.what = state(Sentence::rows_of_one_time, how_many(notice.count));
  notices.push_back(std::move(notice));
}

bool has_hours(TimeKind kind) {
  return kind == TimeKind::date_time || kind == TimeKind::time_of_day || kind == TimeKind::serial_days;
}

std::optional<Problem> mend_backward_steps(StampClock& clock, TimeKind kind, const std::string& path,
                                           TimeAxis& axis) {
  if (clock.runs_forward()) return std::nullopt;
  std::vector<std::size_t> backward;
  for (std::size_t r = 0; r + 1 < clock.rows(); ++r)
    if (clock.step(r) <= 0) backward.push_back(r);
  if (backward.empty()) return std::nullopt;
  const WideNs twice_interval = clock.twice_interval();
  std::size_t forward = 0;
  std::size_t even = 0;
  for (std::size_t r = 0; r + 1 < clock.rows(); ++r) {
    const WideNs step = clock.step(r);
    if (step <= 0) continue;
    ++forward;
    if (4 * step >= twice_interval && 4 * step <= 3 * twice_interval) ++even;
  }
  const std::size_t row = backward.front();
  const std::int64_t moved = clock.step(row) + kHourNs;
  if (has_hours(kind) && backward.size() == 1 && moved > 0 && WideNs{2} * moved <= twice_interval &&
      static_cast<double>(even) >= kEvenStepShare * static_cast<double>(forward)) {
    axis.notices.push_back(
        {"clock-back", clock.line(row + 1), 1, std::nullopt, state(Sentence::clock_put_back)});
    clock.move({{row + 1, kHourNs}});
    return std::nullopt;
  }
  const std::size_t most_faults =
      clock.rows() < kRowsToOneFault ? kFaultsOfAShortLog : clock.rows() / kRowsToOneFault;
  if (backward.size() > most_faults)
    return time_not_forward(path, clock.line(row + 1), backward.size(), clock.rows());
  Notice notice{"clock-fault", clock.line(row + 1), backward.size(), std::nullopt, {}};
  const BetweenStamps back = between(-clock.step(row));
  notice.what = backward.size() == 1
                    ? state(Sentence::time_runs_back, back)
                    : state(Sentence::time_runs_back_often, back, how_many(backward.size() - 1));
  StampClock::Moves moves;
  for (const std::size_t r : backward) moves.emplace_back(r + 1, twice_interval / 2 - clock.step(r));
  clock.move(moves);
  axis.breaks = std::move(backward);
  axis.notices.push_back(std::move(notice));
  return std::nullopt;
}

/// A row whose step forward is an hour more or less, and so long that it is a gap.
bool leaps_an_hour(std::int64_t step, std::int64_t longest_usual, WideNs twice_interval) {
  return step > longest_usual && WideNs{2} * std::abs(step - kHourNs) <= twice_interval;
}

bool names_step(const StampClock& clock, std::size_t row, TimeKind kind, LocalTime moment) {
  std::int64_t wanted = moment.nanoseconds();
  std::int64_t before = clock.printed(row);
  std::int64_t after = clock.printed(row + 1);
  if (!has_date(kind)) {
    wanted %= kNanosecondsPerDay;
    before %= kNanosecondsPerDay;
    after %= kNanosecondsPerDay;
  }
  return before <= wanted && wanted <= after;
}

std::optional<std::size_t> line_of_a_leap(const TimeAxis& axis) {
  if (axis.notices.empty() || axis.notices.back().code != "clock-forward") return std::nullopt;
  return axis.notices.back().line;
}

std::optional<Problem> mend_forward_leap(StampClock& clock, TimeKind kind, const std::string& path,
                                         const Job* job, TimeAxis& axis) {
  const auto moment = job != nullptr ? job->reading.clock_forward : std::nullopt;
  const WideNs twice_interval = clock.twice_interval();
  const std::int64_t longest_usual = clock.longest_usual_step();
  Notice stays{"clock-forward", 0, 0, std::nullopt, {}};
  bool named = false;
  const bool look = has_hours(kind) && clock.has_gap();
  for (std::size_t r = 0; look && r + 1 < clock.rows(); ++r) {
    if (!leaps_an_hour(clock.step(r), longest_usual, twice_interval)) continue;
    if (moment && !named && clock.step(r) > kHourNs && names_step(clock, r, kind, *moment)) {
      named = true;
      clock.move({{r + 1, -kHourNs}});
      axis.notices.push_back(
          {"clock-forward", clock.line(r + 1), 1, std::nullopt, state(Sentence::clock_put_forward)});
      continue;
    }
    if (stays.count++ == 0) stays.line = clock.line(r + 1);
  }
  if (stays.count != 0) {
    stays.what = state(Sentence::leap_stays_a_gap);
    axis.notices.push_back(std::move(stays));
  }
  if (moment && !named) return no_step_of_an_hour(*job, *moment, path, line_of_a_leap(axis));
  return std::nullopt;
}

void find_gaps(StampClock& clock, TimeAxis& axis) {
  if (!clock.has_gap()) return;
  const std::int64_t longest_usual = clock.longest_usual_step();
  Notice notice{"gap", 0, 0, std::nullopt, {}};
  std::int64_t longest = 0;
  for (std::size_t r = 0; r + 1 < clock.rows(); ++r) {
    if (clock.step(r) <= longest_usual) continue;
    if (notice.count++ == 0) notice.line = clock.line(r + 1);
    longest = std::max(longest, clock.step(r));
  }
  if (notice.count == 0) return;
  notice.what = notice.count == 1 ? state(Sentence::gap_of_rows, between(longest))
                                  : state(Sentence::gaps_of_rows, how_many(notice.count), between(longest));
  axis.notices.push_back(std::move(notice));
}

/// What the job must add to what the log prints, so that its clock shows dates; 0 where it adds nothing.
Result<std::int64_t> added_date_ns(TimeKind kind, const Job* job) {
  if (job == nullptr) return std::int64_t{0};
  const ImportChoices& import = job->reading;
  const bool time_of_day = kind == TimeKind::time_of_day;
  if (import.date && !time_of_day) return date_not_needed(*job, kind);
  if (import.start && (time_of_day || has_date(kind))) return start_not_needed(*job, kind);
  if (import.date) return days_from_civil(*import.date) * kNanosecondsPerDay;
  return import.start ? import.start->nanoseconds() : std::int64_t{0};
}

/// Once the axis is there: what the recorder showed along it.
RecorderClock recorder_clock(const StampClock& clock, TimeKind kind, std::int64_t added_ns, bool added,
                             const std::vector<double>& times_s) {
  using Kind = RecorderClock::Kind;
  const Kind shows = added || has_date(kind)         ? Kind::dated
                     : kind == TimeKind::time_of_day ? Kind::time_of_day
                                                     : Kind::elapsed;
  RecorderClock out{shows, clock.time(0) + added_ns};
  for (const auto& [row, shift_ns] : clock.shifts())
    out.put(times_s[row], clock.time(row) - shift_ns + added_ns);
  return out;
}

}  // namespace

Result<TimeAxis> make_time_axis(const LogTable& table, const std::string& path, const Job* job) {
  const auto added_ns = added_date_ns(table.time.value, job);
  if (!added_ns) return added_ns.problems();
  TimeAxis axis;
  StampClock clock{table};
  if (std::all_of(table.stamps_ns.begin(), table.stamps_ns.end(),
                  [&](std::int64_t stamp) { return stamp == table.stamps_ns.front(); }))
    return one_time_only(path, table.first_row_line);
  if (table.time.value == TimeKind::time_of_day) unfold_midnights(clock, axis.notices);
  spread_repeats(clock, axis.notices);
  if (clock.twice_interval() == 0) return time_only_backward(path, table.first_row_line);
  if (auto problem = mend_backward_steps(clock, table.time.value, path, axis)) return *std::move(problem);
  if (auto problem = mend_forward_leap(clock, table.time.value, path, job, axis)) return *std::move(problem);

  if (clock.too_far()) return times_far_apart(path, table.first_row_line);

  find_gaps(clock, axis);
  axis.interval_s =
      static_cast<double>(clock.twice_interval()) / (2.0 * static_cast<double>(kNanosecondsPerSecond));
  axis.times_s.reserve(clock.rows());
  for (const std::int64_t time : clock.times())
    axis.times_s.push_back(static_cast<double>(time - clock.time(0)) /
                           static_cast<double>(kNanosecondsPerSecond));
  const bool added = job != nullptr && (job->reading.date || job->reading.start);
  axis.clock = recorder_clock(clock, table.time.value, added_ns.value(), added, axis.times_s);
  return axis;
}

}  // namespace soakwright
