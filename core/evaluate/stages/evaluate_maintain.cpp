// SPDX-License-Identifier: GPL-3.0-or-later
// A maintain stage: the evaluated channels stay in the range throughout a period of the job.
#include <algorithm>
#include <limits>

#include "core/evaluate/stages/stage_evaluations.h"
#include "core/measure/extremes.h"
#include "core/measure/holds/hold_time.h"

namespace soakwright {

namespace {

/// The job's periods of that name, joined where they overlap.
std::vector<Span> periods_named(const Record& record, const std::string& name) {
  std::vector<Span> all;
  for (const Period& period : record.periods)
    if (period.name == name) all.emplace_back(period.from_s, period.to_s);
  std::sort(all.begin(), all.end());
  std::vector<Span> joined;
  for (const Span& period : all) {
    if (!joined.empty() && period.first <= joined.back().second)
      joined.back().second = std::max(joined.back().second, period.second);
    else
      joined.push_back(period);
  }
  return joined;
}

/// Time out of the range but for excursions allowed, whose whole length counts, also outside `period`.
double out_not_allowed(const GroupRange& range, const Span& period) {
  double out_s = 0.0;
  for (const Excursion& excursion : range.excursions) {
    if (excursion.filled) continue;
    out_s += std::max(
        0.0, std::min(excursion.time.second, period.second) - std::max(excursion.time.first, period.first));
  }
  return out_s;
}

/// The longest time of a channel, or of the group, that is neither known nor excluded.
double unknown_within(const WeldCase& weld, const GroupRange& range, const Span& period) {
  double longest = time_out(range, period).unknown_s;
  for (const std::size_t index : weld.group) {
    double unknown_s = 0.0;
    for (const Span& span : unknown_spans(weld.set.traces[index], period.first, period.second))
      unknown_s += span.second - span.first;
    longest = std::max(longest, unknown_s);
  }
  return longest;
}

}  // namespace

void evaluate_maintain(const WeldCase& weld, const Stage& stage, const MaintainStage& specified) {
  Requirement requirement = requirement_for(RequirementKind::maintain, stage.number, weld.weld, 0.0);
  StageCourse course;
  course.weld = weld.weld;
  course.number = stage.number;
  course.kind = "maintain";

  const std::vector<Span> periods = periods_named(weld.record, specified.during);
  const double low = specified.low.celsius();
  const double high = specified.high ? specified.high->celsius() : std::numeric_limits<double>::infinity();
  const auto in_range = [&](RangeEdge edge) {
    return group_in_range(weld.set, weld.group, weld.time(), weld.ranges({low, high}, edge),
                          weld.procedure.evaluation.excursion_allowed);
  };
  const GroupRange range = in_range(RangeEdge::as_asked);
  const bool guarded = weld.guard != nullptr;
  const GroupRange narrowed = guarded ? in_range(RangeEdge::narrowed) : GroupRange{};
  const GroupRange widened = guarded ? in_range(RangeEdge::widened) : GroupRange{};
  double surely_out_s = 0.0;
  double possibly_out_s = 0.0;
  double out_s = 0.0;
  double unknown_s = 0.0;
  std::vector<Finding> findings;
  for (const Span& period : periods) {
    const Span shown{std::max(period.first, weld.time().first), std::min(period.second, weld.time().second)};
    const double length = period.second - period.first;
    unknown_s += length - std::max(0.0, shown.second - shown.first);
    if (shown.second <= shown.first) continue;
    const double here_s = out_not_allowed(range, shown);
    out_s += here_s;
    unknown_s += unknown_within(weld, range, shown);
    surely_out_s += guarded ? out_not_allowed(widened, shown) : here_s;
    possibly_out_s += guarded ? out_not_allowed(narrowed, shown) : here_s;
    for (const Excursion& excursion : range.excursions) {
      const Span part{std::max(excursion.time.first, shown.first),
                      std::min(excursion.time.second, shown.second)};
      if (part.second <= part.first) continue;
      const Depth depth = depth_of(weld.set, weld.group, part, low, high);
      Finding finding =
          finding_on(requirement, excursion.filled ? Finding::Kind::note : Finding::Kind::not_met);
      finding.channel = weld.name(depth.trace);
      finding.from_s = part.first;
      finding.to_s = part.second;
      finding.extreme = Temperature::of_celsius(depth.celsius);
      finding.what = {state(Sentence::out_in_period, *finding.channel, *finding.extreme, specified.during)};
      if (excursion.filled) finding.what.push_back(state(Sentence::excursion_is_allowed));
      (excursion.filled ? weld.out.findings : findings).push_back(std::move(finding));
    }
  }
  if (!periods.empty()) {
    course.start_s = periods.front().first;
    course.end_s = periods.back().second;
  }
  for (std::size_t member = 0; member < weld.group.size(); ++member) {
    const Trace& trace = weld.set.traces[weld.group[member]];
    StageChannel channel;
    channel.name = trace.name;
    if (const auto summary = summary_of(trace, periods)) {
      channel.min_c = summary->min_c;
      channel.max_c = summary->max_c;
      channel.mean_c = summary->mean_c;
    }
    course.channels.push_back(std::move(channel));
  }
  weld.out.stages.push_back(std::move(course));

  if (periods.empty()) {
    requirement.remarks.push_back(state(Sentence::no_such_period, specified.during));
  } else {
    set_measured(requirement, out_s);
    requirement.from_s = weld.out.stages.back().start_s;
    requirement.to_s = weld.out.stages.back().end_s;
    requirement.verdict = beyond_limit(requirement, surely_out_s) ? Verdict::not_met
                          : unknown_s > kSampleSlack_s || beyond_limit(requirement, possibly_out_s)
                              ? Verdict::inconclusive
                              : Verdict::met;
    if (guarded) {
      set_measured(requirement, out_s, possibly_out_s - out_s);
      requirement.certain_s = surely_out_s;
      requirement.possible_s = possibly_out_s;
      requirement.remarks.push_back(state(Sentence::between_with_u, Duration::of_seconds(surely_out_s),
                                          Duration::of_seconds(possibly_out_s)));
    }
    if (unknown_s > kSampleSlack_s)
      requirement.remarks.push_back(state(Sentence::missing_in_period, Duration::of_seconds(unknown_s)));
  }
  if (requirement.verdict == Verdict::not_met) {
    weld.out.findings.insert(weld.out.findings.end(), findings.begin(), findings.end());
  } else if (requirement.verdict == Verdict::inconclusive) {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.from_s = requirement.from_s;
    finding.to_s = requirement.to_s;
    weld.out.findings.push_back(std::move(finding));
  }
  weld.out.requirements.push_back(std::move(requirement));
}

}  // namespace soakwright
