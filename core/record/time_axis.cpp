#include "core/record/time_axis.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include "core/record/stamp_clock.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

constexpr std::int64_t kHourNs = 3600 * kNanosecondsPerSecond;
constexpr std::int64_t kDayNs = 24 * kHourNs;
constexpr double kEvenShare = 0.95;

std::string seconds_text(std::int64_t nanoseconds) {
  return number_text(static_cast<double>(nanoseconds) / static_cast<double>(kNanosecondsPerSecond)) + " s";
}

void unfold_midnights(StampClock& clock, std::vector<Notice>& notices) {
  const WideNs twice_interval = clock.twice_interval();
  Notice notice{"midnight", 0, 0, std::nullopt, {}};
  StampClock::Moves moves;
  for (std::size_t r = 0; r + 1 < clock.rows(); ++r) {
    const std::int64_t off = clock.step(r) + kDayNs;
    if (clock.step(r) >= 0 || WideNs{2} * std::abs(off) > twice_interval) continue;
    if (notice.count++ == 0) notice.line = clock.line(r + 1);
    moves.emplace_back(r + 1, kDayNs);
  }
  clock.move(moves);
  if (notice.count == 0) return;
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

void mend_backward_steps(StampClock& clock, TimeKind kind, TimeAxis& axis) {
  if (clock.runs_forward()) return;
  std::vector<std::size_t> backward;
  for (std::size_t r = 0; r + 1 < clock.rows(); ++r)
    if (clock.step(r) <= 0) backward.push_back(r);
  if (backward.empty()) return;
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
         "The clock was put back by an hour here; the times after it are moved on by an hour."});
    clock.move({{row + 1, kHourNs}});
    return;
  }
  Notice notice{"clock-fault", clock.line(row + 1), backward.size(), std::nullopt, {}};
  notice.text = "Time runs backward here by " + seconds_text(-clock.step(row));
  if (backward.size() > 1)
    notice.text.append(", and ").append(std::to_string(backward.size() - 1)).append(" more times");
  notice.text +=
      "; the step is taken as one usual interval, and what is evaluated across it is unknown there.";
  StampClock::Moves moves;
  for (const std::size_t r : backward) moves.emplace_back(r + 1, twice_interval / 2 - clock.step(r));
  clock.move(moves);
  axis.breaks = std::move(backward);
  axis.notices.push_back(std::move(notice));
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
                              "The clock was put forward by an hour here, as the job says; the times after "
                              "it are moved back by an hour."});
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
                " longer than three intervals; the longest is " + seconds_text(longest) + ".";
  axis.notices.push_back(std::move(notice));
}

}  // namespace

double TimeAxis::seconds_of(LocalTime moment) const {
  const std::int64_t printed = moment.nanoseconds();
  const Piece* piece = &pieces.front();
  for (const Piece& candidate : pieces) {
    if (printed >= candidate.first_printed_ns && printed <= candidate.last_printed_ns) {
      piece = &candidate;
      break;
    }
    if (printed >= candidate.first_printed_ns) piece = &candidate;
  }
  return LocalTime::of_nanoseconds(printed + piece->shift_ns).seconds_since(*start);
}

Result<TimeAxis> make_time_axis(const LogTable& table, const std::string& path, const Job* job) {
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
  mend_backward_steps(clock, table.time, axis);
  if (auto problem = mend_forward_leap(clock, table.time, path, job, axis)) return *std::move(problem);

  if (clock.too_far())
    return Problem{ProblemKind::bad_input, path, table.first_row_line,
                   "the times of the rows lie centuries apart", "look for damaged time stamps"};

  find_gaps(clock, axis);
  axis.interval_s =
      static_cast<double>(clock.twice_interval()) / (2.0 * static_cast<double>(kNanosecondsPerSecond));
  axis.pieces = clock.pieces();
  if (has_date(table.time)) axis.start = LocalTime::of_nanoseconds(table.stamps_ns.front());
  axis.times_s.reserve(clock.rows());
  for (const std::int64_t time : clock.times())
    axis.times_s.push_back(static_cast<double>(time - clock.time(0)) /
                           static_cast<double>(kNanosecondsPerSecond));
  return axis;
}

}  // namespace soakwright
