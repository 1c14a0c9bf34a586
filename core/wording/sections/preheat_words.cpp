// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/preheat_words.h"

#include <utility>

#include <fmt/format.h>

#include "core/units/printed_quantity.h"
#include "core/wording/printed_lengths.h"
#include "core/wording/procedure_limits.h"

namespace soakwright {
namespace {

/// "W-118: Preheat" where there are several.
std::string name_for(const std::optional<std::string>& weld, bool several, const char* name) {
  return several && weld ? *weld + ": " + name : name;
}

std::string equivalent_text(const CarbonEquivalent& found) {
  const std::string name{kCarbonFormulaWords.of(found.formula)};
  if (found.percent) return fmt::format("{} {} %", name, decimal_text(*found.percent, 3));
  std::vector<std::string> missing;
  for (const Element element : found.missing) missing.emplace_back(kElementWords.of(element));
  return fmt::format("{} not known without {}", name, listing(missing));
}

std::string equivalents_text(const std::vector<CarbonEquivalent>& equivalents) {
  std::string text;
  for (const CarbonEquivalent& one : equivalents) text += (text.empty() ? "" : "; ") + equivalent_text(one);
  return text;
}

std::string minimum_text(const WeldPreheat& weld, const PrintedNumbers& say) {
  const std::string source = provenance_text(aws_category_b_provenance());
  if (!weld.thickness) return fmt::format("not known: no thickness is given ({})", source);
  const std::string thickness = thickness_text(*weld.thickness, say.unit());
  if (!weld.published_minimum)
    return fmt::format("not known: {} is not in the table ({})", thickness, source);
  return fmt::format("{} for {} ({})", say.limit(*weld.published_minimum), thickness, source);
}

std::string procedure_text_of(const WeldPreheat& weld, const PrintedNumbers& say) {
  if (!weld.procedure_minimum) return "no preheat is specified";
  std::string text =
      fmt::format("at least {} (stage {})", say.limit(*weld.procedure_minimum), weld.procedure_stage);
  if (weld.procedure_is_below()) text += ", which is below the published minimum";
  return text;
}

std::string place_text(BandPlace place) {
  switch (place) {
    case BandPlace::fits:
      return {};
    case BandPlace::outside_soak_band:
      return "outside the soak band";
    case BandPlace::inside_edge:
      return "nearer to the soak band than the edge of the heated band";
    case BandPlace::beyond_heated_band:
      return "beyond the heated band";
    case BandPlace::no_position:
      return "without a position";
  }
  return {};
}

std::string positions_text(const Bands& bands, const Record& record) {
  std::string text;
  for (const BandPosition& position : bands.positions)
    if (position.place != BandPlace::fits)
      text += fmt::format("{}{} {}", text.empty() ? "" : "; ", record.channels[position.channel].name,
                          place_text(position.place));
  if (!text.empty()) return text;
  return bands.positions.empty() ? "no thermocouple" : "all where they belong";
}

}  // namespace

std::string carbon_formula_text(CarbonFormula formula) {
  switch (formula) {
    case CarbonFormula::ce_iiw:
      return "CE(IIW) = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15";
    case CarbonFormula::cet:
      return "CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40";
    case CarbonFormula::pcm:
      return "Pcm = C + Si/30 + (Mn + Cu + Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B (Ito and Bessyo, 1968)";
  }
  return {};
}

std::vector<LabelledText> preheat_facts(const std::vector<WeldPreheat>& welds, const PrintedNumbers& say) {
  std::vector<LabelledText> facts;
  const bool several = welds.size() > 1;
  bool formulas = false;
  for (const WeldPreheat& weld : welds) {
    if (!weld.equivalents.empty()) {
      facts.push_back(
          {name_for(weld.weld, several, "Carbon equivalents"), equivalents_text(weld.equivalents)});
      formulas = true;
    }
    if (weld.minimum_asked_for)
      facts.push_back({name_for(weld.weld, several, "Published minimum preheat"), minimum_text(weld, say)});
    if (weld.with_procedure)
      facts.push_back(
          {name_for(weld.weld, several, "Preheat of the procedure"), procedure_text_of(weld, say)});
  }
  if (formulas) {
    std::string text;
    for (std::size_t i = 0; i < kCarbonFormulaWords.size; ++i)
      text += (i == 0 ? "" : "; ") + carbon_formula_text(static_cast<CarbonFormula>(i));
    facts.push_back({"Formulas", text + "; per cent by mass; seen in print"});
  }
  return facts;
}

std::vector<LabelledText> band_facts(const std::vector<Bands>& all, const Record& record) {
  std::vector<LabelledText> facts;
  const bool several = all.size() > 1;
  for (const Bands& bands : all) {
    const auto add = [&](const char* name, std::string text) {
      facts.push_back({name_for(bands.weld, several, name), std::move(text)});
    };
    add("Pipe", fmt::format("outside diameter {}, wall {}, inside radius R {}", mm_text(bands.diameter_mm),
                            mm_text(bands.wall_mm), mm_text(bands.inside_radius_mm)));
    add("Edge of the heated band",
        fmt::format("at least L = 2·√(R·t) = {} beyond the soak band on each side ({})",
                    mm_text(bands.edge_distance_mm), provenance_text(band_provenance())));
    if (bands.soak_band_mm) add("Soak band", mm_text(*bands.soak_band_mm) + ", as the job gives it");
    if (bands.heated_band_min_mm) {
      std::string text = "at least " + mm_text(*bands.heated_band_min_mm);
      if (bands.heated_band_mm)
        text += fmt::format("; the job gives {}{}", mm_text(*bands.heated_band_mm),
                            bands.heated_band_is_narrow() ? ", which is too narrow" : "");
      add("Heated band", std::move(text));
      add("Thermocouples on the bands", positions_text(bands, record));
    }
  }
  return facts;
}

Provenance band_provenance() { return {"AWS D10.10", "2021", std::nullopt, Provenance::Flag::memory}; }

}  // namespace soakwright
