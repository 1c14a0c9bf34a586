// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/time_axis.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "core/record/clock/midnights.h"
#include "core/record/clock/stamp_clock.h"
#include "core/units/printed_quantity.h"

namespace soakwright {
namespace {

constexpr std::int64_t kHourNs = 3600 * kNanosecondsPerSecond;
constexpr double kEvenShare = 0.95;
// Of a hundred rows more than one with a fault make an error; fewer rows say nothing, and two pass.
constexpr std::size_t kRowsToOneFault = 100;
constexpr std::size_t kFaultsOfAShortLog = 2;

std::string length_text(std::int64_t nanoseconds) {
  return printed_duration(static_cast<double>(nanoseconds) / static_cast<double>(kNanosecondsPerSecond), 3);
}

void unfold_midnights(StampClock& clock, std::vector<Notice>& notices) {
  const StampClock::Moves midnights = midnights_of(clock);
  if (midnights.empty()) return;
  Notice notice{"midnight", clock.line(midnights.front().first), midnights.size(), std::nullopt, {}};
  clock.unfold(midnights);
  notice.text = "The time of day starts again at midnight";
  if (notice.count > 1) notice.text.append(" ").append(std::to_string(notice.count)).append(" times");
  notice.text += "; the rows after it belong to the next day.";
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
  notice.text = std::to_string(notice.count) +
                " rows have the time of the row before; rows of one time are spread evenly up to the next.";
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
      static_cast<double>(even) >= kEvenShare * static_cast<double>(forward)) {
    axis.notices.push_back(
        {"clock-back", clock.line(row + 1), 1, std::nullopt,
         "The clock was put back by an hour here; time runs on, and moments are printed as the clock showed "
         "them."});
    clock.move({{row + 1, kHourNs}});
    return std::nullopt;
  }
  const std::size_t most_faults =
      clock.rows() < kRowsToOneFault ? kFaultsOfAShortLog : clock.rows() / kRowsToOneFault;
  if (backward.size() > most_faults)
    return Problem{ProblemKind::bad_input, path, clock.line(row + 1),
                   "time does not run forward in " + std::to_string(backward.size()) + " of " +
                       std::to_string(clock.rows()) + " rows, here for the first time",
                   "sort the rows by time, or export the log again"};
  Notice notice{"clock-fault", clock.line(row + 1), backward.size(), std::nullopt, {}};
  notice.text = "Time runs backward here by " + length_text(-clock.step(row));
  if (backward.size() > 1)
    notice.text.append(", and ").append(std::to_string(backward.size() - 1)).append(" more times");
  notice.text +=
      "; the step is taken as one usual interval, and what is evaluated across it is unknown there. Moments "
      "are printed as the clock showed them.";
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
    wanted %= kDayNs;
    before %= kDayNs;
    after %= kDayNs;
  }
  return before <= wanted && wanted <= after;
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
      axis.notices.push_back({"clock-forward", clock.line(r + 1), 1, std::nullopt,
                              "The clock was put forward by an hour here, as the job says; no time is "
                              "missing, and moments are printed as the clock showed them."});
      continue;
    }
    if (stays.count++ == 0) stays.line = clock.line(r + 1);
  }
  if (stays.count != 0) {
    stays.text =
        "Time leaps forward by an hour here: a gap, or a clock put forward. It stays a gap unless "
        "clock_forward in "
        "[import] of the job names it.";
    axis.notices.push_back(std::move(stays));
  }
  if (moment && !named)
    return Problem{ProblemKind::bad_input, job->file, job->reading.clock_forward_line,
                   "clock_forward names " + moment->iso() + ", but " + path +
                       " has no step of an hour there" +
                       (axis.notices.empty() || axis.notices.back().code != "clock-forward"
                            ? std::string{}
                            : "; it has one at line " + std::to_string(axis.notices.back().line)),
                   "correct or leave out clock_forward"};
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
  notice.text = (notice.count == 1 ? std::string{"One step between rows is"}
                                   : std::to_string(notice.count) + " steps between rows are") +
                " longer than three intervals; the longest is " + length_text(longest) + ".";
  axis.notices.push_back(std::move(notice));
}

/// What the job must add to what the log prints, so that its clock shows dates; 0 where it adds nothing.
Result<std::int64_t> added_date_ns(TimeKind kind, const Job* job) {
  if (job == nullptr) return std::int64_t{0};
  const ImportChoices& import = job->reading;
  const auto refuse = [&](std::size_t line, std::string what, std::string help) {
    return Problem{ProblemKind::bad_input, job->file, line, std::move(what), std::move(help)};
  };
  const bool time_of_day = kind == TimeKind::time_of_day;
  if (import.date && !time_of_day)
    return refuse(import.date_line,
                  has_date(kind) ? "`date` is given, but the log has dates"
                                 : "`date` is given, but the log has elapsed time",
                  has_date(kind) ? "leave it out" : "give `start`, the date and time of elapsed time 0");
  if (import.start && (time_of_day || has_date(kind)))
    return refuse(import.start_line,
                  has_date(kind) ? "`start` is given, but the log has dates"
                                 : "`start` is given, but the log has a time of day",
                  has_date(kind) ? "leave it out" : "give `date`, the date of the first row");
  if (import.date) return days_from_civil(*import.date) * kDayNs;
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
  const auto added_ns = added_date_ns(table.time, job);
  if (!added_ns) return added_ns.problems();
  TimeAxis axis;
  StampClock clock{table};
  if (std::all_of(table.stamps_ns.begin(), table.stamps_ns.end(),
                  [&](std::int64_t stamp) { return stamp == table.stamps_ns.front(); }))
    return Problem{ProblemKind::bad_input, path, table.first_row_line, "all rows have the same time",
                   "time must run forward"};
  if (table.time == TimeKind::time_of_day) unfold_midnights(clock, axis.notices);
  spread_repeats(clock, axis.notices);
  if (clock.twice_interval() == 0)
    return Problem{ProblemKind::bad_input, path, table.first_row_line, "time only runs backward",
                   "sort the rows by time"};
  if (auto problem = mend_backward_steps(clock, table.time, path, axis)) return *std::move(problem);
  if (auto problem = mend_forward_leap(clock, table.time, path, job, axis)) return *std::move(problem);

  if (clock.too_far())
    return Problem{ProblemKind::bad_input, path, table.first_row_line,
                   "the times of the rows lie centuries apart", "look for damaged time stamps"};

  find_gaps(clock, axis);
  axis.interval_s =
      static_cast<double>(clock.twice_interval()) / (2.0 * static_cast<double>(kNanosecondsPerSecond));
  axis.times_s.reserve(clock.rows());
  for (const std::int64_t time : clock.times())
    axis.times_s.push_back(static_cast<double>(time - clock.time(0)) /
                           static_cast<double>(kNanosecondsPerSecond));
  const bool added = job != nullptr && (job->reading.date || job->reading.start);
  axis.clock = recorder_clock(clock, table.time, added_ns.value(), added, axis.times_s);
  return axis;
}

}  // namespace soakwright
