// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/stages/rate_alternatives.h"

#include <algorithm>
#include <cmath>

namespace soakwright {
namespace {

RateAlternative over_windows(const WeldCase& weld, const AlternativeRate& rate, int minutes, bool unseen) {
  RateAlternative alternative;
  alternative.window_minutes = minutes;
  if (!rate.worst) return alternative;
  alternative.rate_c_per_h = rate.worst->window.slope_c_per_h;
  alternative.channel = weld.name(rate.worst->trace);
  alternative.from_s = rate.worst->window.from_s;
  alternative.to_s = rate.worst->window.to_s;
  alternative.verdict = rate.surely               ? Verdict::not_met
                        : rate.doubtful || unseen ? Verdict::inconclusive
                                                  : Verdict::met;
  return alternative;
}

/// The channel with the smallest margin; the worst verdict of all channels.
RateAlternative over_whole_ramp(const WeldCase& weld, const Requirement& requirement, const StageRate& rate,
                                const std::vector<OverallRate>& overall, bool unseen) {
  RateAlternative alternative;
  Verdict worst = unseen ? Verdict::inconclusive : Verdict::met;
  double smallest = 0.0;
  for (std::size_t member = 0; member < overall.size(); ++member) {
    const OverallRate& one = overall[member];
    if (!one.mean) continue;
    worst = std::max(worst, overall_verdict(weld, requirement, one, rate.noise_k[member]));
    const double margin =
        margin_after(requirement, one.mean->rate_c_per_h, overall_uncertainty(weld, one.trace, *one.mean));
    if (alternative.rate_c_per_h && margin >= smallest) continue;
    smallest = margin;
    alternative.rate_c_per_h = one.mean->rate_c_per_h;
    alternative.channel = weld.name(one.trace);
    alternative.from_s = one.mean->from_s;
    alternative.to_s = one.mean->to_s;
  }
  if (alternative.rate_c_per_h) alternative.verdict = worst;
  return alternative;
}

}  // namespace

std::vector<RateAlternative> rate_alternatives(const WeldCase& weld, const Requirement& requirement,
                                               const StageRate& rate, const std::vector<OverallRate>& overall,
                                               bool unseen) {
  std::vector<RateAlternative> alternatives;
  for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i)
    alternatives.push_back(over_windows(weld, rate.by_window[i], kAlternativeMinutes[i], unseen));
  alternatives.push_back(over_whole_ramp(weld, requirement, rate, overall, unseen));
  return alternatives;
}

Verdict overall_verdict(const WeldCase& weld, const Requirement& requirement, const OverallRate& rate,
                        double noise_k) {
  if (!rate.mean) return Verdict::inconclusive;
  const auto beyond_for_certain = [&](const MeanRate& mean) {
    const double doubt = overall_uncertainty(weld, rate.trace, mean) + overall_noise(mean, noise_k);
    return beyond_limit(requirement, mean.rate_c_per_h - doubt);
  };
  if (!beyond_limit(requirement, rate.mean->rate_c_per_h + overall_uncertainty(weld, rate.trace, *rate.mean)))
    return Verdict::met;
  return beyond_for_certain(*rate.mean) && rate.lasting && beyond_for_certain(*rate.lasting)
             ? Verdict::not_met
             : Verdict::inconclusive;
}

double overall_uncertainty(const WeldCase& weld, std::size_t trace_index, const MeanRate& mean) {
  if (weld.guard == nullptr) return 0.0;
  const Trace& trace = weld.set.traces[trace_index];
  const bool spare = trace.take_over_s && mean.from_s >= *trace.take_over_s;
  return weld.guard->of(trace, spare ? 1 : 0).rate_share_up_to(mean.hottest_c) * std::fabs(mean.rate_c_per_h);
}

}  // namespace soakwright
