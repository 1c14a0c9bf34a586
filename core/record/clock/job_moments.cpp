// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/job_moments.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "core/record/clock/clock_problems.h"
#include "core/record/job_columns.h"

namespace soakwright {
namespace {

// A moment that a person wrote to the second still meets the row that was stamped a fraction later.
constexpr double kMomentSlack = 1e-3;
constexpr const char* kOutside = "outside-record";

using TimeSpan = std::pair<double, double>;

class MomentPlacer {
 public:
  MomentPlacer(const Job& job, Record& record, Problems& problems)
      : job_(job), record_(record), problems_(problems) {}

  /// Where on the axis; of several places the first that is not before `not_before_s`.
  std::optional<double> seconds(const Moment& moment, std::size_t line,
                                std::optional<double> not_before_s = std::nullopt) {
    if (const double* const seconds = std::get_if<double>(&moment)) return *seconds;
    const auto shown = shown_ns(moment, line);
    if (!shown) return std::nullopt;
    const std::vector<double> places = record_.clock.places_of(*shown);
    if (places.empty()) {
      problems_.push_back(time_never_shown(at(line)));
      return std::nullopt;
    }
    double place = places.front();
    for (const double candidate : places)
      if (not_before_s && place < *not_before_s) place = candidate;
    if (places.size() > 1)
      note("moment-twice", state(Sentence::moment_shown_twice, FileLine{line}, AtStamp{place},
                                 how_many(places.size()), BetweenStamps{place}));
    return place;
  }
  /// Both, in order; without an end, to the end of the record.
  std::optional<TimeSpan> span(const Moment& from, const std::optional<Moment>& to, std::size_t line) {
    const auto first = seconds(from, line);
    const auto last = !to     ? std::optional{record_.times_s.back()}
                      : first ? seconds(*to, line, *first)
                              : std::nullopt;
    if (!first || !last) return std::nullopt;
    if (!to) return TimeSpan{*first, std::max(*first, *last)};
    if (*last < *first) {
      problems_.push_back(ends_before_it_begins(at(line)));
      return std::nullopt;
    }
    return TimeSpan{*first, *last};
  }
  [[nodiscard]] bool is_outside(const TimeSpan& span) const {
    return span.second < record_.times_s.front() - kMomentSlack ||
           span.first > record_.times_s.back() + kMomentSlack;
  }
  /// Some of it is outside; `cut` is the part within.
  [[nodiscard]] static bool reaches_beyond(const TimeSpan& span, const TimeSpan& cut) {
    return span.first < cut.first - kMomentSlack || span.second > cut.second + kMomentSlack;
  }
  [[nodiscard]] TimeSpan within(const TimeSpan& span) const {
    return {std::clamp(span.first, record_.times_s.front(), record_.times_s.back()),
            std::clamp(span.second, record_.times_s.front(), record_.times_s.back())};
  }
  void refuse(Problem problem) { problems_.push_back(std::move(problem)); }
  void note(const char* code, Statement what) {
    record_.notices.push_back({code, 0, 1, std::nullopt, std::move(what)});
  }
  [[nodiscard]] JobLine at(std::size_t line) const { return {job_, line, record_.clock.kind()}; }
  [[nodiscard]] RecordEnds ends() const {
    return {stamp(record_.times_s.front()), stamp(record_.times_s.back())};
  }

 private:
  [[nodiscard]] std::string stamp(double at_s) const {
    return record_.moment_text(at_s, RecorderClock::kAsNeeded);
  }
  /// As the recorder's clock counts it; a problem where it shows something else.
  std::optional<std::int64_t> shown_ns(const Moment& moment, std::size_t line) {
    using Kind = RecorderClock::Kind;
    const Kind kind = record_.clock.kind();
    if (const auto* date = std::get_if<LocalTime>(&moment)) {
      if (kind == Kind::dated) return date->nanoseconds();
      problems_.push_back(date_without_dates(at(line)));
      return std::nullopt;
    }
    const auto& time = std::get<PrintedTime>(moment);
    if (kind == Kind::dated) {
      problems_.push_back(time_without_date(at(line), stamp(0.0)));
      return std::nullopt;
    }
    if (kind == Kind::elapsed && !time.has_seconds) {
      problems_.push_back(elapsed_without_seconds(at(line)));
      return std::nullopt;
    }
    return time.nanoseconds;
  }

  const Job& job_;
  Record& record_;
  Problems& problems_;
};

void place_exclusions(const Job& job, const LogTable& table, MomentPlacer& place, Problems& problems,
                      Record& record) {
  for (const ExclusionEntry& entry : job.exclusions) {
    const auto column = find_column(table, entry.column, job, entry.line);
    if (!column) {
      problems.insert(problems.end(), column.problems().begin(), column.problems().end());
      continue;
    }
    const auto whole = place.span(entry.from, entry.to, entry.line);
    if (!whole) continue;
    if (place.is_outside(*whole)) {
      place.refuse(exclusion_outside_record(place.at(entry.line), entry.column, place.ends()));
      continue;
    }
    const TimeSpan span = place.within(*whole);
    if (MomentPlacer::reaches_beyond(*whole, span))
      place.note(kOutside, state(Sentence::exclusion_beyond_record, FileLine{entry.line}, entry.column,
                                 AtStamp{span.first}, AtStamp{span.second}));
    const std::size_t number = table.columns[column.value()].number;
    for (std::size_t c = 0; c < record.channels.size(); ++c)
      if (record.channels[c].column == number)
        record.exclusions.push_back({c, span.first, span.second, entry.reason});
  }
}

void place_confirmations(const Job& job, const LogTable& table, MomentPlacer& place, Problems& problems,
                         Record& record) {
  for (const ConfirmationEntry& entry : job.confirmations) {
    const auto column = find_column(table, entry.column, job, entry.line);
    if (!column) {
      problems.insert(problems.end(), column.problems().begin(), column.problems().end());
      continue;
    }
    const std::size_t number = table.columns[column.value()].number;
    const auto channel = std::find_if(record.channels.begin(), record.channels.end(),
                                      [&](const Channel& one) { return one.column == number; });
    if (channel == record.channels.end()) {
      place.refuse(confirmed_column_not_evaluated(place.at(entry.line), entry.column));
      continue;
    }
    record.confirmations.push_back(
        {static_cast<std::size_t>(channel - record.channels.begin()), entry.suspect, entry.reason});
  }
}

void place_periods(const Job& job, MomentPlacer& place, Record& record) {
  for (const PeriodEntry& entry : job.periods) {
    const auto span = place.span(entry.from, entry.to, entry.line);
    if (!span) continue;
    // Not cut: what the record does not show of it stays unknown.
    record.periods.push_back({entry.name, span->first, span->second});
    const bool begins = span->first >= record.times_s.front() - kMomentSlack;
    const bool ends = span->second <= record.times_s.back() + kMomentSlack;
    if (begins && ends) continue;
    place.note(kOutside, state(place.is_outside(*span) ? Sentence::period_outside_record
                                                       : Sentence::period_beyond_record,
                               FileLine{entry.line}, AsWritten{entry.name}, AtStamp{record.times_s.front()},
                               AtStamp{record.times_s.back()}));
  }
}

void place_remarks(const Job& job, MomentPlacer& place, Record& record) {
  for (const RemarkEntry& entry : job.remarks) {
    const auto at_s = place.seconds(entry.at, entry.line);
    if (!at_s) continue;
    const TimeSpan moment{*at_s, *at_s};
    if (place.is_outside(moment))
      place.refuse(remark_outside_record(place.at(entry.line), place.ends()));
    else
      record.remarks.push_back({place.within(moment).first, entry.text});
  }
}

void place_time_range(const Job& job, const std::string& path, MomentPlacer& place, Record& record) {
  record.first_row = 0;
  record.end_row = record.times_s.size();
  if (!job.time_range) return;
  const std::size_t line = job.time_range_line;
  const auto whole = place.span(job.time_range->first, job.time_range->second, line);
  if (!whole) return;
  if (place.is_outside(*whole)) return place.refuse(time_range_outside_record(place.at(line), place.ends()));
  const TimeSpan span = place.within(*whole);
  if (MomentPlacer::reaches_beyond(*whole, span))
    place.note(kOutside, state(Sentence::time_range_beyond_record, FileLine{line}, AtStamp{span.first},
                               AtStamp{span.second}));
  const auto begin = record.times_s.begin();
  record.first_row = static_cast<std::size_t>(
      std::lower_bound(begin, record.times_s.end(), span.first - kMomentSlack) - begin);
  record.end_row = static_cast<std::size_t>(
      std::upper_bound(begin, record.times_s.end(), span.second + kMomentSlack) - begin);
  if (record.end_row < record.first_row + 2) place.refuse(time_range_too_short(place.at(line), path));
}

}  // namespace

Problems place_moments(const Job& job, const LogTable& table, const std::string& path, Record& record) {
  Problems problems;
  MomentPlacer place{job, record, problems};
  place_exclusions(job, table, place, problems, record);
  place_confirmations(job, table, place, problems, record);
  place_periods(job, place, record);
  place_remarks(job, place, record);
  place_time_range(job, path, place, record);
  return problems;
}

}  // namespace soakwright
