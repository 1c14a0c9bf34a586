// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/preheat_json.h"

#include "core/procedure/procedure_words.h"
#include "core/wording/procedure_limits.h"
#include "core/wording/sections/preheat_words.h"

namespace soakwright {
namespace {

void write_source(Members& members, const Provenance& provenance) {
  members.text_or_null("source", provenance.source);
  members.text_or_null("edition", provenance.edition);
  members.text_or_null("clause", provenance.clause);
  members.text("flag", kProvenanceFlagWords.of(*provenance.flag));
}

std::string_view place_word(BandPlace place) {
  switch (place) {
    case BandPlace::fits:
      return "fits";
    case BandPlace::outside_soak_band:
      return "outside-soak-band";
    case BandPlace::inside_edge:
      return "inside-edge";
    case BandPlace::beyond_heated_band:
      return "beyond-heated-band";
    case BandPlace::no_position:
      return "no-position";
  }
  return {};
}

std::vector<WeldPreheat> preheat_in(const Analysis& analysis) {
  return analysis.job ? preheat_of(*analysis.job, analysis.procedure.get()) : std::vector<WeldPreheat>{};
}

std::vector<Bands> bands_in(const Analysis& analysis) {
  return analysis.job ? bands_of(*analysis.job, analysis.procedure.get(), *analysis.record)
                      : std::vector<Bands>{};
}

}  // namespace

bool has_preheat_or_bands(const Analysis& analysis) {
  return !preheat_in(analysis).empty() || !bands_in(analysis).empty();
}

void write_preheat(Members& members, const Analysis& analysis) {
  const std::vector<WeldPreheat> welds = preheat_in(analysis);
  if (welds.empty()) return members.null("preheat");
  members.objects("preheat", welds, [&](const WeldPreheat& weld) {
    members.text_or_null("weld", weld.weld);
    members.number("thickness_mm",
                   weld.thickness ? std::optional(weld.thickness->millimetres()) : std::nullopt);
    members.inner_objects("carbon_equivalents", weld.equivalents, [&](const CarbonEquivalent& one) {
      members.text("name", kCarbonFormulaWords.of(one.formula));
      members.number("percent", one.percent);
      members.text("formula", carbon_formula_text(one.formula));
      members.text("flag", kProvenanceFlagWords.of(Provenance::Flag::seen));
    });
    if (weld.minimum_asked_for) {
      members.object("published_minimum", JsonWriter::Layout::line);
      members.number("temperature", celsius_if_any(weld.published_minimum));
      write_source(members, aws_category_b_provenance());
      members.json().end_object();
    } else {
      members.null("published_minimum");
    }
    members.number("procedure_minimum", celsius_if_any(weld.procedure_minimum));
    members.json().key("procedure_is_below");
    members.json().boolean(weld.procedure_is_below());
  });
}

void write_bands(Members& members, const Analysis& analysis) {
  const std::vector<Bands> all = bands_in(analysis);
  if (all.empty()) return members.null("bands");
  members.objects("bands", all, [&](const Bands& bands) {
    members.text_or_null("weld", bands.weld);
    members.number("diameter_mm", bands.diameter_mm);
    members.number("wall_mm", bands.wall_mm);
    members.number("inside_radius_mm", bands.inside_radius_mm);
    members.number("edge_distance_mm", bands.edge_distance_mm);
    members.number("soak_band_mm", bands.soak_band_mm);
    members.number("heated_band_min_mm", bands.heated_band_min_mm);
    members.number("heated_band_mm", bands.heated_band_mm);
    write_source(members, band_provenance());
    members.inner_objects("thermocouples", bands.positions, [&](const BandPosition& position) {
      members.text("channel", analysis.record->channels[position.channel].name);
      members.number("from_centre_mm", position.from_centre_mm);
      members.text("place", place_word(position.place));
    });
  });
}

}  // namespace soakwright
