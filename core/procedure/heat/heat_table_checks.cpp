// SPDX-License-Identifier: GPL-3.0-or-later
// What [hydrogen], [qualified] and the keys of tempering say that cannot be evaluated.
#include <algorithm>

#include "core/procedure/heat/heat_problems.h"
#include "core/procedure/heat/heat_tables.h"
#include "core/procedure/toml/value_readers.h"
#include "core/units/diffusivity_text.h"
#include "core/units/quantity_text.h"

namespace soakwright {
namespace {

/// Wider than anything published for hydrogen in steel (common practice, no source): what lies outside is a
/// unit taken for another.
constexpr double kLeast_m2_per_s = 1e-16;
constexpr double kMost_m2_per_s = 1e-6;

void check_size(TableReader& in, const HydrogenEntry& entry, const HydrogenKeys& keys) {
  if (!keys.shape) return;
  const bool plate = entry.shape == HydrogenShape::plate;
  if (plate && in.entry("diameter")) in.complain(in.line_of("diameter"), heat_problems::diameter_of_plate());
  if (!plate && in.entry("thickness"))
    in.complain(in.line_of("thickness"), heat_problems::thickness_of_cylinder());
  if (!plate && !in.entry("diameter")) in.complain(in.line(), heat_problems::cylinder_without_diameter());
}

void check_size_of_diffusivity(TableReader& in, const Diffusivity& diffusivity) {
  for (const Temperature point : {diffusivity.low, diffusivity.high}) {
    const double d = diffusivity_at(diffusivity.law, point.celsius());
    if (d >= kLeast_m2_per_s && d <= kMost_m2_per_s) continue;
    in.complain(in.line_of(in.entry("d0") ? "d0" : "diffusivity"),
                heat_problems::implausible_diffusivity(d, point));
    return;
  }
}

}  // namespace

std::string_view published_name(PublishedDiffusivity which) {
  switch (which) {
    case PublishedDiffusivity::coe_and_moreton_1969:
      return "Coe and Moreton 1969";
    case PublishedDiffusivity::eurofer_97:
      break;
  }
  return "EUROFER'97";
}

std::optional<PublishedDiffusivity> published_named(std::string_view name) {
  for (const PublishedDiffusivity which : kPublishedDiffusivities)
    if (published_name(which) == name) return which;
  return std::nullopt;
}

void check_hydrogen_keys(TableReader& in, const HydrogenEntry& entry, const HydrogenKeys& keys) {
  check_size(in, entry, keys);
  const bool formula = in.entry("d0") || in.entry("activation_energy");
  if (in.entry("diffusivity") && formula) {
    in.complain(in.line_of("d0"), heat_problems::two_diffusivities());
    return;
  }
  if (!in.entry("diffusivity") && !formula) {
    in.complain(in.line(), heat_problems::no_diffusivity());
    return;
  }
  if (formula && !(in.entry("d0") && in.entry("activation_energy"))) {
    in.complain(in.line(), heat_problems::half_a_formula());
    return;
  }
  if (keys.published) {
    for (const char* const key : {"temperature_min", "temperature_max", "source"})
      if (in.entry(key)) in.complain(in.line_of(key), heat_problems::key_of_typed_diffusivity(key));
    return;
  }
  if (!keys.diffusivity && !(keys.d0 && keys.activation_energy)) return;
  if (!in.entry("temperature_min") || !in.entry("temperature_max")) {
    in.complain(in.line(), heat_problems::diffusivity_without_range());
    return;
  }
  in.must_rise("temperature_min", entry.diffusivity.low, "temperature_max", entry.diffusivity.high);
  if (keys.temperature_min && keys.temperature_max) check_size_of_diffusivity(in, entry.diffusivity);
}

void check_qualified_keys(TableReader& in, const QualifiedEntry&) {
  const bool parameter = in.entry("parameter") != nullptr;
  const bool holds = in.entry("holds") != nullptr;
  if (parameter && holds) in.complain(in.line(), heat_problems::parameter_and_holds());
  if (!parameter && !holds) in.complain(in.line(), heat_problems::neither_parameter_nor_holds());
}

void check_hydrogen_period(const Job& job, TableReader& in) {
  if (!job.hydrogen || !job.hydrogen->after) return;
  std::vector<std::string> known;
  for (const PeriodEntry& period : job.periods) known.push_back(period.name);
  if (std::find(known.begin(), known.end(), *job.hydrogen->after) != known.end()) return;
  in.complain(job.hydrogen->after_line, heat_problems::after_unknown_period(*job.hydrogen->after, known));
}

Problems check_hydrogen_thickness(const Procedure& procedure, const Job* job) {
  Problems problems;
  if (job == nullptr || !job->hydrogen || job->hydrogen->shape != HydrogenShape::plate) return problems;
  if (job->hydrogen->thickness || procedure.thickness) return problems;
  if (job->welds.empty()) problems.push_back(heat_problems::plate_without_thickness(*job, std::nullopt));
  for (const WeldEntry& weld : job->welds)
    if (!weld.thickness) problems.push_back(heat_problems::plate_without_thickness(*job, weld.number));
  return problems;
}

std::optional<DiffusivityLaw> diffusivity_law(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  if (!written) return found.refuse(heat_problems::not_a_diffusivity_or_its_name(found));
  if (const auto published = published_named(*written)) return *published;
  const auto typed = parse_diffusivity(*written);
  if (!typed) return found.refuse(heat_problems::not_a_diffusivity_or_its_name(found));
  if (!(*typed > 0.0)) return found.refuse(value_problems::not_above_0(found));
  return ConstantDiffusivity{*typed};
}

std::optional<double> plain_diffusivity(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  const auto value = written ? parse_diffusivity(*written) : std::nullopt;
  if (!value) return found.refuse(heat_problems::not_a_diffusivity(found));
  if (!(*value > 0.0)) return found.refuse(value_problems::not_above_0(found));
  return value;
}

std::optional<double> activation_energy(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  const auto value = written ? parse_activation_energy(*written) : std::nullopt;
  if (!value) return found.refuse(heat_problems::not_an_activation_energy(found));
  if (!(*value > 0.0)) return found.refuse(value_problems::not_above_0(found));
  return value;
}

std::optional<Temperature> temperature_point(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  const auto value = written ? parse_temperature(*written) : std::nullopt;
  if (!value) return found.refuse(heat_problems::not_a_temperature(found));
  constexpr double kAbsoluteZero_c = -273.15;
  constexpr double kFarTooHot_c = 2000.0;
  if (value->celsius() <= kAbsoluteZero_c || value->celsius() > kFarTooHot_c)
    return found.refuse(heat_problems::no_temperature_of_steel(found));
  return value;
}

std::optional<std::vector<QualifiedHold>> qualified_holds(const FoundValue& found) {
  const auto* const list = found.value.as<TomlArray>();
  if (!list || list->values.empty()) return found.refuse(heat_problems::not_qualified_holds(found));
  std::vector<QualifiedHold> holds;
  for (const TomlValue& item : list->values) {
    const std::string name = found.name + "[" + std::to_string(holds.size() + 1) + "]";
    const FoundValue hold{item, name, found.complaints};
    const auto* const pair = item.as<TomlArray>();
    if (!pair || pair->values.size() != 2) return hold.refuse(heat_problems::not_qualified_holds(hold));
    const auto at = temperature_point({pair->values[0], name, found.complaints});
    const auto seconds = duration_above_0({pair->values[1], name, found.complaints});
    if (!at || !seconds) return std::nullopt;
    holds.push_back({*at, *seconds});
  }
  return holds;
}

std::optional<double> tempering_parameter(const FoundValue& found) {
  constexpr double kFarTooMuch = 100.0;
  const auto value = number_above_0(found);
  if (value && *value > kFarTooMuch) return found.refuse(heat_problems::parameter_not_in_thousands(found));
  return value;
}

void check_tempering_reference(TableReader& in, const std::optional<Temperature>& reference) {
  constexpr double kLeast_c = 100.0;
  if (reference && reference->celsius() < kLeast_c)
    in.complain(in.line_of("tempering_reference"), heat_problems::tempering_reference_too_cold());
}

std::optional<double> tempering_constant(const FoundValue& found) {
  constexpr double kLeast = 10.0;
  constexpr double kMost = 30.0;
  const auto value = number(found);
  if (value && !(*value >= kLeast && *value <= kMost))
    return found.refuse(heat_problems::implausible_tempering_constant(found));
  return value;
}

}  // namespace soakwright
