// SPDX-License-Identifier: GPL-3.0-or-later
// What the record shows by itself, and what people did to it by hand: phases, suspects, spares, exclusions,
// remarks.
#include <fmt/format.h>

#include "core/report/sections/sections.h"
#include "core/wording/exclusion_words.h"
#include "core/wording/sections/course_words.h"
#include "core/wording/suspect_words.h"

namespace soakwright {
std::vector<PhaseRow> phase_rows(const ReportContext& context) {
  std::vector<PhaseRow> rows;
  if (!context.analysis.course) return rows;
  const PrintedNumbers& say = context.say;
  const std::vector<Phase>& phases = context.analysis.course->phases;
  for (std::size_t i = 0; i < phases.size(); ++i) {
    const Phase& phase = phases[i];
    rows.push_back({i, phase_kind_text(phase.kind), say.moment(phase.start_s), say.moment(phase.end_s),
                    say.duration(phase.end_s - phase.start_s), say.bare_rate(phase.rate_c_per_h),
                    say.bare_temperature(phase.level_c, 0), say.difference(phase.spread_max_k)});
  }
  return rows;
}

std::vector<SuspectRow> suspect_rows(const ReportContext& context) {
  std::vector<SuspectRow> rows;
  if (!context.analysis.course) return rows;
  const std::vector<Suspect>& suspects = context.analysis.course->suspects;
  for (std::size_t i = 0; i < suspects.size(); ++i) {
    const Suspect& suspect = suspects[i];
    rows.push_back({i, context.analysis.record->channels[suspect.channel].name, suspect_text(suspect.code),
                    context.say.span(suspect.from_s, suspect.to_s),
                    suspect_sentence(suspect, *context.analysis.record)});
  }
  return rows;
}

std::vector<LabelledText> suspect_facts(const ReportContext& context) {
  std::vector<LabelledText> facts;
  const Analysis& analysis = context.analysis;
  if (analysis.verdicts && analysis.course)
    for (const Finding& finding : analysis.verdicts->findings) {
      if (finding.suspects.empty()) continue;
      std::vector<std::string> names;
      for (const std::size_t suspect : finding.suspects)
        names.push_back(analysis.record->channels[analysis.course->suspects[suspect].channel].name);
      const Suspect& first = analysis.course->suspects[finding.suspects.front()];
      facts.push_back(
          {facts.empty() ? "Suspect" : "", fmt::format("{}: {}, {}", listing(names), suspect_text(first.code),
                                                       context.say.span(*finding.from_s, *finding.to_s))});
    }
  bool first = true;
  for (const Confirmation& confirmation : analysis.record->confirmations) {
    facts.push_back({first ? "Confirmed" : "",
                     fmt::format("{}, {}: {}", analysis.record->channels[confirmation.channel].name,
                                 confirmation.suspect, confirmation.reason)});
    first = false;
  }
  return facts;
}

std::vector<HandRow> replaced_rows(const ReportContext& context) {
  std::vector<HandRow> rows;
  if (!context.analysis.verdicts) return rows;
  for (const Replacement& replacement : context.analysis.verdicts->replaced)
    rows.push_back({replacement.channel, context.say.moment(replacement.from_s),
                    course_words::took_over(replacement, context.say)});
  return rows;
}

std::vector<HandRow> exclusion_rows(const ReportContext& context) {
  std::vector<HandRow> rows;
  for (ExcludedText& text : excluded_texts(context))
    rows.push_back({std::move(text.name), std::move(text.when), std::move(text.reason)});
  return rows;
}

std::vector<HandRow> remark_rows(const ReportContext& context) {
  std::vector<HandRow> rows;
  for (const Remark& remark : context.analysis.record->remarks)
    rows.push_back({{}, context.say.moment(remark.at_s), remark.text});
  return rows;
}

}  // namespace soakwright
