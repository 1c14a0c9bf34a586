// SPDX-License-Identifier: GPL-3.0-or-later
// The certificate: what a client reads at a glance, of the record and of each of its welds.
#include <algorithm>
#include <cctype>
#include <limits>
#include <utility>

#include "core/procedure/named_path.h"
#include "core/report/sections/sections.h"
#include "core/wording/procedure_limits.h"
#include "core/wording/requirement_words.h"
#include "core/wording/sections/certificate_words.h"

namespace soakwright {
namespace {

namespace say_of = certificate_words;

/// Limits that a client looks for whatever their verdict; others stand on page 1 only where they are not met.
bool is_of_the_cycle(RequirementKind kind) {
  switch (kind) {
    case RequirementKind::heating_rate:
    case RequirementKind::heating_rate_min:
    case RequirementKind::cooling_rate:
    case RequirementKind::cooling_rate_min:
    case RequirementKind::hold_time:
    case RequirementKind::hold_time_max:
    case RequirementKind::spread:
    case RequirementKind::maintain:
    case RequirementKind::tempering_min:
    case RequirementKind::tempering_max:
    case RequirementKind::temperature_max:
      return true;
    default:
      return false;
  }
}

std::string small_first(std::string text) {
  if (!text.empty()) text.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(text.front())));
  return text;
}

class Summary {
 public:
  Summary(const ReportContext& context, const std::vector<RequirementRow>& rows,
          const std::optional<std::string>& weld)
      : context_(context), rows_(rows), weld_(weld) {}

  std::vector<SummaryRow> made() {
    for (const Stage& stage : context_.analysis.procedure->stages) {
      add_holding_temperature(stage);
      add_of(stage.number);
    }
    add_of(0);
    if (!limits_temperature_) add_highest();
    if (others_ > 0) {
      LabelledText rest = say_of::other_requirements(others_, others_);
      result_.push_back(
          {std::move(rest.name), {}, std::move(rest.text), {}, Verdict::met, verdict_text(Verdict::met)});
    }
    return std::move(result_);
  }

 private:
  [[nodiscard]] const Verdicts& verdicts() const { return *context_.analysis.verdicts; }
  [[nodiscard]] bool is_ours(const Requirement& requirement) const {
    return !requirement.weld || requirement.weld == weld_;
  }

  /// The stage is named where the procedure has the limit in more than one.
  [[nodiscard]] std::string label_of(const Requirement& requirement, const RequirementRow& row) const {
    const auto same = std::count_if(
        verdicts().requirements.begin(), verdicts().requirements.end(),
        [&](const Requirement& other) { return is_ours(other) && other.kind == requirement.kind; });
    const std::string label =
        requirement.kind == RequirementKind::spread ? say_of::spread() : std::string{row.label};
    return same > 1 ? label + ", " + small_first(row.stage) : label;
  }

  void add_of(std::size_t stage) {
    for (const RequirementRow& row : rows_) {
      const Requirement& requirement = verdicts().requirements[row.requirement];
      if (requirement.stage != stage || !is_ours(requirement)) continue;
      limits_temperature_ = limits_temperature_ || requirement.kind == RequirementKind::temperature_max;
      if (requirement.verdict == Verdict::met && !is_of_the_cycle(requirement.kind)) {
        ++others_;
        continue;
      }
      result_.push_back(
          {label_of(requirement, row), row.limit, row.measured, row.where, row.verdict, row.verdict_text});
    }
  }

  /// Lowest and highest of all evaluated thermocouples in the hold period. It has the verdict of the limits
  /// on the range, and none where it lies outside the range while these say met.
  void add_holding_temperature(const Stage& stage) {
    const auto* hold = std::get_if<HoldStage>(&stage.specified);
    if (hold == nullptr) return;
    std::optional<double> low, high;
    std::string coldest, hottest;
    for (const StageCourse& course : verdicts().stages) {
      if (course.number != stage.number || (course.weld && course.weld != weld_)) continue;
      for (const StageChannel& channel : course.channels) {
        if (channel.min_c && (!low || *channel.min_c < *low)) {
          low = channel.min_c;
          coldest = channel.name;
        }
        if (channel.max_c && (!high || *channel.max_c > *high)) {
          high = channel.max_c;
          hottest = channel.name;
        }
      }
    }
    SummaryRow row{say_of::holding_temperature(),
                   context_.say.range(hold->low, hold->high),
                   say_of::lowest_to_highest(low, high, context_.say),
                   {}};
    const auto holds =
        std::count_if(context_.analysis.procedure->stages.begin(), context_.analysis.procedure->stages.end(),
                      [](const Stage& other) { return std::holds_alternative<HoldStage>(other.specified); });
    if (holds > 1)
      row.label += ", " + small_first(stage_title(context_.analysis.procedure.get(), stage.number));
    if (low && high) row.where = coldest == hottest ? coldest : coldest + ", " + hottest;
    const bool inside =
        low && high && *low >= hold->low.celsius() && (!hold->high || *high <= hold->high->celsius());
    std::optional<Verdict> verdict;
    for (const Requirement& requirement : verdicts().requirements) {
      const bool on_range =
          requirement.kind == RequirementKind::over || requirement.kind == RequirementKind::excursion_time;
      if (!on_range || requirement.stage != stage.number || !is_ours(requirement)) continue;
      verdict = verdict ? std::max(*verdict, requirement.verdict) : requirement.verdict;
    }
    if (verdict && (*verdict != Verdict::met || inside)) {
      row.verdict = verdict;
      row.verdict_text = verdict_text(*verdict);
    }
    result_.push_back(std::move(row));
  }

  void add_highest() {
    const Channel* hottest = nullptr;
    for (const Channel& channel : context_.analysis.record->channels) {
      if (!channel.evaluated() || !channel.max_c) continue;
      if (weld_ && channel.weld && channel.weld != weld_) continue;
      if (hottest == nullptr || *channel.max_c > *hottest->max_c) hottest = &channel;
    }
    if (hottest == nullptr) return;
    result_.push_back({say_of::highest_temperature(), say_of::not_specified(),
                       context_.say.temperature(*hottest->max_c), hottest->name});
  }

  const ReportContext& context_;
  const std::vector<RequirementRow>& rows_;
  const std::optional<std::string>& weld_;
  bool limits_temperature_ = false;
  std::size_t others_ = 0;
  std::vector<SummaryRow> result_;
};

/// The rows again in the other unit, put beside those that they repeat.
void add_other_unit(const std::vector<SummaryRow>& again, std::vector<SummaryRow>& rows) {
  for (std::size_t i = 0; i < rows.size() && i < again.size(); ++i) {
    if (again[i].required != rows[i].required) rows[i].required_also = again[i].required;
    if (again[i].recorded != rows[i].recorded) rows[i].recorded_also = again[i].recorded;
  }
}

std::string counted_sentence(const Verdicts& verdicts, const std::optional<std::string>& weld) {
  std::size_t counts[3] = {};
  for (const Requirement& requirement : verdicts.requirements)
    if (!requirement.weld || requirement.weld == weld)
      ++counts[static_cast<std::size_t>(requirement.verdict)];
  return say_of::counted(counts[static_cast<std::size_t>(Verdict::met)],
                         counts[static_cast<std::size_t>(Verdict::not_met)],
                         counts[static_cast<std::size_t>(Verdict::inconclusive)]);
}

/// Thermocouples alike in type, tolerance and certificate are named together.
std::vector<LabelledText> calibration_facts(const Report& report) {
  std::vector<std::pair<std::string, std::vector<std::string>>> groups;
  for (const ChannelRow& row : report.channels) {
    if (!row.evaluated || row.instrument.empty()) continue;
    const auto same = std::find_if(groups.begin(), groups.end(),
                                   [&](const auto& group) { return group.first == row.instrument; });
    if (same == groups.end())
      groups.push_back({row.instrument, {row.name}});
    else
      same->second.push_back(row.name);
  }
  if (groups.empty()) return {say_of::no_calibration()};
  std::vector<LabelledText> facts;
  for (const auto& [instrument, names] : groups)
    facts.push_back(
        {facts.empty() ? say_of::no_calibration().name : std::string{}, listing(names) + ": " + instrument});
  return facts;
}

void add_exclusions(const Report& report, std::vector<LabelledText>& facts) {
  constexpr std::size_t kMost = 5;
  for (std::size_t i = 0; i < report.exclusion.size(); ++i) {
    const HandRow& row = report.exclusion[i];
    const std::string name = i == 0 ? "Excluded" : "";
    if (i == kMost) {
      facts.push_back({name, say_of::more_in_record(report.exclusion.size() - kMost)});
      return;
    }
    facts.push_back({name, say_of::exclusion_line(row.channel, row.when, row.text)});
  }
}

std::vector<LabelledText> treatment_facts(const ReportContext& context, const Report& report) {
  std::vector<LabelledText> facts;
  const Procedure& procedure = *context.analysis.procedure;
  if (const std::string code = provenance_text(procedure.provenance); !code.empty())
    facts.push_back({"Code", code});
  facts.push_back({"Procedure", say_of::procedure_line(procedure)});
  for (LabelledText& fact : equipment_facts(context)) facts.push_back(std::move(fact));
  for (LabelledText& fact : calibration_facts(report)) facts.push_back(std::move(fact));
  for (LabelledText& fact : record_facts(context, true)) facts.push_back(std::move(fact));
  for (LabelledText& fact : suspect_facts(context)) facts.push_back(std::move(fact));
  add_exclusions(report, facts);
  return facts;
}

}  // namespace

Letterhead letterhead(const Analysis& analysis) {
  if (!analysis.job || !analysis.job->company) return {};
  const CompanyEntry& company = *analysis.job->company;
  return {company.name, company.address.value_or(std::string{}),
          company.picture ? named_path(*analysis.job, *company.picture) : std::string{}};
}

std::vector<Certificate> certificates(const ReportContext& context, const Report& report, bool both_units) {
  std::vector<Certificate> all;
  if (!context.analysis.verdicts) return all;
  const PrintedNumbers in_other_unit{
      context.say.unit() == TemperatureUnit::celsius ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius,
      *context.analysis.record};
  const ReportContext other{{context.analysis, in_other_unit}, context.deviations};
  const std::vector<RequirementRow> other_rows =
      both_units ? requirement_rows(other, report.chart) : std::vector<RequirementRow>{};
  const auto summary_of = [&](const std::optional<std::string>& weld) {
    std::vector<SummaryRow> rows = Summary(context, report.requirements, weld).made();
    if (both_units) add_other_unit(Summary(other, other_rows, weld).made(), rows);
    return rows;
  };
  const Verdicts& verdicts = *context.analysis.verdicts;
  const bool several = verdicts.welds.size() > 1;
  Certificate whole{{},
                    report.subject,
                    verdicts.verdict,
                    report.verdict_text,
                    report.verdict_sentence,
                    work_facts(context, nullptr),
                    treatment_facts(context, report),
                    {}};
  const std::optional<std::string> only =
      several || verdicts.welds.empty() ? std::nullopt : verdicts.welds.front().number;
  whole.summary = summary_of(only);
  // Of several welds each has a certificate of its own; on the first page stand the limits of the record.
  if (several)
    std::erase_if(whole.summary, [](const SummaryRow& row) { return !row.verdict && row.where.empty(); });
  all.push_back(std::move(whole));
  if (!several) return all;
  for (const WeldRow& row : report.welds) {
    const WeldVerdict& weld = verdicts.welds[row.weld];
    Certificate one{row.number,
                    report.subject,
                    weld.verdict,
                    verdict_text(weld.verdict),
                    counted_sentence(verdicts, weld.number),
                    work_facts(context, &row),
                    all.front().treatment,
                    {}};
    one.summary = summary_of(weld.number);
    all.push_back(std::move(one));
  }
  return all;
}

}  // namespace soakwright
