// SPDX-License-Identifier: GPL-3.0-or-later
// Job data and the welds with their verdicts.
#include <fmt/format.h>

#include "core/report/sections/sections.h"
#include "core/wording/printed_lengths.h"

namespace soakwright {
namespace {

/// Which log, when, how its holds went, and what it comes to by itself.
std::string previous_text(const PreviousRecord& one, TemperatureUnit unit) {
  const PrintedNumbers say{unit, *one.record};  // each record has a clock of its own
  std::string text = one.record->file;
  if (one.record->rows() > 0) text += fmt::format(", {}", say.moment(0.0));
  text += fmt::format(", {} long", say.duration(one.record->duration_s()));
  for (const Requirement& requirement : one.verdicts->requirements)
    if (requirement.kind == RequirementKind::hold_time)
      text += fmt::format(", held for {}", say.duration(requirement.certain_s.value_or(0.0)));
  return text + fmt::format("; by itself {}", verdict_text(one.verdicts->verdict));
}

using Facts = std::vector<LabelledText>;

void add(Facts& facts, const char* name, const std::optional<std::string>& text) {
  if (text && !text->empty()) facts.push_back({name, *text});
}

/// `weld`: one of several; null for all.
void add_heated(const ReportContext& context, const WeldRow* weld, Facts& facts) {
  const Job& job = *context.analysis.job;
  add(facts, "Work", job.work);
  if (weld != nullptr) {
    add(facts, "Weld", weld->number);
    add(facts, "Thickness", weld->thickness);
  } else if (job.weld) {
    add(facts, "Weld", job.weld);
  } else if (!job.welds.empty()) {
    std::vector<std::string> numbers;
    for (const WeldEntry& entry : job.welds) numbers.push_back(entry.number);
    facts.push_back({numbers.size() == 1 ? "Weld" : "Welds", listing(numbers)});
  }
  const Verdicts* verdicts = context.analysis.verdicts.get();
  if (weld == nullptr && verdicts != nullptr && verdicts->welds.size() == 1 &&
      verdicts->welds[0].thickness_mm)
    facts.push_back(
        {"Thickness", thickness_text(Thickness::of(*verdicts->welds[0].thickness_mm, LengthUnit::millimetre),
                                     context.say.unit())});
  add(facts, "Client", job.client);
  add(facts, "Contractor", job.contractor);
  add(facts, "Material", weld != nullptr ? std::optional{weld->material} : job.material);
  add(facts, "Drawing", job.drawing);
}

void add_details(const ReportContext& context, Facts& facts) {
  const Job& job = *context.analysis.job;
  for (const auto& [name, text] : job.details)
    if (!text.empty()) facts.push_back({name, text});
  if (job.cycle) facts.push_back({"Cycle", fmt::format("{} of this weld", *job.cycle)});
  for (const PreviousRecord& one : context.analysis.previous_records)
    facts.push_back({fmt::format("Cycle {}, earlier", one.cycle), previous_text(one, context.say.unit())});
}

void add_recorder(const ReportContext& context, Facts& facts) {
  if (!context.analysis.job->recorder) return;
  const RecorderEntry& recorder = *context.analysis.job->recorder;
  std::string text;
  const auto append = [&text](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
  if (recorder.accuracy) append("accuracy ±" + context.say.limit(*recorder.accuracy));
  if (recorder.resolution) append("resolution " + context.say.limit(*recorder.resolution));
  if (recorder.certificate) append("certificate " + *recorder.certificate);
  if (recorder.valid_until) append("valid until " + date_text(*recorder.valid_until));
  if (!text.empty()) facts.push_back({"Recorder", text});
}

}  // namespace

std::vector<LabelledText> job_facts(const ReportContext& context) {
  Facts facts;
  if (context.analysis.job == nullptr) return facts;
  add(facts, "Report number", context.analysis.job->report_number);
  add_heated(context, nullptr, facts);
  add(facts, "Equipment", context.analysis.job->equipment);
  add_details(context, facts);
  add_recorder(context, facts);
  return facts;
}

std::vector<LabelledText> work_facts(const ReportContext& context, const WeldRow* weld) {
  Facts facts;
  if (context.analysis.job == nullptr) return facts;
  add_heated(context, weld, facts);
  add_details(context, facts);
  return facts;
}

std::vector<LabelledText> equipment_facts(const ReportContext& context) {
  Facts facts;
  if (context.analysis.job == nullptr) return facts;
  add(facts, "Equipment", context.analysis.job->equipment);
  add_recorder(context, facts);
  return facts;
}

std::vector<WeldRow> weld_rows(const ReportContext& context) {
  std::vector<WeldRow> rows;
  const Verdicts* verdicts = context.analysis.verdicts.get();
  if (verdicts == nullptr) return rows;
  const Job* job = context.analysis.job.get();
  for (std::size_t i = 0; i < verdicts->welds.size(); ++i) {
    const WeldVerdict& weld = verdicts->welds[i];
    WeldRow row;
    row.weld = i;
    row.number = weld_text(weld.number);
    if (weld.thickness_mm)
      row.thickness =
          thickness_text(Thickness::of(*weld.thickness_mm, LengthUnit::millimetre), context.say.unit());
    if (job != nullptr) {
      row.material = job->material.value_or(std::string{});
      for (const WeldEntry& entry : job->welds)
        if (weld.number == entry.number && entry.material) row.material = *entry.material;
    }
    row.verdict = weld.verdict;
    row.verdict_text = verdict_text(weld.verdict);
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace soakwright
