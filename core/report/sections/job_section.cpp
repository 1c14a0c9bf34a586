// SPDX-License-Identifier: GPL-3.0-or-later
// Job data and the welds with their verdicts.
#include "core/report/sections/sections.h"
#include "core/wording/printed_lengths.h"
#include "core/wording/sections/work_words.h"

namespace soakwright {
namespace {

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
  if (job.cycle) facts.push_back(work_words::cycle(*job.cycle));
  for (const PreviousRecord& one : context.analysis.previous_records)
    facts.push_back(work_words::previous_record(one, context.say.unit()));
}

void add_recorder(const ReportContext& context, Facts& facts) {
  if (!context.analysis.job->recorder) return;
  const std::string text = work_words::recorder(*context.analysis.job->recorder, context.say);
  if (!text.empty()) facts.push_back({"Recorder", text});
}

}  // namespace

std::vector<LabelledText> job_facts(const ReportContext& context) {
  Facts facts;
  if (context.analysis.job == nullptr) return facts;
  add(facts, work_words::report_number(), context.analysis.job->report_number);
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
