#include "core/judge/rate_basis.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace soakwright {
namespace {

RateBasis over_windows(const WeldCase& weld, const BasisRate& rate, int minutes, bool unseen) {
  RateBasis basis;
  basis.over = fmt::format("{} min", minutes);
  if (!rate.worst) return basis;
  basis.rate_c_per_h = rate.worst->window.slope_c_per_h;
  basis.channel = weld.name(rate.worst->trace);
  basis.from_s = rate.worst->window.from_s;
  basis.to_s = rate.worst->window.to_s;
  basis.verdict = rate.surely               ? Verdict::not_met
                  : rate.doubtful || unseen ? Verdict::undecided
                                            : Verdict::met;
  return basis;
}

/// The channel with the smallest margin; the worst verdict of all channels.
RateBasis from_end_to_end(const WeldCase& weld, const Requirement& requirement,
                          const std::vector<OverallRate>& overall, bool unseen) {
  RateBasis basis;
  basis.over = "overall";
  Verdict worst = unseen ? Verdict::undecided : Verdict::met;
  double smallest = 0.0;
  for (const OverallRate& rate : overall) {
    if (!rate.rate_c_per_h) continue;
    const double u = overall_uncertainty(weld, rate);
    worst = std::max(worst, held_to_limit(requirement, *rate.rate_c_per_h, u));
    const double margin = margin_after(requirement, *rate.rate_c_per_h, u);
    if (basis.rate_c_per_h && margin >= smallest) continue;
    smallest = margin;
    basis.rate_c_per_h = rate.rate_c_per_h;
    basis.channel = weld.name(rate.trace);
    basis.from_s = rate.from_s;
    basis.to_s = rate.to_s;
  }
  if (basis.rate_c_per_h) basis.verdict = worst;
  return basis;
}

}  // namespace

std::vector<RateBasis> rate_bases(const WeldCase& weld, const Requirement& requirement, const StageRate& rate,
                                  const std::vector<OverallRate>& overall, bool unseen) {
  std::vector<RateBasis> bases;
  for (std::size_t i = 0; i < kBasisMinutes.size(); ++i)
    bases.push_back(over_windows(weld, rate.by_window[i], kBasisMinutes[i], unseen));
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
