// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/clock/job_moments.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "core/record/job_columns.h"
#include "core/units/printed_quantity.h"

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
      add(line, "the recorder never showed this time", "give seconds from the log's first sample");
      return std::nullopt;
    }
    double place = places.front();
    for (const double candidate : places)
      if (not_before_s && place < *not_before_s) place = candidate;
    if (places.size() > 1)
      note("moment-twice", "The job, line " + std::to_string(line) + ": the recorder showed " +
                               record_.moment_text(place) + " " + std::to_string(places.size()) +
                               " times. The one " + printed_duration(place, 3) +
                               " after the first sample is meant; to name another, give seconds from the "
                               "log's first sample.");
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
      add(line, "it ends before it begins",
          record_.clock.kind() == RecorderClock::Kind::time_of_day
              ? "exchange from and to, or write \"+1 d\" before a time after midnight"
              : "exchange from and to");
      return std::nullopt;
    }
    return TimeSpan{*first, *last};
  }
  [[nodiscard]] bool is_outside(const TimeSpan& span) const {
    return span.second < record_.times_s.front() - kMomentSlack ||
           span.first > record_.times_s.back() + kMomentSlack;
  }
  /// The part within the record, with a notice where there is more; nothing, and a problem, where there is
  /// none.
  std::optional<TimeSpan> within(const TimeSpan& span, const std::string& what, std::size_t line) {
    if (is_outside(span)) {
      add(line,
          what + " lies outside the record, which runs from " + moment(record_.times_s.front()) + " to " +
              moment(record_.times_s.back()),
          record_.clock.kind() == RecorderClock::Kind::time_of_day
              ? "correct its times; after midnight write \"+1 d\" before them"
              : "correct its times, or take it out");
      return std::nullopt;
    }
    const TimeSpan cut{std::clamp(span.first, record_.times_s.front(), record_.times_s.back()),
                       std::clamp(span.second, record_.times_s.front(), record_.times_s.back())};
    if (span.first < cut.first - kMomentSlack || span.second > cut.second + kMomentSlack)
      note(kOutside, "The job, line " + std::to_string(line) + ": " + what +
                         " reaches beyond the record; it counts from " + moment(cut.first) + " to " +
                         moment(cut.second) + ".");
    return cut;
  }
  void add(std::size_t line, std::string what, std::string help) {
    problems_.push_back({ProblemKind::bad_input, job_.file, line, std::move(what), std::move(help)});
  }
  void note(const char* code, std::string text) {
    record_.notices.push_back({code, 0, 1, std::nullopt, std::move(text)});
  }
  [[nodiscard]] std::string moment(double at_s) const {
    return record_.moment_text(at_s, RecorderClock::kAsNeeded);
  }

 private:
  /// As the recorder's clock counts it; a problem where it shows something else.
  std::optional<std::int64_t> shown_ns(const Moment& moment, std::size_t line) {
    using Kind = RecorderClock::Kind;
    const Kind kind = record_.clock.kind();
    if (const auto* date = std::get_if<LocalTime>(&moment)) {
      if (kind == Kind::dated) return date->nanoseconds();
      add(line, "a date and time is given, but the log has no dates",
          kind == Kind::time_of_day
              ? "write the time of day as the log prints it, or give the `date` of its first row in [import]"
              : "write elapsed time as \"h:mm:ss\", or give the `start` of elapsed time 0 in [import]");
      return std::nullopt;
    }
    const auto& time = std::get<PrintedTime>(moment);
    if (kind == Kind::dated) {
      add(line, "a time without a date is given, but the log has dates",
          "write both: \"" + this->moment(0.0) + "\"");
      return std::nullopt;
    }
    if (kind == Kind::elapsed && !time.has_seconds) {
      add(line, "an elapsed time is given without its seconds", "write \"h:mm:ss\"");
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
    const auto span =
        whole ? place.within(*whole, "the exclusion of " + entry.column, entry.line) : std::nullopt;
    if (!span) continue;
    const std::size_t number = table.columns[column.value()].number;
    for (std::size_t c = 0; c < record.channels.size(); ++c)
      if (record.channels[c].column == number)
        record.exclusions.push_back({c, span->first, span->second, entry.reason});
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
      place.add(entry.line, "[[confirm]] names column \"" + entry.column + "\", which is not evaluated",
                "remove it, or give the column a role in [[thermocouple]]");
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
    place.note(kOutside, "The job, line " + std::to_string(entry.line) + ": the period \"" + entry.name +
                             "\" " + (place.is_outside(*span) ? "lies outside" : "reaches beyond") +
                             " the record, which runs from " + place.moment(record.times_s.front()) + " to " +
                             place.moment(record.times_s.back()) + ".");
  }
}

void place_time_range(const Job& job, const std::string& path, MomentPlacer& place, Record& record) {
  record.first_row = 0;
  record.end_row = record.times_s.size();
  if (!job.time_range) return;
  const auto whole = place.span(job.time_range->first, job.time_range->second, job.time_range_line);
  const auto span = whole ? place.within(*whole, "[time_range]", job.time_range_line) : std::nullopt;
  if (!span) return;
  const auto begin = record.times_s.begin();
  record.first_row = static_cast<std::size_t>(
      std::lower_bound(begin, record.times_s.end(), span->first - kMomentSlack) - begin);
  record.end_row = static_cast<std::size_t>(
      std::upper_bound(begin, record.times_s.end(), span->second + kMomentSlack) - begin);
  if (record.end_row < record.first_row + 2)
    place.add(job.time_range_line, "fewer than two rows of " + path + " lie in [time_range]",
              "correct from and to");
}

}  // namespace

Problems place_moments(const Job& job, const LogTable& table, const std::string& path, Record& record) {
  Problems problems;
  MomentPlacer place{job, record, problems};
  place_exclusions(job, table, place, problems, record);
  place_confirmations(job, table, place, problems, record);
  place_periods(job, place, record);
  for (const RemarkEntry& entry : job.remarks) {
    const auto at_s = place.seconds(entry.at, entry.line);
    if (const auto within = at_s ? place.within({*at_s, *at_s}, "the remark", entry.line) : std::nullopt)
      record.remarks.push_back({within->first, entry.text});
  }
  place_time_range(job, path, place, record);
  return problems;
}

}  // namespace soakwright
