// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/heat_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/units/diffusivity_text.h"
#include "core/wording/stage_words.h"

namespace soakwright {
namespace {

/// Of time that is not known or not counted.
constexpr double kSome_s = 1e-3;

std::string parameter_text(double parameter) { return decimal_text(parameter, 3); }

/// Beyond this nobody reads a figure: the temperature is far below that of the tempering.
constexpr double kMostHours = 1e6;

std::string hours_text(const std::optional<double>& hours) {
  if (!hours) return "–";
  if (*hours > kMostHours) return "over 1,000,000";
  return decimal_text(*hours, *hours < 100.0 ? 2 : 0);
}

std::string temperature_text(const std::optional<double>& celsius, const PrintedNumbers& say) {
  return celsius ? say.limit(Temperature::of_celsius(*celsius)) : std::string{};
}

/// "12.3 %", "0.42 %", "below 0.01 %".
std::string percent(double share) {
  const double value = share * 100.0;
  if (value < 0.01) return "below 0.01 %";
  return decimal_text(value, value < 1.0 ? 2 : 1) + " %";
}

std::string at_least(bool is_least, const std::string& text) { return is_least ? "at least " + text : text; }

bool not_all_known(const ChannelHeat& one) { return one.not_known_s > kSome_s || !one.in_all_records; }

/// "Cycle 2", with its part where several records are of one cycle.
std::string record_title(const std::vector<RecordTempering>& records, std::size_t index) {
  const int cycle = records[index].cycle;
  std::size_t first = index;
  while (first > 0 && records[first - 1].cycle == cycle) --first;
  const bool whole = first == index && (index + 1 == records.size() || records[index + 1].cycle != cycle);
  return whole ? fmt::format("Cycle {}", cycle) : fmt::format("Cycle {}, part {}", cycle, index - first + 1);
}

std::vector<std::optional<std::string>> welds_of(const std::vector<ChannelHeat>& all) {
  std::vector<std::optional<std::string>> welds;
  for (const ChannelHeat& one : all)
    if (std::find(welds.begin(), welds.end(), one.weld) == welds.end()) welds.push_back(one.weld);
  return welds;
}

std::string of_weld(const std::optional<std::string>& weld) { return weld ? ", weld " + *weld : ""; }

std::vector<LabelledText> tempering_facts(const Heat& heat, bool several, const PrintedNumbers& say) {
  const PublishedFormula formula = tempering_formula(heat.constant);
  std::vector<LabelledText> facts{{"Formula", formula.formula}, {"Constant C", short_text(heat.constant, 3)}};
  facts.push_back(
      {"Method",
       "Carried along over the whole recorded curve: at each step the tempering so far is converted "
       "to the temperature of the step at equal P, then the step is added."});
  if (several && heat.reference_c)
    facts.push_back({"Sum of hours",
                     fmt::format("The other published way: the equivalent hours of each record at {}, added. "
                                 "It depends on that temperature and differs a little from carrying along.",
                                 temperature_text(heat.reference_c, say))});
  facts.push_back({"Source", formula.source + ", seen in print"});
  return facts;
}

FigureTable tempering_table(const Heat& heat, const std::optional<std::string>& weld, bool name_weld,
                            const PrintedNumbers& say) {
  FigureTable table;
  std::size_t records = 1;
  for (const ChannelHeat& one : heat.tempering)
    if (one.weld == weld) records = std::max(records, one.records.size());
  const bool several = records > 1;
  table.title = several ? fmt::format("Tempering over all {} records", records)
                        : std::string{"Tempering over the whole record"};
  if (name_weld) table.title += of_weld(weld);
  table.facts = tempering_facts(heat, several, say);
  table.columns = {"Thermocouple"};
  const std::string at = temperature_text(heat.reference_c, say);
  bool any_unknown = false;
  for (const ChannelHeat& one : heat.tempering) {
    if (one.weld != weld) continue;
    if (table.rows.empty()) {
      if (several)
        for (std::size_t i = 0; i < one.records.size(); ++i)
          table.columns.push_back(record_title(one.records, i) + ": P");
      table.columns.push_back(several ? "All records: P" : "P");
      if (heat.reference_c) table.columns.push_back("Hours at " + at);
      if (several && heat.reference_c) table.columns.push_back("Sum of hours at " + at);
      table.columns.push_back("Temperature not known");
    }
    std::vector<std::string> row{one.channel};
    if (several)
      for (const RecordTempering& record : one.records)
        row.push_back(!record.has_channel ? "not in it"
                      : record.parameter
                          ? at_least(record.not_known_s > kSome_s, parameter_text(*record.parameter))
                          : std::string{"not known"});
    row.push_back(one.parameter ? at_least(not_all_known(one), parameter_text(*one.parameter))
                                : std::string{"not known"});
    if (heat.reference_c) row.push_back(at_least(one.hours && not_all_known(one), hours_text(one.hours)));
    if (several && heat.reference_c)
      row.push_back(one.referred_hours && one.referred_parameter
                        ? fmt::format("{} (P {})",
                                      at_least(not_all_known(one), hours_text(one.referred_hours)),
                                      parameter_text(*one.referred_parameter))
                        : std::string{"–"});
    row.push_back(one.not_known_s > kSome_s ? say.duration(one.not_known_s) : std::string{});
    any_unknown = any_unknown || not_all_known(one);
    table.rows.push_back(std::move(row));
  }
  if (any_unknown)
    table.notes.emplace_back(
        "Time in which the temperature is not known, or which a person excluded, adds nothing: what is given "
        "as at least may be more.");
  table.notes.emplace_back(
      "P is that of the whole recorded curve, heating and cooling included, and not of one hold.");
  return table;
}

std::string qualified_text(const QualifiedTempering& qualified, const PrintedNumbers& say) {
  if (qualified.given) return "P " + parameter_text(*qualified.given);
  std::vector<std::string> holds;
  for (const QualifiedHold& hold : qualified.holds)
    holds.push_back(fmt::format("{} at {}", say.duration_limit(hold.seconds), say.limit(hold.at)));
  std::string text = fmt::format("{}: P {}", listing(holds), parameter_text(qualified.parameter));
  if (qualified.holds.size() > 1 && qualified.carried && qualified.referred)
    text += fmt::format(" (carried along in this order {}, added at {} {}; the lower one is compared)",
                        parameter_text(*qualified.carried), temperature_text(qualified.referred_c, say),
                        parameter_text(*qualified.referred));
  return text;
}

std::string comparison_text(const QualifiedComparison& one, const Heat& heat) {
  const bool above = one.below < 0.0;
  std::string text =
      fmt::format("{} has the most, P {}: {} {} the {} qualified", one.channel,
                  at_least(one.is_least, parameter_text(one.parameter)), parameter_text(std::fabs(one.below)),
                  above ? "above" : "below", parameter_text(heat.qualified->parameter));
  if (one.is_least && !above)
    text += "; for part of the time the temperature is not known, so that it may be more";
  return text;
}

FigureTable qualified_table(const Heat& heat, const PrintedNumbers& say) {
  FigureTable table;
  table.title = "Tempering that the material was qualified for";
  table.facts = {{"Qualified for", qualified_text(*heat.qualified, say)}};
  if (heat.qualified->hours && heat.reference_c)
    table.facts.push_back(
        {"Equivalent time",
         fmt::format("{} h at {}, with C = {}", hours_text(heat.qualified->hours),
                     temperature_text(heat.reference_c, say), short_text(heat.constant, 3))});
  table.facts.push_back({"Source", heat.qualified->source + " (as the job gives it)"});
  for (const QualifiedComparison& one : heat.compared)
    table.facts.push_back(
        {one.weld ? "Weld " + *one.weld : std::string{"This weld"}, comparison_text(one, heat)});
  if (heat.compared.empty()) table.facts.push_back({"This weld", "no temperature is known"});
  table.notes.emplace_back(
      "A comparison of figures and not a verdict: all records named in the job are counted, and no others. "
      "The uncertainty of the readings is not counted.");
  return table;
}

std::string size_text(const WeldHydrogen& place, HydrogenShape shape) {
  const std::string size = short_text(place.size_mm, 2) + " mm";
  return shape == HydrogenShape::plate ? "plate " + size + " thick, both faces free"
                                       : "long cylinder, diameter " + size;
}

std::string range_text(const Diffusivity& diffusivity, const PrintedNumbers& say) {
  return say.range(diffusivity.low, diffusivity.high);
}

/// What the figure of one diffusivity leaves out.
bool is_most(const HydrogenLeft& left, const ChannelHydrogen& channel) {
  return left.above_s > kSome_s || channel.not_known_s > kSome_s || !channel.in_all_parts;
}

std::string share_text(const HydrogenLeft& left, const ChannelHydrogen& channel, double share) {
  return (is_most(left, channel) ? "at most " : "") + percent(share);
}

std::string not_counted_text(const ChannelHydrogen& channel, const PrintedNumbers& say) {
  const HydrogenLeft& chosen = channel.by_diffusivity.front();
  std::vector<std::string> parts;
  if (channel.not_known_s > kSome_s) parts.push_back(say.duration(channel.not_known_s) + " not known");
  if (chosen.below_s > kSome_s) parts.push_back(say.duration(chosen.below_s) + " colder");
  if (chosen.above_s > kSome_s) parts.push_back(say.duration(chosen.above_s) + " hotter");
  if (!channel.in_all_parts) parts.emplace_back("not in all parts");
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : ", ") + part;
  return text;
}

std::vector<LabelledText> hydrogen_facts(const Heat& heat, const WeldHydrogen& place,
                                         const PrintedNumbers& say) {
  const PublishedFormula formula = hydrogen_formula(*heat.shape);
  std::vector<LabelledText> facts{{"Model", size_text(place, *heat.shape)},
                                  {"Formula", formula.formula},
                                  {"Source", formula.source + ", seen in print"}};
  std::string counted = say.span(place.from_s, place.to_s);
  if (heat.after) counted += fmt::format(", from the end of {}", *heat.after);
  if (place.parts > 0)
    counted += fmt::format(", and {} earlier {} of the same cycle", place.parts,
                           place.parts == 1 ? "part" : "parts");
  facts.push_back({"Counted", counted});
  for (std::size_t i = 0; i < heat.diffusivities.size(); ++i) {
    const Diffusivity& one = heat.diffusivities[i];
    const std::string source = diffusivity_source(one);
    facts.push_back({i == 0 ? "Diffusivity, chosen" : "Diffusivity, for comparison",
                     fmt::format("{}, {}{}{}", diffusivity_name(one), range_text(one, say),
                                 source.empty() ? "" : "; ", source)});
  }
  return facts;
}

FigureTable hydrogen_table(const Heat& heat, const WeldHydrogen& place, bool name_weld,
                           std::size_t previous_records, const PrintedNumbers& say) {
  FigureTable table;
  table.title = "Hydrogen left, an indication";
  if (name_weld) table.title += of_weld(place.weld);
  table.facts = hydrogen_facts(heat, place, say);
  table.columns = {"Thermocouple", "F", "Left, mean", "Left, mid-section"};
  for (std::size_t i = 1; i < heat.diffusivities.size(); ++i)
    table.columns.push_back("Mean by " + diffusivity_name(heat.diffusivities[i]));
  table.columns.insert(table.columns.end(), {"Range of these", "Mean at D/20", "Not counted"});
  bool hotter = false;
  for (const ChannelHydrogen& channel : place.channels) {
    const HydrogenLeft& chosen = channel.by_diffusivity.front();
    std::vector<std::string> row{channel.channel, short_text(chosen.fourier, 4),
                                 share_text(chosen, channel, chosen.mean),
                                 share_text(chosen, channel, chosen.centre)};
    for (std::size_t i = 1; i < channel.by_diffusivity.size(); ++i) {
      const HydrogenLeft& other = channel.by_diffusivity[i];
      row.push_back(share_text(other, channel, other.mean));
      hotter = hotter || other.above_s > kSome_s;
    }
    row.push_back(fmt::format("{} to {}", percent(channel.least), percent(channel.most)));
    row.push_back(percent(channel.mean_at_twentieth));
    row.push_back(not_counted_text(channel, say));
    table.rows.push_back(std::move(row));
  }
  table.notes.push_back(hydrogen_caution());
  table.notes.emplace_back(
      "A diffusivity is not extended beyond its temperatures: time outside them, like time without a known "
      "temperature, is taken as if nothing diffused. More hydrogen may have left than is shown.");
  if (const std::size_t left_out = previous_records - std::min(previous_records, place.parts); left_out > 0)
    table.notes.push_back(fmt::format(
        "{} not counted here, being of another cycle or before the time that is counted. Records of one "
        "interrupted bake-out have the same `cycle` in the job.",
        left_out == 1 ? std::string{"One previous record is"}
                      : fmt::format("{} previous records are", left_out)));
  if (hotter)
    table.notes.emplace_back(
        "The range is that of the diffusivities that hold as hot as the curve was; where none does, that of "
        "all.");
  if (!heat.after)
    table.notes.emplace_back(
        "Counted from the start of the record: hydrogen that welding put in after it is not in the figure. "
        "Name the period in `after` to count from its end.");
  return table;
}

}  // namespace

PublishedFormula tempering_formula(double constant) {
  return {
      fmt::format("P = T ({} + log10 t) / 1000, T in K (0 °C = 273.15 K), t in h", short_text(constant, 3)),
      constant == 20.0 ? "J. H. Hollomon, L. D. Jaffe, Trans. AIME 162 (1945); C = 20 as in EN 13445-4:2021"
                       : "J. H. Hollomon, L. D. Jaffe, Trans. AIME 162 (1945); C as the procedure gives it",
      "seen"};
}

PublishedFormula hydrogen_formula(HydrogenShape shape) {
  if (shape == HydrogenShape::plate)
    return {"mean left = (8/π²) Σ (2n+1)⁻² exp(−(2n+1)² π² F/4), F = ∫D dt / (half the thickness)²",
            "J. Crank, The Mathematics of Diffusion: plane sheet, both faces free", "seen"};
  return {"mean left = 4 Σ αₙ⁻² exp(−αₙ² F), J₀(αₙ) = 0, F = ∫D dt / (half the diameter)²",
          "J. Crank, The Mathematics of Diffusion: long cylinder", "seen"};
}

std::string diffusivity_name(const Diffusivity& diffusivity) {
  if (const auto* published = std::get_if<PublishedDiffusivity>(&diffusivity.law))
    return std::string{published_name(*published)};
  if (const auto* constant = std::get_if<ConstantDiffusivity>(&diffusivity.law))
    return diffusivity_text(constant->m2_per_s);
  const auto& law = std::get<ArrheniusDiffusivity>(diffusivity.law);
  return fmt::format("{} · exp(−{} kJ/mol / RT)", diffusivity_text(law.d0_m2_per_s),
                     short_text(law.q_j_per_mol / 1000.0, 3));
}

std::string diffusivity_source(const Diffusivity& diffusivity) {
  if (const auto* published = std::get_if<PublishedDiffusivity>(&diffusivity.law)) switch (*published) {
      case PublishedDiffusivity::coe_and_moreton_1969:
        return "F. R. Coe, Z. Moreton, 1969, ferritic steel; straight lines of log D over 1/T between the "
               "points; seen in print";
      case PublishedDiffusivity::eurofer_97:
        return "EUROFER'97, 376 to 724 K: D = 4.57e-7 exp(−22.3 kJ/mol / RT) m²/s; seen in print";
    }
  return diffusivity.source ? *diffusivity.source + " (typed in the job)"
                            : "typed in the job, no source given";
}

std::string hydrogen_caution() {
  return "An indication and no acceptance: published diffusivities of hydrogen in ferritic steel differ more "
         "than twentyfold at 300 °C. Mean at D/20 is what is left with a twentieth of the chosen "
         "diffusivity. "
         "Traps, the state of the surface, the spread of hydrogen at the start and the uncertainty of the "
         "readings are not in the figures.";
}

std::vector<FigureTable> heat_tables(const WordingContext& context) {
  std::vector<FigureTable> tables;
  if (!context.analysis.verdicts) return tables;
  const Heat& heat = context.analysis.verdicts->heat;
  const auto welds = welds_of(heat.tempering);
  const bool any_known = std::any_of(heat.tempering.begin(), heat.tempering.end(),
                                     [](const ChannelHeat& one) { return one.parameter.has_value(); });
  if (any_known)
    for (const auto& weld : welds)
      tables.push_back(tempering_table(heat, weld, welds.size() > 1, context.say));
  if (heat.qualified) tables.push_back(qualified_table(heat, context.say));
  for (const WeldHydrogen& place : heat.hydrogen)
    tables.push_back(hydrogen_table(heat, place, heat.hydrogen.size() > 1,
                                    context.analysis.previous_records.size(), context.say));
  return tables;
}

std::vector<LabelledText> heat_summary(const WordingContext& context) {
  std::vector<LabelledText> lines;
  if (!context.analysis.verdicts) return lines;
  const Heat& heat = context.analysis.verdicts->heat;
  const auto name = [](const char* text, const std::optional<std::string>& weld, bool several) {
    return several && weld ? std::string{text} + ", " + *weld : std::string{text};
  };
  const auto welds = welds_of(heat.tempering);
  for (const auto& weld : welds) {
    const ChannelHeat* least = nullptr;
    const ChannelHeat* most = nullptr;
    bool unknown = false;
    for (const ChannelHeat& one : heat.tempering) {
      if (one.weld != weld || !one.parameter || one.records.size() < 2) continue;
      if (least == nullptr || *one.parameter < *least->parameter) least = &one;
      if (most == nullptr || *one.parameter > *most->parameter) most = &one;
      unknown = unknown || not_all_known(one);
    }
    if (least == nullptr) continue;
    lines.push_back(
        {name("Tempering, all records", weld, welds.size() > 1),
         fmt::format("P {} ({}) to {} ({}), C = {}{}", parameter_text(*least->parameter), least->channel,
                     parameter_text(*most->parameter), most->channel, short_text(heat.constant, 3),
                     unknown ? "; may be more, some time is not known" : "")});
  }
  for (const QualifiedComparison& one : heat.compared)
    lines.push_back(
        {name("Qualified tempering", one.weld, heat.compared.size() > 1), comparison_text(one, heat)});
  for (const WeldHydrogen& place : heat.hydrogen) {
    if (place.channels.empty()) continue;
    const ChannelHydrogen& first = place.channels.front();
    const HydrogenLeft& chosen = first.by_diffusivity.front();
    lines.push_back(
        {name("Hydrogen left, an indication", place.weld, heat.hydrogen.size() > 1),
         fmt::format("{} by {} ({}; {} to {} by all, {} at D/20)", share_text(chosen, first, chosen.mean),
                     diffusivity_name(heat.diffusivities.front()), first.channel, percent(first.least),
                     percent(first.most), percent(first.mean_at_twentieth))});
  }
  return lines;
}

}  // namespace soakwright
