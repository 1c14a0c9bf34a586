// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/holds/hold_choice.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace soakwright {
namespace {

constexpr double kNever = -std::numeric_limits<double>::infinity();
/// Two sums of lengths closer than this are equal, and the first in time is taken.
constexpr double kSameSum_s = 1e-6;

double length(const Span& span) { return span.second - span.first; }

/// The highest `above` of the heat and cool stages between two holds.
std::optional<double> highest_above(const Procedure& procedure, std::size_t stage, std::size_t later_stage) {
  std::optional<double> highest;
  for (std::size_t i = stage + 1; i < later_stage; ++i) {
    const auto* ramp = std::get_if<RampStage>(&procedure.stages[i].specified);
    if (ramp != nullptr && ramp->above) highest = std::max(highest.value_or(kNever), ramp->above->celsius());
  }
  return highest;
}

/// Times of the rows at which the median of the known evaluated channels is below `level`.
std::vector<double> times_below(const Record& record, RowValues& rows, double level) {
  std::vector<double> times;
  std::vector<double> known;
  rows.visit_tiles(record.first_row, record.end_row,
                   [&](std::size_t first, std::size_t count, const auto& columns) {
                     for (std::size_t r = 0; r < count; ++r) {
                       known.clear();
                       for (const ColumnTile& column : columns)
                         if (column.known == nullptr || column.known[r] != 0)
                           known.push_back(column.celsius[r]);
                       if (known.empty()) continue;
                       const auto middle = known.begin() + static_cast<std::ptrdiff_t>(known.size() / 2);
                       std::nth_element(known.begin(), middle, known.end());
                       double median = *middle;
                       if (known.size() % 2 == 0)
                         median = (median + *std::max_element(known.begin(), middle)) / 2.0;
                       if (median < level - kTemperatureSlack) times.push_back(record.times_s[first + r]);
                     }
                     return true;
                   });
  return times;
}

/// The latest continuous hold that may stand before an in-range time: it ends by `limit` (or before it, where
/// `strictly`: a sample at `limit` then lies strictly between the two).
struct Before {
  double limit = 0.0;
  bool strictly = false;
};

/// Dynamic programme over holds and in-range times: steps_[h][s] has the greatest sum of lengths in which
/// in-range time s is the continuous hold of hold h and the last one chosen.
class ContinuousHoldChoice {
 public:
  ContinuousHoldChoice(const std::vector<HoldCourse>& holds, const Procedure& procedure, const Record& record,
                       const TraceSet& set, Group group)
      : holds_(holds), procedure_(procedure), record_(record), rows_(record, set, group) {}

  /// Per hold, the in-range time chosen as its continuous hold.
  std::vector<std::optional<std::size_t>> run() {
    find_cold_times();
    if (needs_search()) return searched();
    steps_.resize(holds_.size());
    for (std::size_t h = 0; h < holds_.size(); ++h) {
      const std::vector<Span>& in_range = holds_[h].range.in_range;
      steps_[h].resize(in_range.size());
      for (std::size_t s = 0; s < in_range.size(); ++s) steps_[h][s].sum = length(in_range[s]);
      for (std::size_t g = 0; g < h; ++g) continue_from(g, h);
      note_best(h);
    }
    return chosen();
  }

 private:
  struct Step {
    double sum = 0.0;
    std::optional<std::pair<std::size_t, std::size_t>> previous;  ///< hold, in-range time
    std::size_t best_so_far = 0;  ///< the in-range time up to here with the greatest sum, the first of equals
  };

  /// Of holds g and h whose ranges overlap, with an `above` between them: when it was cold enough to part
  /// them.
  void find_cold_times() {
    cold_times_.resize(holds_.size());
    for (std::size_t g = 0; g < holds_.size(); ++g) {
      cold_times_[g].resize(holds_.size());
      for (std::size_t h = g + 1; h < holds_.size(); ++h) {
        if (holds_[g].range.in_range.empty() || holds_[h].range.in_range.empty()) continue;
        if (holds_[g].low_c > holds_[h].high_c || holds_[h].low_c > holds_[g].high_c) continue;
        if (const auto level = highest_above(procedure_, holds_[g].stage, holds_[h].stage))
          cold_times_[g][h] = times_below(record_, rows_, *level);
      }
    }
  }

  /// Between neighbours that are parted so, all holds before and after are parted as well. Where two holds
  /// must be parted, and a hold between them need be from neither, a step that knows the last hold alone does
  /// not see it.
  [[nodiscard]] bool needs_search() const {
    for (std::size_t g = 0; g < holds_.size(); ++g)
      for (std::size_t h = g + 2; h < holds_.size(); ++h)
        for (std::size_t between = g + 1; between < h && cold_times_[g][h]; ++between)
          if (!cold_times_[g][between] && !cold_times_[between][h]) return true;
    return false;
  }

  [[nodiscard]] bool parted(std::size_t g, std::size_t h, const Span& earlier, const Span& later) const {
    if (earlier.second > later.first) return false;
    if (!cold_times_[g][h]) return true;
    const auto& cold = *cold_times_[g][h];
    const auto next = std::lower_bound(cold.begin(), cold.end(), later.first - kSampleSlack_s);
    return next != cold.begin() && *std::prev(next) > earlier.second + kSampleSlack_s;
  }

  /// Every choice, the longest times first, but for those that cannot lead any more.
  std::vector<std::optional<std::size_t>> searched() {
    longest_from_.assign(holds_.size() + 1, 0.0);
    order_.resize(holds_.size());
    for (std::size_t h = holds_.size(); h-- > 0;) {
      const std::vector<Span>& times = holds_[h].range.in_range;
      for (std::size_t s = 0; s < times.size(); ++s) order_[h].push_back(s);
      std::stable_sort(order_[h].begin(), order_[h].end(),
                       [&](std::size_t a, std::size_t b) { return length(times[a]) > length(times[b]); });
      longest_from_[h] = longest_from_[h + 1] + (times.empty() ? 0.0 : length(times[order_[h].front()]));
    }
    best_sum_ = -1.0;
    tried_.assign(holds_.size(), std::nullopt);
    search(0, 0.0);
    return best_;
  }

  void search(std::size_t h, double sum) {
    if (sum + longest_from_[h] <= best_sum_ + kSameSum_s) return;
    if (h == holds_.size()) {
      best_sum_ = sum;
      best_ = tried_;
      return;
    }
    const std::vector<Span>& times = holds_[h].range.in_range;
    for (const std::size_t s : order_[h]) {
      bool fits = true;
      for (std::size_t g = 0; g < h && fits; ++g)
        fits = !tried_[g] || parted(g, h, holds_[g].range.in_range[*tried_[g]], times[s]);
      if (!fits) continue;
      tried_[h] = s;
      search(h + 1, sum + length(times[s]));
    }
    tried_[h].reset();
    search(h + 1, sum);
  }

  /// Takes continuous holds of hold g as the ones just before those of hold h, where that is better.
  void continue_from(std::size_t g, std::size_t h) {
    const std::vector<Span>& earlier = holds_[g].range.in_range;
    if (earlier.empty() || holds_[h].range.in_range.empty()) return;
    const auto& cold_times = cold_times_[g][h];
    for (std::size_t s = 0; s < steps_[h].size(); ++s) {
      const Span& time_range = holds_[h].range.in_range[s];
      Before before{time_range.first, false};
      if (cold_times) {
        const auto next =
            std::lower_bound(cold_times->begin(), cold_times->end(), time_range.first - kSampleSlack_s);
        if (next == cold_times->begin()) continue;
        before = {*std::prev(next), true};
      }
      const auto end = std::partition_point(earlier.begin(), earlier.end(), [&](const Span& span) {
        return before.strictly ? span.second < before.limit - kSampleSlack_s : span.second <= before.limit;
      });
      if (end == earlier.begin()) continue;
      const std::size_t last = static_cast<std::size_t>(end - earlier.begin()) - 1;
      const std::size_t best = steps_[g][last].best_so_far;
      const double sum = steps_[g][best].sum + length(time_range);
      if (sum > steps_[h][s].sum + kSameSum_s) {
        steps_[h][s].sum = sum;
        steps_[h][s].previous = {g, best};
      }
    }
  }

  void note_best(std::size_t h) {
    for (std::size_t s = 1; s < steps_[h].size(); ++s) {
      const std::size_t best = steps_[h][s - 1].best_so_far;
      steps_[h][s].best_so_far = steps_[h][s].sum > steps_[h][best].sum + kSameSum_s ? s : best;
    }
  }

  [[nodiscard]] std::vector<std::optional<std::size_t>> chosen() const {
    std::vector<std::optional<std::size_t>> continuous_holds(holds_.size());
    std::optional<std::pair<std::size_t, std::size_t>> at;
    double greatest = 0.0;
    for (std::size_t h = 0; h < holds_.size(); ++h) {
      if (steps_[h].empty()) continue;
      const std::size_t best = steps_[h].back().best_so_far;
      if (!at || steps_[h][best].sum > greatest + kSameSum_s) {
        at = {h, best};
        greatest = steps_[h][best].sum;
      }
    }
    for (; at; at = steps_[at->first][at->second].previous) continuous_holds[at->first] = at->second;
    return continuous_holds;
  }

  const std::vector<HoldCourse>& holds_;
  const Procedure& procedure_;
  const Record& record_;
  RowValues rows_;
  std::vector<std::vector<std::optional<std::vector<double>>>> cold_times_;  ///< of two holds, in order
  std::vector<std::vector<Step>> steps_;
  // The search.
  std::vector<double> longest_from_;             ///< the sum of the longest times from a hold on
  std::vector<std::vector<std::size_t>> order_;  ///< per hold, its in-range times, the longest first
  std::vector<std::optional<std::size_t>> tried_, best_;
  double best_sum_ = -1.0;
};

double distance(const Span& time_range, const Span& continuous) {
  return std::max(time_range.first - continuous.second, continuous.first - time_range.second);
}

bool same_time(const Span& a, const Span& b) {
  return std::fabs(a.first - b.first) <= kWindowSlack_s && std::fabs(a.second - b.second) <= kWindowSlack_s;
}

/// The in-range times of hold `index`'s range between its neighbours' continuous holds, less those that lie
/// in the range of another hold too, between its neighbours, and nearer to its continuous hold.
std::vector<std::size_t> belonging(const std::vector<HoldCourse>& holds, std::size_t index) {
  const HoldCourse& hold = holds[index];
  const HoldCourse* before = hold_before(holds, index);
  const HoldCourse* after = hold_after(holds, index);
  const auto within = [](const Span& span, const HoldCourse* earlier, const HoldCourse* later) {
    return (earlier == nullptr || span.first >= earlier->continuous->second) &&
           (later == nullptr || span.second <= later->continuous->first);
  };
  std::vector<std::size_t> own;
  for (std::size_t i = 0; i < hold.range.in_range.size(); ++i) {
    const Span& time_range = hold.range.in_range[i];
    if (!within(time_range, before, after)) continue;
    const bool is_continuous_hold = same_time(time_range, *hold.continuous);
    bool nearer_elsewhere = false;
    for (std::size_t other = 0; other < holds.size() && !is_continuous_hold; ++other) {
      if (other == index || !holds[other].continuous) continue;
      if (!within(time_range, hold_before(holds, other), hold_after(holds, other))) continue;
      const std::vector<Span>& theirs = holds[other].range.in_range;
      const auto around = std::lower_bound(theirs.begin(), theirs.end(), time_range.second - kWindowSlack_s,
                                           [](const Span& span, double at) { return span.second < at; });
      if (around == theirs.end() || around->first > time_range.first + kWindowSlack_s) continue;
      const double here = distance(time_range, *hold.continuous);
      const double there = distance(time_range, *holds[other].continuous);
      if (there < here - kWindowSlack_s || (there <= here + kWindowSlack_s && other < index))
        nearer_elsewhere = true;
    }
    if (!nearer_elsewhere) own.push_back(i);
  }
  return own;
}

/// Disregards short in-range times at either end, one after the other, up to the continuous hold; the rest
/// make the hold period.
void drop_edge_crossings(HoldCourse& hold, double in_range_min_s) {
  const std::vector<Span> own = hold.all_in_range();
  const double shortest = std::max(in_range_min_s, length(*hold.continuous) / 10.0);
  const auto edge = [&](const Span& span) {
    return !same_time(span, *hold.continuous) && length(span) < shortest - kSampleSlack_s;
  };
  auto first = own.begin();
  while (edge(*first)) ++first;
  auto end = own.end();
  while (edge(*std::prev(end))) --end;
  hold.edge_crossings.assign(own.begin(), first);
  hold.edge_crossings.insert(hold.edge_crossings.end(), end, own.end());
  hold.in_range.assign(first, end);
  hold.period = {hold.in_range.front().first, hold.in_range.back().second};
}

}  // namespace

std::vector<Span> HoldCourse::all_in_range() const {
  std::vector<Span> all;
  for (const std::size_t i : own) all.push_back(range.in_range[i]);
  return all;
}

const HoldCourse* hold_before(const std::vector<HoldCourse>& holds, std::size_t index) {
  while (index > 0)
    if (holds[--index].continuous) return &holds[index];
  return nullptr;
}

const HoldCourse* hold_after(const std::vector<HoldCourse>& holds, std::size_t index) {
  while (++index < holds.size())
    if (holds[index].continuous) return &holds[index];
  return nullptr;
}

void choose_holds(std::vector<HoldCourse>& holds, const Procedure& procedure, const Record& record,
                  const TraceSet& set, Group group) {
  const auto continuous_holds = ContinuousHoldChoice(holds, procedure, record, set, group).run();
  for (std::size_t h = 0; h < holds.size(); ++h)
    if (continuous_holds[h]) {
      holds[h].continuous = holds[h].range.in_range[*continuous_holds[h]];
      holds[h].continuous_by = holds[h].range.in_range_by[*continuous_holds[h]];
    }
  for (std::size_t h = 0; h < holds.size(); ++h) {
    if (!holds[h].continuous) continue;
    holds[h].own = belonging(holds, h);
    drop_edge_crossings(holds[h], procedure.evaluation.in_range_min_s);
  }
}

}  // namespace soakwright
