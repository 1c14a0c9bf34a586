// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/date_order.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/read/time/time_problems.h"
#include "core/units/local_time.h"

namespace soakwright {
namespace {

constexpr int kIntervalsOfAGap = 3;

/// One order tried on all dates.
struct Trial {
  FieldOrder order = FieldOrder::ymd;
  std::vector<std::int64_t> days;
  std::optional<std::size_t> impossible;  ///< the first date that does not exist in this order
  std::size_t even = 0;
  std::size_t backward = 0;
};

Trial try_order(const DateEvidence& evidence, FieldOrder order) {
  Trial trial;
  trial.order = order;
  for (std::size_t i = 0; i < evidence.dates.size(); ++i) {
    const auto day = day_number(evidence.dates[i], order);
    if (!day) {
      trial.impossible = i;
      return trial;
    }
    trial.days.push_back(*day);
  }
  for (const DateChange& change : evidence.changes) {
    const std::int64_t days = trial.days[change.to] - trial.days[change.from];
    const std::int64_t step = days * kNanosecondsPerDay + change.clock_step_ns;
    if (step < 0) ++trial.backward;
    if (step >= 0 && step <= kIntervalsOfAGap * evidence.interval_ns) ++trial.even;
  }
  return trial;
}

/// As in the file but for the separators: two digits stay two.
std::string text_of(const DateFields& date) {
  const int width = date.first_digits == 1 ? 1 : 2;
  return fmt::format("{:0{}}/{:0{}}/{:0{}}", date.first, width, date.second, width, date.third,
                     date.third_digits == 2 ? 2 : 1);
}

std::vector<FieldOrder> orders_of(const std::vector<Trial>& trials) {
  std::vector<FieldOrder> orders;
  for (const Trial& trial : trials) orders.push_back(trial.order);
  return orders;
}

/// Leaves those that are best by `worse`.
template <typename Worse>
void keep_best(std::vector<Trial>& trials, Worse worse) {
  const auto best = std::min_element(trials.begin(), trials.end(),
                                     [&](const Trial& a, const Trial& b) { return worse(b, a); });
  const Trial chosen = *best;
  std::erase_if(trials, [&](const Trial& trial) { return worse(trial, chosen); });
}

void narrow_by_pace(std::vector<Trial>& trials) {
  if (trials.size() < 2) return;
  const bool some_forward =
      std::any_of(trials.begin(), trials.end(), [](const Trial& trial) { return trial.backward == 0; });
  if (some_forward)
    keep_best(trials, [](const Trial& a, const Trial& b) { return a.backward > 0 && b.backward == 0; });
  // An even midnight in one order and none in the others is no accident.
  const bool some_even =
      std::any_of(trials.begin(), trials.end(), [](const Trial& trial) { return trial.even > 0; });
  if (some_even) keep_best(trials, [](const Trial& a, const Trial& b) { return a.even == 0 && b.even > 0; });
}

bool all_alike(const std::vector<Trial>& trials) {
  return std::all_of(trials.begin(), trials.end(),
                     [&](const Trial& trial) { return trial.days == trials.front().days; });
}

}  // namespace

Result<SettledDates> settle_dates(const DateEvidence& evidence, std::optional<FieldOrder> given,
                                  const LineMap& lines, const std::string& path) {
  std::vector<Trial> trials;
  std::vector<Trial> failed;
  for (const FieldOrder order : {FieldOrder::ymd, FieldOrder::dmy, FieldOrder::mdy}) {
    Trial trial = try_order(evidence, order);
    (trial.impossible ? failed : trials).push_back(std::move(trial));
  }
  if (given) {
    for (const Trial& trial : failed)
      if (trial.order == *given) {
        const std::size_t place = *trial.impossible;
        return time_problems::no_date_in_given_order(path, lines.line_of(evidence.first_rows[place]), *given,
                                                     text_of(evidence.dates[place]), orders_of(trials));
      }
    std::vector<Trial> best = trials;
    narrow_by_pace(best);
    SettledDates settled;
    settled.order = {*given, SettingBy::given};
    if (std::none_of(best.begin(), best.end(), [&](const Trial& trial) { return trial.order == *given; }))
      settled.even_order = best.front().order;
    for (Trial& trial : trials)
      if (trial.order == *given) settled.day_numbers = std::move(trial.days);
    return settled;
  }
  if (trials.empty()) {
    // Named by the order that got farthest.
    const auto farthest = std::max_element(failed.begin(), failed.end(), [](const Trial& a, const Trial& b) {
      return *a.impossible < *b.impossible;
    });
    const std::size_t place = *farthest->impossible;
    return time_problems::dates_fit_no_order(path, lines.line_of(evidence.first_rows[place]),
                                             text_of(evidence.dates[place]));
  }
  narrow_by_pace(trials);
  if (trials.size() > 1 && !all_alike(trials))
    return time_problems::date_order_unknown(path, lines.line_of(evidence.first_rows.front()),
                                             text_of(evidence.dates.front()), orders_of(trials));
  return SettledDates{{trials.front().order}, std::move(trials.front().days), std::nullopt};
}

}  // namespace soakwright
