// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/heat_tables.h"

#include "core/procedure/toml/value_readers.h"

namespace soakwright {

void read_hydrogen(TableReader& in, HydrogenEntry& entry) {
  entry.line = in.line();
  HydrogenKeys keys;
  keys.shape =
      in.must("shape",
              one_of<HydrogenShape>({{"plate", HydrogenShape::plate}, {"cylinder", HydrogenShape::cylinder}}),
              entry.shape);
  keys.thickness = in.may("thickness", thickness, entry.thickness);
  keys.diameter = in.may("diameter", thickness, entry.diameter);
  Diffusivity& diffusivity = entry.diffusivity;
  keys.diffusivity = in.may("diffusivity", diffusivity_law, diffusivity.law);
  keys.published = keys.diffusivity && std::holds_alternative<PublishedDiffusivity>(diffusivity.law);
  ArrheniusDiffusivity arrhenius;
  keys.d0 = in.may("d0", plain_diffusivity, arrhenius.d0_m2_per_s);
  keys.activation_energy = in.may("activation_energy", activation_energy, arrhenius.q_j_per_mol);
  if (keys.d0 && keys.activation_energy && !keys.diffusivity) diffusivity.law = arrhenius;
  keys.temperature_min = in.may("temperature_min", temperature_point, diffusivity.low);
  keys.temperature_max = in.may("temperature_max", temperature_point, diffusivity.high);
  keys.source = in.may("source", name_text, diffusivity.source);
  entry.after_line = in.line_of("after");
  in.may("after", name_text, entry.after);
  check_hydrogen_keys(in, entry, keys);
  if (keys.published)
    entry.diffusivity = published_diffusivity(std::get<PublishedDiffusivity>(diffusivity.law));
}

void read_qualified(TableReader& in, QualifiedEntry& entry) {
  entry.line = in.line();
  in.may("parameter", tempering_parameter, entry.parameter);
  in.may("holds", qualified_holds, entry.holds);
  in.must("source", name_text, entry.source);
  check_qualified_keys(in, entry);
}

}  // namespace soakwright
