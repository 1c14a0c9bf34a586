// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/alternatives_json.h"

#include "core/wording/sections/budget_words.h"

namespace soakwright {
namespace {

/// An array of objects within a line.
template <typename Items, typename Fill>
void short_objects(Members& members, std::string_view name, const Items& items, Fill fill) {
  JsonWriter& json = members.json();
  json.key(name);
  json.begin_array();
  for (const auto& item : items) {
    json.begin_object();
    fill(item);
    json.end_object();
  }
  json.end_array();
}

}  // namespace

void write_by_excursion_allowed(Members& members, const std::vector<HoldAlternative>& bases) {
  if (bases.empty()) return members.null("by_excursion_allowed");
  short_objects(members, "by_excursion_allowed", bases, [&](const HoldAlternative& alternatives) {
    members.number("excursion_allowed", alternatives.excursion_allowed_s);
    members.number("continuous", alternatives.continuous_s);
    members.number("accumulated", alternatives.accumulated_s);
    members.text_or_null("verdict", alternatives.verdict
                                        ? std::optional<std::string>(result_word(*alternatives.verdict))
                                        : std::nullopt);
  });
}

void write_cycles(Members& members, const std::vector<CycleShare>& cycles) {
  if (cycles.empty()) return members.null("cycles");
  short_objects(members, "cycles", cycles, [&](const CycleShare& share) {
    members.integer("cycle", static_cast<std::size_t>(share.cycle));
    members.number("certain", share.certain_s);
    members.number("possible", share.possible_s);
  });
}

void write_alternatives(Members& members, const Alternatives& alternatives) {
  if (alternatives.empty()) return members.null("alternatives");
  JsonWriter& json = members.json();
  members.object("alternatives", JsonWriter::Layout::line);
  if (!alternatives.rates.empty())
    short_objects(members, "rates", alternatives.rates, [&](const RateAlternative& rate) {
      members.text("over", rate_basis_word(rate.window_minutes));
      members.number("rate", rate.rate_c_per_h);
      members.text_or_null("channel", rate.channel);
      members.moment("from", rate.from_s);
      members.moment("to", rate.to_s);
      members.text("verdict", result_word(rate.verdict));
    });
  if (!alternatives.holds.empty()) write_by_excursion_allowed(members, alternatives.holds);
  if (!alternatives.thermocouples.empty())
    short_objects(members, "thermocouples", alternatives.thermocouples,
                  [&](const InAndOutAlternative& channel) {
                    members.text("name", channel.channel);
                    members.moment("in", channel.in_s);
                    members.moment("out", channel.out_s);
                  });
  if (alternatives.spread) {
    members.number("hottest", alternatives.spread->hottest_c);
    members.number("coldest", alternatives.spread->coldest_c);
  }
  json.end_object();
}

void write_budgets(Members& members, const std::vector<ChannelBudget>& budgets) {
  members.objects("budget", budgets, [&](const ChannelBudget& budget) {
    members.text("channel", budget.channel);
    members.number("rate_share", budget.rate_share);
    short_objects(members, "at", budget.points, [&](const BudgetPoint& point) {
      members.text("limit", point.what);
      members.number("temperature", point.celsius);
      members.number("uncertainty", point.expanded_k);
      short_objects(members, "components", point.lines, [&](const BudgetLine& line) {
        members.text("name", budget_words::name(line.source.kind));
        members.text("source", budget_words::source(line.source));
        members.number(line.is_step ? "q" : "a", line.half_width_k);
        members.number("divisor", line.divisor);
        members.number("u", line.standard_k);
      });
    });
  });
}

}  // namespace soakwright
