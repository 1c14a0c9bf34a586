// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/hydrogen_words.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/units/diffusivity_text.h"

namespace soakwright {
namespace {

/// "12.3 %", "0.42 %", "below 0.01 %".
std::string percent(double share) {
  const double value = share * 100.0;
  if (value < 0.01) return "below 0.01 %";
  return decimal_text(value, value < 1.0 ? 2 : 1) + " %";
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
  return left.above_s > kShortestNamed_s || channel.not_known_s > kShortestNamed_s || !channel.in_all_parts;
}

std::string share_text(const HydrogenLeft& left, const ChannelHydrogen& channel, double share) {
  return (is_most(left, channel) ? "at most " : "") + percent(share);
}

std::string not_counted_text(const ChannelHydrogen& channel, const PrintedNumbers& say) {
  const HydrogenLeft& chosen = channel.by_diffusivity.front();
  std::vector<std::string> parts;
  if (channel.not_known_s > kShortestNamed_s)
    parts.push_back(say.duration(channel.not_known_s) + " not known");
  if (chosen.below_s > kShortestNamed_s) parts.push_back(say.duration(chosen.below_s) + " colder");
  if (chosen.above_s > kShortestNamed_s) parts.push_back(say.duration(chosen.above_s) + " hotter");
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
  if (name_weld && place.weld) table.title += ", weld " + *place.weld;
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
      hotter = hotter || other.above_s > kShortestNamed_s;
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

std::vector<FigureTable> hydrogen_tables(const Heat& heat, std::size_t previous_records,
                                         const PrintedNumbers& say) {
  std::vector<FigureTable> tables;
  for (const WeldHydrogen& place : heat.hydrogen)
    tables.push_back(hydrogen_table(heat, place, heat.hydrogen.size() > 1, previous_records, say));
  return tables;
}

std::vector<LabelledText> hydrogen_summary(const Heat& heat) {
  std::vector<LabelledText> lines;
  for (const WeldHydrogen& place : heat.hydrogen) {
    if (place.channels.empty()) continue;
    const ChannelHydrogen& first = place.channels.front();
    const HydrogenLeft& chosen = first.by_diffusivity.front();
    lines.push_back(
        {heat.hydrogen.size() > 1 && place.weld ? "Hydrogen left, an indication, " + *place.weld
                                                : std::string{"Hydrogen left, an indication"},
         fmt::format("{} by {} ({}; {} to {} by all, {} at D/20)", share_text(chosen, first, chosen.mean),
                     diffusivity_name(heat.diffusivities.front()), first.channel, percent(first.least),
                     percent(first.most), percent(first.mean_at_twentieth))});
  }
  return lines;
}

}  // namespace soakwright
