// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/band_notes.h"

#include <utility>

#include "core/evaluate/band_positions.h"
#include "core/units/printed_quantity.h"

namespace soakwright {
namespace {

Statement statement_of(const Bands& bands, const BandPosition& position, const std::string& name) {
  const std::string from_centre = mm_text(position.from_centre_mm.value_or(0.0));
  switch (position.place) {
    case BandPlace::outside_soak_band:
      return state(Sentence::outside_soak_band, name, from_centre, mm_text(*bands.soak_band_mm));
    case BandPlace::inside_edge:
      return state(Sentence::inside_heated_band_edge, name, from_centre,
                   mm_text(*bands.heated_band_min_mm / 2.0));
    case BandPlace::beyond_heated_band:
      return state(Sentence::beyond_heated_band, name, from_centre, mm_text(*bands.heated_band_mm));
    case BandPlace::no_position:
      return state(Sentence::no_position_on_band, name);
    case BandPlace::fits:
      break;
  }
  return {};
}

}  // namespace

void note_bands(const Record& record, const Procedure& procedure, const Job* job, Verdicts& verdicts) {
  if (job == nullptr) return;
  for (const Bands& bands : bands_of(*job, &procedure, record)) {
    Finding note;
    if (verdicts.welds.size() > 1) note.weld = bands.weld;
    if (bands.heated_band_is_narrow()) {
      note.what = {state(Sentence::heated_band_narrow, mm_text(*bands.heated_band_mm),
                         mm_text(*bands.heated_band_min_mm))};
      verdicts.findings.push_back(note);
    }
    for (const BandPosition& position : bands.positions) {
      if (position.place == BandPlace::fits) continue;
      note.channel = record.channels[position.channel].name;
      note.what = {statement_of(bands, position, *note.channel)};
      verdicts.findings.push_back(note);
    }
  }
}

}  // namespace soakwright
