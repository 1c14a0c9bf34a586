// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/requirements_json.h"

#include <algorithm>
#include <optional>

#include "core/explain/shortfall.h"
#include "core/report/json/alternatives_json.h"
#include "core/report/json/explanation_json.h"
#include "core/report/sections/sections.h"
#include "core/wording/statement_words.h"

namespace soakwright {
namespace {

/// `by_window` of a rate: the worst of each width, by its name.
void write_rates_by_window(Members& members, const std::vector<RateAlternative>& rates) {
  JsonWriter& json = members.json();
  json.key("by_window");
  json.begin_object();
  for (const RateAlternative& rate : rates)
    if (rate.window_minutes) members.number(rate_basis_word(rate.window_minutes), rate.rate_c_per_h);
  json.end_object();
}

}  // namespace

void write_figures(Members& members, const Requirement& requirement) {
  members.text("id", requirement.id);
  members.text_or_null("weld", requirement.weld);
  members.number("limit", requirement.limit);
  members.text("unit", result_word(requirement.quantity()));
  members.number("measured", requirement.measured);
  members.number("margin", requirement.margin);
  members.text("verdict", result_word(requirement.verdict));
}

void write_requirements(Members& members, const std::vector<Requirement>& requirements,
                        const Procedure& procedure, const std::vector<FirstDeviation>& deviations,
                        const PrintedNumbers& say) {
  members.objects("requirements", requirements, [&](const Requirement& requirement) {
    write_figures(members, requirement);
    members.text_or_null("channel", requirement.channel);
    members.text_or_null("channel_2", requirement.channel_2);
    members.moment("at", requirement.at_s);
    members.moment("from", requirement.from_s);
    members.moment("to", requirement.to_s);
    members.number("standard_error", requirement.standard_error);
    members.number("uncertainty", requirement.uncertainty);
    members.number("certain", requirement.certain_s);
    members.number("possible", requirement.possible_s);
    members.text_or_null("started_by", requirement.started_by);
    members.text_or_null("stopped_by", requirement.stopped_by);
    if (facts_of(requirement.kind).is_rate) {
      members.numbers_by_name("overall", requirement.overall);
      write_rates_by_window(members, requirement.alternatives.rates);
    } else {
      members.null("overall");
      members.null("by_window");
    }
    members.text("text", requirement_text(requirement, procedure, say));
    write_cycles(members, requirement.cycles);
    write_alternatives(members, requirement.alternatives);
    const Statements missed = shortfall(procedure, requirement);
    members.text_or_null("shortfall", missed.empty() ? std::nullopt : std::optional(words(missed, say)));
    const std::size_t index = static_cast<std::size_t>(&requirement - requirements.data());
    const auto deviation = std::find_if(deviations.begin(), deviations.end(),
                                        [&](const FirstDeviation& one) { return one.requirement == index; });
    write_deviation(members, deviation == deviations.end() ? nullptr : &*deviation, nullptr, say);
  });
}

void write_findings(Members& members, const Verdicts& verdicts, const WordingContext& context) {
  members.objects("findings", verdicts.findings, [&](const Finding& finding) {
    members.text_or_null("requirement",
                         finding.requirement.empty() ? std::nullopt : std::optional(finding.requirement));
    members.text_or_null("weld", finding.weld);
    members.text("verdict", result_word(finding.kind));
    members.text_or_null("channel", finding.channel);
    members.moment("from", finding.from_s);
    members.moment("to", finding.to_s);
    members.number("extreme", finding.extreme
                                  ? std::optional(in_unit(*finding.extreme, TemperatureUnit::celsius))
                                  : std::nullopt);
    const Requirement* requirement = requirement_of(finding, verdicts);
    const std::string text = finding_text(finding, requirement, context);
    members.text("text", text);
    write_explanation(members, explain(finding, requirement, *context.analysis.procedure, context.say, text));
  });
}

}  // namespace soakwright
