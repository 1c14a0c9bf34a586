#include "core/record/time_axis.h"

#include <algorithm>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "core/units/number_text.h"

namespace soakwright {
namespace {

constexpr std::int64_t kHourNs = 3600 * kNanosecondsPerSecond;
constexpr std::int64_t kDayNs = 24 * kHourNs;
constexpr int kIntervalsOfAGap = 3;
constexpr double kEvenShare = 0.95;
// 146 years from the first row, either way: differences of two times still fit 64 bits.
constexpr std::int64_t kFarthestNs = INT64_MAX / 2;

/// Multiples of steps: a damaged stamp makes a step of decades.
__extension__ using Wide = __int128;

/// Twice the median of the steps that `step_at(0)` to `step_at(count - 1)` give and that are positive, so
/// that the mean of two middle steps stays an integer; 0 where there is none.
template <typename StepAt>
Wide twice_median_forward(std::size_t count, StepAt&& step_at) {
  if (count == 0) return 0;
  // Most logs have one step throughout: one look at all of them then is enough.
  const std::int64_t guess = step_at(count / 2);
  std::size_t forward = 0;
  std::size_t below = 0;
  std::size_t equal = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const std::int64_t step = step_at(i);
    forward += step > 0 ? 1U : 0U;
    below += step > 0 && step < guess ? 1U : 0U;
    equal += step == guess ? 1U : 0U;
  }
  if (forward == 0) return 0;
  if (guess > 0 && below <= (forward - 1) / 2 && forward / 2 < below + equal) return Wide{2} * guess;
  std::vector<std::int64_t> steps;
  steps.reserve(forward);
  for (std::size_t i = 0; i < count; ++i)
    if (step_at(i) > 0) steps.push_back(step_at(i));
  const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(forward / 2);
  std::nth_element(steps.begin(), middle, steps.end());
  if (forward % 2 == 1) return Wide{2} * *middle;
  return Wide{*middle} + *std::max_element(steps.begin(), middle);
}

std::string seconds_text(std::int64_t nanoseconds) {
  return number_text(static_cast<double>(nanoseconds) / static_cast<double>(kNanosecondsPerSecond)) + " s";
}

/// The stamps while they are put right. They are copied only where something has to be.
class Clock {
 public:
  explicit Clock(const LogTable& table)
      : table_(table), time_(table.stamps_ns.data()), shift_from_(1, {0, 0}) {}
  Clock(const Clock&) = delete;
  Clock& operator=(const Clock&) = delete;

  [[nodiscard]] std::size_t rows() const { return table_.stamps_ns.size(); }
  [[nodiscard]] std::size_t steps() const { return rows() - 1; }
  [[nodiscard]] std::int64_t step(std::size_t row) const { return time_[row + 1] - time_[row]; }
  [[nodiscard]] std::int64_t time(std::size_t row) const { return time_[row]; }
  [[nodiscard]] std::span<const std::int64_t> times() const { return {time_, rows()}; }
  [[nodiscard]] std::int64_t printed(std::size_t row) const { return table_.stamps_ns[row]; }
  [[nodiscard]] std::size_t line(std::size_t row) const { return table_.lines.line_of(row); }
  void set(std::size_t row, Wide time) {
    const bool near = time <= kFarthestNs && time >= -kFarthestNs;
    too_far_ = too_far_ || !near;
    if (!near) return;
    if (moved_.empty()) {
      moved_ = table_.stamps_ns;
      time_ = moved_.data();
    }
    moved_[row] = static_cast<std::int64_t>(time);
    twice_interval_.reset();
  }
  /// Twice the median step forward; 0 where there is none.
  [[nodiscard]] Wide twice_interval() {
    if (!twice_interval_)
      twice_interval_ = twice_median_forward(steps(), [this](std::size_t row) { return step(row); });
    return *twice_interval_;
  }
  /// The longest step that is no gap.
  [[nodiscard]] std::int64_t longest_usual_step() {
    const Wide longest = kIntervalsOfAGap * twice_interval() / 2;
    return longest < INT64_MAX ? static_cast<std::int64_t>(longest) : INT64_MAX;
  }
  /// Some time did not fit.
  [[nodiscard]] bool too_far() const { return too_far_; }
  /// A row, and by how much it and all after it move.
  using Moves = std::vector<std::pair<std::size_t, Wide>>;
  /// `moves` ascend by row.
  void move(const Moves& moves) {
    Wide by = 0;
    for (std::size_t i = 0; i < moves.size() && !too_far_; ++i) {
      by += moves[i].second;
      const std::size_t end = i + 1 < moves.size() ? moves[i + 1].first : rows();
      for (std::size_t r = moves[i].first; r < end; ++r) set(r, time_[r] + by);
    }
    if (too_far_) return;
    shift_from_.insert(shift_from_.end(), moves.begin(), moves.end());
  }
  [[nodiscard]] std::vector<TimeAxis::Piece> pieces() const {
    auto moves = shift_from_;
    std::stable_sort(moves.begin(), moves.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<TimeAxis::Piece> pieces;
    Wide shift = 0;
    for (std::size_t i = 0; i < moves.size(); ++i) {
      shift += moves[i].second;
      const std::size_t end = i + 1 < moves.size() ? moves[i + 1].first : rows();
      if (end > moves[i].first)
        pieces.push_back(
            {moves[i].first, printed(moves[i].first), printed(end - 1), static_cast<std::int64_t>(shift)});
    }
    return pieces;
  }

 private:
  const LogTable& table_;
  const std::int64_t* time_;
  std::vector<std::int64_t> moved_;
  std::optional<Wide> twice_interval_;
  Moves shift_from_;
  bool too_far_ = false;
};

void unfold_midnights(Clock& clock, std::vector<Notice>& notices) {
  const Wide twice_interval = clock.twice_interval();
  Notice notice{"midnight", 0, 0, std::nullopt, {}};
  Clock::Moves moves;
  for (std::size_t r = 0; r + 1 < clock.rows(); ++r) {
    const std::int64_t off = clock.step(r) + kDayNs;
    if (clock.step(r) >= 0 || Wide{2} * std::abs(off) > twice_interval) continue;
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

std::vector<Run> runs_of_one_time(const Clock& clock) {
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
std::int64_t spread_step(const Clock& clock, const Run& run) {
  if (run.end == clock.rows() || clock.time(run.end) <= clock.time(run.first)) return 0;
  return (clock.time(run.end) - clock.time(run.first)) / static_cast<std::int64_t>(run.end - run.first);
}

void spread_repeats(Clock& clock, std::vector<Notice>& notices) {
  bool any = false;
  for (std::size_t r = 0; r + 1 < clock.rows() && !any; ++r) any = clock.step(r) == 0;
  if (!any) return;
  const std::vector<Run> runs = runs_of_one_time(clock);
  std::vector<std::int64_t> steps;
  for (const Run& run : runs)
    if (const std::int64_t step = spread_step(clock, run); step > 0)
      steps.insert(steps.end(), run.end - run.first, step);
  const Wide twice_interval =
      twice_median_forward(steps.size(), [&steps](std::size_t i) { return steps[i]; });
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
    const bool up_to_next = step > 0 && Wide{2} * step <= kIntervalsOfAGap * twice_interval;
    const Wide length = up_to_next ? clock.time(run.end) - start : 0;
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

void mend_backward_steps(Clock& clock, TimeKind kind, TimeAxis& axis) {
  std::vector<std::size_t> backward;
  for (std::size_t r = 0; r + 1 < clock.rows(); ++r)
    if (clock.step(r) <= 0) backward.push_back(r);
  if (backward.empty()) return;
  const Wide twice_interval = clock.twice_interval();
  std::size_t forward = 0;
  std::size_t even = 0;
  for (std::size_t r = 0; r < clock.steps(); ++r) {
    const Wide step = clock.step(r);
    if (step <= 0) continue;
    ++forward;
    if (4 * step >= twice_interval && 4 * step <= 3 * twice_interval) ++even;
  }
  const std::size_t row = backward.front();
  const std::int64_t moved = clock.step(row) + kHourNs;
  if (has_hours(kind) && backward.size() == 1 && moved > 0 && Wide{2} * moved <= twice_interval &&
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
  notice.text += "; the step is taken as one usual interval, and what is judged across it is unknown there.";
  Clock::Moves moves;
  for (const std::size_t r : backward) moves.emplace_back(r + 1, twice_interval / 2 - clock.step(r));
  clock.move(moves);
  axis.breaks = std::move(backward);
  axis.notices.push_back(std::move(notice));
}

/// A row whose step forward is an hour more or less, and so long that it is a gap.
bool leaps_an_hour(std::int64_t step, std::int64_t longest_usual, Wide twice_interval) {
  return step > longest_usual && Wide{2} * std::abs(step - kHourNs) <= twice_interval;
}

bool names_step(const Clock& clock, std::size_t row, TimeKind kind, LocalTime moment) {
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

std::optional<Problem> mend_forward_leap(Clock& clock, TimeKind kind, const std::string& path, const Job* job,
                                         TimeAxis& axis) {
  const auto moment = job != nullptr ? job->reading.clock_forward : std::nullopt;
  const Wide twice_interval = clock.twice_interval();
  const std::int64_t longest_usual = clock.longest_usual_step();
  Notice stays{"clock-forward", 0, 0, std::nullopt, {}};
  bool named = false;
  for (std::size_t r = 0; has_hours(kind) && r + 1 < clock.rows(); ++r) {
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
        "[reading] of the job names it.";
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

void find_gaps(Clock& clock, TimeAxis& axis) {
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
  Clock clock{table};
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
