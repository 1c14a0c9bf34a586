// Limits on the whole record: temperature_max, start, end, rows, thermocouples, certificates.
#include <algorithm>

#include <fmt/format.h>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/sentences.h"
#include "core/evaluate/stage_evaluations.h"
#include "core/measure/known_channels.h"

namespace soakwright {
namespace {

class RecordLimitsEvaluator {
 public:
  RecordLimitsEvaluator(const RecordCase& record_case, const std::vector<std::size_t>& evaluated)
      : case_(record_case), limits_(record_case.procedure.record_limits), evaluated_(evaluated) {
    for (std::size_t i = 0; i < case_.set.traces.size(); ++i) all_.push_back(i);
  }

  void run() {
    if (limits_.temperature_max) evaluate_temperature_max();
    if (limits_.start_temperature_max)
      evaluate_row(RequirementKind::start, limits_.start_temperature_max->celsius(), case_.record.first_row);
    if (limits_.end_temperature_max)
      evaluate_row(RequirementKind::end, limits_.end_temperature_max->celsius(), case_.record.end_row - 1);
    if (limits_.gap_max_s) evaluate_gap();
    if (limits_.sampling_interval_max_s) evaluate_interval();
    if (limits_.thermocouples_min) evaluate_thermocouples();
    evaluate_calibration();
  }

 private:
  Requirement start(RequirementKind kind, double limit) const {
    return requirement_for(kind, 0, std::nullopt, limit);
  }

  void finish(Requirement requirement, std::vector<Finding> findings = {}) {
    if (requirement.verdict != Verdict::met && findings.empty()) {
      Finding finding =
          finding_on(requirement, requirement.verdict == Verdict::not_met ? Finding::Kind::not_met
                                                                          : Finding::Kind::inconclusive);
      finding.channel = requirement.channel;
      finding.from_s = requirement.from_s ? requirement.from_s : requirement.at_s;
      finding.to_s = requirement.to_s ? requirement.to_s : requirement.at_s;
      finding.extreme = requirement.measured;
      finding.text = requirement.text;
      findings.push_back(std::move(finding));
    }
    case_.out.findings.insert(case_.out.findings.end(), findings.begin(), findings.end());
    case_.out.requirements.push_back(std::move(requirement));
  }

  Finding hole_finding(const Requirement& requirement, std::size_t trace, const Span& hole) const {
    Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
    finding.channel = case_.name(trace);
    finding.from_s = hole.first;
    finding.to_s = hole.second;
    finding.text = fmt::format("{} is not known from {}", *finding.channel,
                               say_span(case_.record, hole.first, hole.second));
    return finding;
  }

  void evaluate_temperature_max() {
    Requirement requirement = start(RequirementKind::temperature_max, limits_.temperature_max->celsius());
    std::vector<Finding> findings;
    for (const std::size_t index : all_)
      for (const Span& hole : unknown_spans(case_.set.traces[index], case_.time().first, case_.time().second))
        findings.push_back(hole_finding(requirement, index, hole));
    const auto evaluated = evaluated_extreme(case_, requirement, all_, case_.time());
    if (!evaluated) {
      requirement.text = "no reading";
      return finish(std::move(requirement), std::move(findings));
    }
    set_reading(case_, requirement, *evaluated);
    requirement.text =
        fmt::format("highest reading: {} at {} at {}; at most {}", *requirement.channel,
                    say_celsius(*requirement.measured), say_moment(case_.record, *requirement.at_s),
                    say_celsius(requirement.limit)) +
        say_uncertainty(case_, requirement);
    if (requirement.verdict == Verdict::met) {
      if (!findings.empty()) requirement.verdict = Verdict::inconclusive;
    } else {
      for (Finding& place : hot_places(case_, requirement, all_, case_.time()))
        findings.push_back(std::move(place));
    }
    finish(std::move(requirement), std::move(findings));
  }

  /// The first or the last sample of every channel on the work.
  void evaluate_row(RequirementKind kind, double limit, std::size_t row) {
    Requirement requirement = start(kind, limit);
    const double at = case_.record.times_s[row];
    std::vector<std::size_t> in_row;
    std::vector<Finding> findings;
    for (const std::size_t index : all_) {
      const Trace& trace = case_.set.traces[index];
      const bool exclusion =
          std::any_of(trace.exclusions.begin(), trace.exclusions.end(),
                      [&](const Span& span) { return at >= span.first && at <= span.second; });
      if (exclusion) continue;
      const std::size_t only[] = {index};
      if (highest_reading(case_.set, only, {at, at})) {
        in_row.push_back(index);
        continue;
      }
      Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
      finding.channel = trace.name;
      finding.from_s = finding.to_s = at;
      finding.text = fmt::format("{} has no reading in that row", trace.name);
      findings.push_back(std::move(finding));
    }
    const char* which = kind == RequirementKind::start ? "first" : "last";
    const auto evaluated = evaluated_extreme(case_, requirement, in_row, {at, at});
    if (!evaluated) {
      requirement.text = fmt::format("no reading in the {} row", which);
      return finish(std::move(requirement), std::move(findings));
    }
    set_reading(case_, requirement, *evaluated);
    requirement.at_s = at;
    if (requirement.verdict == Verdict::met && !findings.empty()) requirement.verdict = Verdict::inconclusive;
    requirement.text = fmt::format("hottest in the {} row: {} at {}; at most {}", which, *requirement.channel,
                                   say_celsius(*requirement.measured), say_celsius(requirement.limit)) +
                       say_uncertainty(case_, requirement);
    if (requirement.verdict == Verdict::not_met) findings.clear();
    finish(std::move(requirement), std::move(findings));
  }

  void evaluate_gap() {
    Requirement requirement = start(RequirementKind::gap, *limits_.gap_max_s);
    const std::span<const double> times = case_.record.evaluated_times_s();
    std::size_t longest = 0;
    for (std::size_t i = 1; i < times.size(); ++i)
      if (longest == 0 || times[i] - times[i - 1] > times[longest] - times[longest - 1]) longest = i;
    if (longest == 0) {
      requirement.text = "fewer than two rows";
      return finish(std::move(requirement));
    }
    set_measured(requirement, times[longest] - times[longest - 1]);
    requirement.from_s = times[longest - 1];
    requirement.to_s = times[longest];
    requirement.verdict = beyond_limit(requirement, *requirement.measured) ? Verdict::not_met : Verdict::met;
    requirement.text = fmt::format(
        "longest step between rows: {}, from {}; at most {}", say_time(*requirement.measured),
        say_span(case_.record, *requirement.from_s, *requirement.to_s), say_time(requirement.limit));
    std::vector<Finding> findings;
    for (std::size_t i = 1; i < times.size() && requirement.verdict == Verdict::not_met; ++i) {
      if (!beyond_limit(requirement, times[i] - times[i - 1])) continue;
      Finding finding = finding_on(requirement, Finding::Kind::not_met);
      finding.from_s = times[i - 1];
      finding.to_s = times[i];
      finding.extreme = times[i] - times[i - 1];
      finding.text = fmt::format("no row for {}", say_time(*finding.extreme));
      findings.push_back(std::move(finding));
    }
    finish(std::move(requirement), std::move(findings));
  }

  void evaluate_interval() {
    Requirement requirement = start(RequirementKind::interval, *limits_.sampling_interval_max_s);
    set_measured(requirement, case_.record.interval_s);
    requirement.verdict = beyond_limit(requirement, *requirement.measured) ? Verdict::not_met : Verdict::met;
    requirement.text = fmt::format("usual step between rows: {}; at most {}", say_time(*requirement.measured),
                                   say_time(requirement.limit));
    finish(std::move(requirement));
  }

  void evaluate_thermocouples() {
    Requirement requirement =
        start(RequirementKind::thermocouples, static_cast<double>(*limits_.thermocouples_min));
    std::vector<const HoldStage*> holds;
    for (const Stage& stage : case_.procedure.stages)
      if (const auto* hold = std::get_if<HoldStage>(&stage.asked)) holds.push_back(hold);
    std::optional<Span> time = case_.time();
    if (!holds.empty())
      time = first_entry_to_last_exit(case_.set, evaluated_, case_.time(), *holds.front(), *holds.back());
    if (!time) {
      requirement.text = "no thermocouple came into the range of the first hold and out of that of the last";
      return finish(std::move(requirement));
    }
    const FewestKnown fewest = fewest_known(case_.set, evaluated_, *time);
    set_measured(requirement, static_cast<double>(fewest.count));
    requirement.from_s = fewest.time.first;
    requirement.to_s = fewest.time.second;
    requirement.verdict = beyond_limit(requirement, *requirement.measured) ? Verdict::not_met : Verdict::met;
    requirement.text = fmt::format(
        "fewest evaluated thermocouples known at once: {} from {}; at least {}", fewest.count,
        say_span(case_.record, fewest.time.first, fewest.time.second), *limits_.thermocouples_min);
    finish(std::move(requirement));
  }

  struct Certificate {
    std::string owner;
    CivilDate valid_until;
  };

  [[nodiscard]] std::vector<Certificate> certificates() const {
    std::vector<Certificate> dated;
    if (case_.job == nullptr) return dated;
    if (case_.job->recorder && case_.job->recorder->valid_until)
      dated.push_back({"the recorder", *case_.job->recorder->valid_until});
    for (const std::size_t index : evaluated_)
      for (const TraceSource& source : case_.set.traces[index].sources) {
        const Channel& channel = case_.record.channels[source.channel];
        if (!channel.entry) continue;
        const ThermocoupleEntry& entry = case_.job->thermocouples[*channel.entry];
        if (entry.valid_until) dated.push_back({channel.name, *entry.valid_until});
      }
    return dated;
  }

  /// Evaluated where the job gives dates: how many certificates had run out on the record's last day.
  void evaluate_calibration() {
    const std::vector<Certificate> dated = certificates();
    if (dated.empty()) return;
    Requirement requirement = start(RequirementKind::calibration, 0.0);
    const auto last = case_.record.local_time(case_.time().second);
    if (!last) {
      requirement.text = "the log has no dates to hold the certificates against";
      return finish(std::move(requirement));
    }
    std::vector<Finding> findings;
    for (const Certificate& certificate : dated) {
      if (!(certificate.valid_until < last->date())) continue;
      Finding finding = finding_on(requirement, Finding::Kind::not_met);
      finding.channel = certificate.owner == "the recorder" ? std::nullopt : std::optional{certificate.owner};
      finding.from_s = finding.to_s = case_.time().second;
      finding.text = fmt::format("the certificate of {} ran out on {:04}-{:02}-{:02}", certificate.owner,
                                 certificate.valid_until.year, certificate.valid_until.month,
                                 certificate.valid_until.day);
      findings.push_back(std::move(finding));
    }
    set_measured(requirement, static_cast<double>(findings.size()));
    requirement.verdict = findings.empty() ? Verdict::met : Verdict::not_met;
    requirement.text = fmt::format("{} of {} dated certificates had run out on the record's last day",
                                   findings.size(), dated.size());
    finish(std::move(requirement), std::move(findings));
  }

  const RecordCase& case_;
  const RecordLimits& limits_;
  const std::vector<std::size_t>& evaluated_;
  std::vector<std::size_t> all_;
};

}  // namespace

void evaluate_record_limits(const RecordCase& record_case, const std::vector<std::size_t>& evaluated) {
  RecordLimitsEvaluator(record_case, evaluated).run();
}

}  // namespace soakwright
