#include "core/record/job_moments.h"

#include <algorithm>
#include <optional>
#include <utility>
#include <variant>

#include "core/record/job_columns.h"

namespace soakwright {
namespace {

// A moment that a person wrote to the second still meets the row that was stamped a fraction later.
constexpr double kMomentSlack = 1e-3;

class MomentPlacer {
 public:
  MomentPlacer(const Job& job, const TimeAxis& axis, Problems& problems)
      : job_(job), axis_(axis), problems_(problems) {}

  std::optional<double> seconds(const Moment& moment, std::size_t line) {
    if (const double* const seconds = std::get_if<double>(&moment)) return *seconds;
    if (axis_.start) return axis_.seconds_of(std::get<LocalTime>(moment));
    add(line, "a date and time is given, but the log has no dates",
        "give seconds from the log's first sample");
    return std::nullopt;
  }
  /// Both, in order.
  std::optional<std::pair<double, double>> time_range(const Moment& from, const Moment& to,
                                                      std::size_t line) {
    const auto first = seconds(from, line);
    const auto last = seconds(to, line);
    if (!first || !last) return std::nullopt;
    if (*last < *first) {
      add(line, "it ends before it begins", "exchange from and to");
      return std::nullopt;
    }
    return std::pair{*first, *last};
  }
  std::optional<std::pair<double, double>> to_end(const Moment& from, double end_s, std::size_t line) {
    const auto first = seconds(from, line);
    if (!first) return std::nullopt;
    return std::pair{*first, std::max(*first, end_s)};
  }
  void add(std::size_t line, std::string what, std::string help) {
    problems_.push_back({ProblemKind::bad_input, job_.file, line, std::move(what), std::move(help)});
  }

 private:
  const Job& job_;
  const TimeAxis& axis_;
  Problems& problems_;
};

}  // namespace

Problems place_moments(const Job& job, const LogTable& table, const TimeAxis& axis, const std::string& path,
                       Record& record) {
  Problems problems;
  MomentPlacer place{job, axis, problems};
  for (const ExclusionEntry& entry : job.exclusions) {
    const auto column = find_column(table, entry.column, job, entry.line);
    if (!column) {
      problems.insert(problems.end(), column.problems().begin(), column.problems().end());
      continue;
    }
    // Without an end it lasts to the end of the record.
    const auto span = entry.to ? place.time_range(entry.from, *entry.to, entry.line)
                               : place.to_end(entry.from, record.times_s.back(), entry.line);
    if (!span) continue;
    const std::size_t number = table.columns[column.value()].number;
    for (std::size_t c = 0; c < record.channels.size(); ++c)
      if (record.channels[c].column == number)
        record.exclusions.push_back({c, span->first, span->second, entry.reason});
  }
  for (const PeriodEntry& entry : job.periods)
    if (const auto span = place.time_range(entry.from, entry.to, entry.line))
      record.periods.push_back({entry.name, span->first, span->second});
  for (const RemarkEntry& entry : job.remarks)
    if (const auto at = place.seconds(entry.at, entry.line)) record.remarks.push_back({*at, entry.text});

  record.first_row = 0;
  record.end_row = record.times_s.size();
  if (job.time_range) {
    if (const auto span =
            place.time_range(job.time_range->first, job.time_range->second, job.time_range_line)) {
      const auto begin = record.times_s.begin();
      record.first_row = static_cast<std::size_t>(
          std::lower_bound(begin, record.times_s.end(), span->first - kMomentSlack) - begin);
      record.end_row = static_cast<std::size_t>(
          std::upper_bound(begin, record.times_s.end(), span->second + kMomentSlack) - begin);
      if (record.end_row < record.first_row + 2)
        place.add(job.time_range_line, "fewer than two rows of " + path + " lie in [time_range]",
                  "correct from and to");
    }
  }
  return problems;
}

}  // namespace soakwright
