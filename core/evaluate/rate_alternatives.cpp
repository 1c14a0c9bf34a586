#include "core/evaluate/rate_alternatives.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace soakwright {
namespace {

RateAlternative over_windows(const WeldCase& weld, const AlternativeRate& rate, int minutes, bool unseen) {
  RateAlternative alternatives;
  alternatives.over = fmt::format("{} min", minutes);
  if (!rate.worst) return alternatives;
  alternatives.rate_c_per_h = rate.worst->window.slope_c_per_h;
  alternatives.channel = weld.name(rate.worst->trace);
  alternatives.from_s = rate.worst->window.from_s;
  alternatives.to_s = rate.worst->window.to_s;
  alternatives.verdict = rate.surely               ? Verdict::not_met
                         : rate.doubtful || unseen ? Verdict::inconclusive
                                                   : Verdict::met;
  return alternatives;
}

/// The channel with the smallest margin; the worst verdict of all channels.
RateAlternative from_end_to_end(const WeldCase& weld, const Requirement& requirement,
                                const std::vector<OverallRate>& overall, bool unseen) {
  RateAlternative alternatives;
  alternatives.over = "overall";
  Verdict worst = unseen ? Verdict::inconclusive : Verdict::met;
  double smallest = 0.0;
  for (const OverallRate& rate : overall) {
    if (!rate.rate_c_per_h) continue;
    const double u = overall_uncertainty(weld, rate);
    worst = std::max(worst, held_to_limit(requirement, *rate.rate_c_per_h, u));
    const double margin = margin_after(requirement, *rate.rate_c_per_h, u);
    if (alternatives.rate_c_per_h && margin >= smallest) continue;
    smallest = margin;
    alternatives.rate_c_per_h = rate.rate_c_per_h;
    alternatives.channel = weld.name(rate.trace);
    alternatives.from_s = rate.from_s;
    alternatives.to_s = rate.to_s;
  }
  if (alternatives.rate_c_per_h) alternatives.verdict = worst;
  return alternatives;
}

}  // namespace

std::vector<RateAlternative> rate_bases(const WeldCase& weld, const Requirement& requirement,
                                        const StageRate& rate, const std::vector<OverallRate>& overall,
                                        bool unseen) {
  std::vector<RateAlternative> bases;
  for (std::size_t i = 0; i < kAlternativeMinutes.size(); ++i)
    bases.push_back(over_windows(weld, rate.by_window[i], kAlternativeMinutes[i], unseen));
  bases.push_back(from_end_to_end(weld, requirement, overall, unseen));
  return bases;
}

double overall_uncertainty(const WeldCase& weld, const OverallRate& rate) {
  if (weld.guard == nullptr) return 0.0;
  const Trace& trace = weld.set.traces[rate.trace];
  const bool spare = trace.take_over_s && rate.from_s >= *trace.take_over_s;
  return weld.guard->of(trace, spare ? 1 : 0).rate_share() * std::fabs(*rate.rate_c_per_h);
}

}  // namespace soakwright
