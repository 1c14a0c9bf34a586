// SPDX-License-Identifier: GPL-3.0-or-later
// Limits on the whole record: maximum temperature, at start and end, rows, certificates.
#include <algorithm>

#include "core/evaluate/evaluated_reading.h"
#include "core/evaluate/stages/stage_evaluations.h"
#include "core/measure/traces/unknown_time.h"

namespace soakwright {
namespace {

/// A first (last) reading further than this many intervals from the record's start (end) is not one of it.
constexpr double kIntervalsOfEnd = 3.0;

class RecordLimitsEvaluator {
 public:
  RecordLimitsEvaluator(const RecordCase& record_case, const std::vector<std::size_t>& evaluated)
      : case_(record_case), limits_(record_case.procedure.record_limits), evaluated_(evaluated) {
    for (std::size_t i = 0; i < case_.set.traces.size(); ++i) {
      all_.push_back(i);
      if (!is_spare(i)) never_spare_.push_back(i);
    }
  }

  void run() {
    if (limits_.temperature_max) evaluate_temperature_max();
    if (limits_.start_temperature_max)
      evaluate_end_of_record(RequirementKind::start, limits_.start_temperature_max->celsius());
    if (limits_.end_temperature_max)
      evaluate_end_of_record(RequirementKind::end, limits_.end_temperature_max->celsius());
    if (limits_.gap_max_s) evaluate_gap();
    if (limits_.sampling_interval_max_s) evaluate_interval();
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
      finding.extreme = requirement.measured_quantity();
      findings.push_back(std::move(finding));
    }
    case_.out.findings.insert(case_.out.findings.end(), findings.begin(), findings.end());
    case_.out.requirements.push_back(std::move(requirement));
  }

  [[nodiscard]] bool is_spare(std::size_t trace) const {
    return case_.record.channels[case_.set.traces[trace].channel].role == ThermocoupleRole::spare;
  }

  /// Unknown time between readings at or below this is taken as cold: the lowest `low` of the procedure's
  /// holds, without a hold the limit, less 50 °C.
  [[nodiscard]] double cold_c(double limit_c) const {
    std::optional<double> lowest;
    for (const Stage& stage : case_.procedure.stages)
      if (const auto* hold = std::get_if<HoldStage>(&stage.specified))
        lowest = std::min(lowest.value_or(hold->low.celsius()), hold->low.celsius());
    return lowest.value_or(limit_c) - kFarBelowHold_k;
  }

  /// Evaluated, spare and edge channels; a spare that has not taken over counts with the readings that it
  /// has.
  void evaluate_temperature_max() {
    Requirement requirement = start(RequirementKind::temperature_max, limits_.temperature_max->celsius());
    const auto evaluated = evaluated_extreme(case_, requirement, all_, case_.time());
    std::vector<Finding> findings =
        unknown_places(case_, requirement, never_spare_, case_.time(), cold_c(requirement.limit));
    if (!evaluated) {
      requirement.remarks.push_back(state(Sentence::no_reading));
      return finish(std::move(requirement), std::move(findings));
    }
    set_reading(case_, requirement, *evaluated);
    remark_uncertainty(case_, requirement);
    if (requirement.verdict == Verdict::met && !findings.empty()) {
      requirement.verdict = Verdict::inconclusive;
      requirement.remarks.push_back(state(Sentence::hotter_unseen));
    } else if (requirement.verdict != Verdict::met) {
      if (requirement.verdict == Verdict::not_met) findings.clear();
      for (Finding& place : hot_places(case_, requirement, all_, case_.time()))
        findings.push_back(std::move(place));
    }
    finish(std::move(requirement), std::move(findings));
  }

  /// The first or the last reading of a channel, where it lies within three intervals of the record's start
  /// or end.
  [[nodiscard]] std::optional<ReadingAt> reading_at_end(std::size_t index, bool at_start) const {
    const Trace& trace = case_.set.traces[index];
    const auto reading = [&](const Piece& piece, std::size_t sample) {
      const TraceSource& source = trace.sources[piece.source];
      return ReadingAt{index, source.t[sample], source.c[sample], piece.source};
    };
    std::optional<ReadingAt> found;
    for (const Piece& piece : trace.pieces) {
      if (piece.first >= piece.end) continue;
      if (at_start && found) break;
      found = reading(piece, at_start ? piece.first : piece.end - 1);
    }
    if (!found) return found;
    const double away = at_start ? found->at_s - case_.time().first : case_.time().second - found->at_s;
    return away <= kIntervalsOfEnd * case_.record.interval_s + kSampleSlack_s ? found : std::nullopt;
  }

  /// The first or the last reading of every channel on the work.
  void evaluate_end_of_record(RequirementKind kind, double limit) {
    Requirement requirement = start(kind, limit);
    const bool at_start = kind == RequirementKind::start;
    std::vector<ReadingAt> readings;
    std::vector<Finding> findings;
    for (const std::size_t index : all_) {
      const Trace& trace = case_.set.traces[index];
      if (at_start ? trace.excluded_from_start : trace.excluded_to_end) continue;
      if (const auto reading = reading_at_end(index, at_start)) {
        readings.push_back(*reading);
        continue;
      }
      if (is_spare(index)) continue;
      Finding finding = finding_on(requirement, Finding::Kind::inconclusive);
      finding.channel = trace.name;
      finding.from_s = finding.to_s = at_start ? case_.time().first : case_.time().second;
      finding.what = {state(at_start ? Sentence::channel_without_first : Sentence::channel_without_last,
                            trace.name, Duration::of_seconds(kIntervalsOfEnd * case_.record.interval_s))};
      findings.push_back(std::move(finding));
    }
    const auto evaluated = worst_reading(case_, requirement, readings);
    if (!evaluated) {
      requirement.remarks.push_back(state(at_start ? Sentence::no_first_reading : Sentence::no_last_reading));
      return finish(std::move(requirement), std::move(findings));
    }
    set_reading(case_, requirement, *evaluated);
    remark_uncertainty(case_, requirement);
    if (requirement.verdict == Verdict::met && !findings.empty()) {
      requirement.verdict = Verdict::inconclusive;
      requirement.remarks.push_back(state(Sentence::channels_without_reading_there,
                                          Count::of(static_cast<std::int64_t>(findings.size()))));
    }
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
      requirement.remarks.push_back(state(Sentence::one_row));
      return finish(std::move(requirement));
    }
    set_measured(requirement, times[longest] - times[longest - 1]);
    requirement.from_s = times[longest - 1];
    requirement.to_s = times[longest];
    requirement.verdict = beyond_limit(requirement, *requirement.measured) ? Verdict::not_met : Verdict::met;
    std::vector<Finding> findings;
    for (std::size_t i = 1; i < times.size() && requirement.verdict == Verdict::not_met; ++i) {
      if (!beyond_limit(requirement, times[i] - times[i - 1])) continue;
      Finding finding = finding_on(requirement, Finding::Kind::not_met);
      finding.from_s = times[i - 1];
      finding.to_s = times[i];
      finding.extreme = Duration::of_seconds(times[i] - times[i - 1]);
      finding.what = {state(Sentence::no_readings_for, *finding.extreme)};
      findings.push_back(std::move(finding));
    }
    finish(std::move(requirement), std::move(findings));
  }

  void evaluate_interval() {
    Requirement requirement = start(RequirementKind::interval, *limits_.sampling_interval_max_s);
    set_measured(requirement, case_.record.interval_s);
    requirement.verdict = beyond_limit(requirement, *requirement.measured) ? Verdict::not_met : Verdict::met;
    finish(std::move(requirement));
  }

  struct Certificate {
    std::optional<std::string> owner;  ///< a channel; nothing is the recorder
    CivilDate valid_until;
  };

  [[nodiscard]] std::vector<Certificate> certificates() const {
    std::vector<Certificate> dated;
    if (case_.job == nullptr) return dated;
    if (case_.job->recorder && case_.job->recorder->valid_until)
      dated.push_back({std::nullopt, *case_.job->recorder->valid_until});
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
      requirement.remarks.push_back(state(Sentence::no_dates));
      return finish(std::move(requirement));
    }
    std::vector<Finding> findings;
    for (const Certificate& certificate : dated) {
      if (!(certificate.valid_until < last->date())) continue;
      Finding finding = finding_on(requirement, Finding::Kind::not_met);
      finding.channel = certificate.owner;
      finding.from_s = finding.to_s = case_.time().second;
      finding.what = {certificate.owner ? state(Sentence::certificate_of_channel, *certificate.owner,
                                                certificate.valid_until)
                                        : state(Sentence::certificate_of_recorder, certificate.valid_until)};
      findings.push_back(std::move(finding));
    }
    set_measured(requirement, static_cast<double>(findings.size()));
    requirement.verdict = findings.empty() ? Verdict::met : Verdict::not_met;
    requirement.remarks.push_back(
        state(Sentence::dated_certificates, Count::of(static_cast<std::int64_t>(dated.size()))));
    finish(std::move(requirement), std::move(findings));
  }

  const RecordCase& case_;
  const RecordLimits& limits_;
  const std::vector<std::size_t>& evaluated_;
  std::vector<std::size_t> all_, never_spare_;
};

}  // namespace

void evaluate_record_limits(const RecordCase& record_case, const std::vector<std::size_t>& evaluated) {
  RecordLimitsEvaluator(record_case, evaluated).run();
}

}  // namespace soakwright
