// SPDX-License-Identifier: GPL-3.0-or-later
// What [hydrogen], [qualified] and the keys of tempering say that cannot be evaluated.
#include <algorithm>

#include <fmt/format.h>

#include "core/procedure/heat/heat_tables.h"
#include "core/procedure/toml/value_readers.h"
#include "core/units/diffusivity_text.h"
#include "core/units/printed_quantity.h"
#include "core/units/quantity_text.h"

namespace soakwright {
namespace {

constexpr const char* kDiffusivity =
    R"(write "Coe and Moreton 1969", "EUROFER'97", or a number with its unit: "5.1e-5 cm2/s")";

/// Wider than anything published for hydrogen in steel (common practice, no source): what lies outside is a
/// unit taken for another.
constexpr double kLeast_m2_per_s = 1e-16;
constexpr double kMost_m2_per_s = 1e-6;

void check_size(TableReader& in, const HydrogenEntry& entry, const HydrogenKeys& keys) {
  if (!keys.shape) return;
  const bool plate = entry.shape == HydrogenShape::plate;
  if (plate && in.entry("diameter"))
    in.complain(in.line_of("diameter"), "`diameter` is a cylinder's, and `shape` is \"plate\"",
                "give `thickness`, or write `shape = \"cylinder\"`");
  if (!plate && in.entry("thickness"))
    in.complain(in.line_of("thickness"), "`thickness` is a plate's, and `shape` is \"cylinder\"",
                "give `diameter`, or write `shape = \"plate\"`");
  if (!plate && !in.entry("diameter"))
    in.complain(in.line(), "[hydrogen] has a cylinder without its `diameter`", R"(add `diameter = "80 mm"`)");
}

void check_size_of_diffusivity(TableReader& in, const Diffusivity& diffusivity) {
  for (const Temperature point : {diffusivity.low, diffusivity.high}) {
    const double d = diffusivity_at(diffusivity.law, point.celsius());
    if (d >= kLeast_m2_per_s && d <= kMost_m2_per_s) continue;
    in.complain(
        in.line_of(in.entry("d0") ? "d0" : "diffusivity"),
        fmt::format("the diffusivity comes to {} at {} \u00b0C, which is no diffusivity of hydrogen in "
                    "steel",
                    diffusivity_text(d), short_text(point.celsius(), 1)),
        "look at the number and its unit: published ones are between 1e-8 and 1e-4 cm2/s");
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
    in.complain(in.line_of("d0"), "[hydrogen] gives a diffusivity twice, by `diffusivity` and by a formula",
                "give `diffusivity`, or `d0` and `activation_energy`");
    return;
  }
  if (!in.entry("diffusivity") && !formula) {
    in.complain(in.line(), "[hydrogen] has no `diffusivity`", kDiffusivity);
    return;
  }
  if (formula && !(in.entry("d0") && in.entry("activation_energy"))) {
    in.complain(in.line(), "`d0` and `activation_energy` make a diffusivity together, and one is missing",
                R"(give both: `d0 = "4.57e-7 m2/s"`, `activation_energy = "22.3 kJ/mol"`)");
    return;
  }
  if (keys.published) {
    for (const char* const key : {"temperature_min", "temperature_max", "source"})
      if (in.entry(key))
        in.complain(in.line_of(key), fmt::format("`{}` belongs to a diffusivity that is typed", key),
                    "leave it out: a published diffusivity has its own range and source");
    return;
  }
  if (!keys.diffusivity && !(keys.d0 && keys.activation_energy)) return;
  if (!in.entry("temperature_min") || !in.entry("temperature_max")) {
    in.complain(in.line(), "a diffusivity that is typed needs the temperatures between which it holds",
                R"(add `temperature_min = "300 C"` and `temperature_max = "370 C"`)");
    return;
  }
  in.must_rise("temperature_min", entry.diffusivity.low, "temperature_max", entry.diffusivity.high);
  if (keys.temperature_min && keys.temperature_max) check_size_of_diffusivity(in, entry.diffusivity);
}

void check_qualified_keys(TableReader& in, const QualifiedEntry&) {
  const bool parameter = in.entry("parameter") != nullptr;
  const bool holds = in.entry("holds") != nullptr;
  if (parameter == holds)
    in.complain(in.line(),
                parameter ? "[qualified] gives both `parameter` and `holds`"
                          : "[qualified] says nothing that can be compared",
                R"(give `parameter = 18.6`, or `holds = [["620 C", "8 h"]]`)");
}

void check_hydrogen_period(const Job& job, TableReader& in) {
  if (!job.hydrogen || !job.hydrogen->after) return;
  std::vector<std::string> known;
  for (const PeriodEntry& period : job.periods) known.push_back(period.name);
  if (std::find(known.begin(), known.end(), *job.hydrogen->after) != known.end()) return;
  in.complain(
      job.hydrogen->after_line,
      fmt::format("`after` names \"{}\", and the job has no such period", shown(*job.hydrogen->after)),
      known.empty() ? "add a [[period]] with that `name`" : suggestion(*job.hydrogen->after, known));
}

Problems check_hydrogen_thickness(const Procedure& procedure, const Job* job) {
  Problems problems;
  if (job == nullptr || !job->hydrogen || job->hydrogen->shape != HydrogenShape::plate) return problems;
  if (job->hydrogen->thickness || procedure.thickness) return problems;
  const auto add = [&](const std::string& weld) {
    problems.push_back({ProblemKind::bad_input, job->file, job->hydrogen->line,
                        fmt::format("[hydrogen] has no `thickness`, and none is given{}", weld),
                        R"(add `thickness = "25 mm"` to [hydrogen], the weld or the procedure)"});
  };
  if (job->welds.empty()) add("");
  for (const WeldEntry& weld : job->welds)
    if (!weld.thickness) add(fmt::format(" for weld {}", weld.number));
  return problems;
}

std::optional<DiffusivityLaw> diffusivity_law(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  if (!written) return found.refuse_kind(kDiffusivity);
  if (const auto published = published_named(*written)) return *published;
  const auto typed = parse_diffusivity(*written);
  if (!typed) return found.refuse_kind(kDiffusivity);
  if (!(*typed > 0.0)) return found.refuse_kind("give more than 0");
  return ConstantDiffusivity{*typed};
}

std::optional<double> plain_diffusivity(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  const auto value = written ? parse_diffusivity(*written) : std::nullopt;
  if (!value) return found.refuse_kind(R"(write a diffusivity with its unit: "4.57e-7 m2/s")");
  if (!(*value > 0.0)) return found.refuse_kind("give more than 0");
  return value;
}

std::optional<double> activation_energy(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  const auto value = written ? parse_activation_energy(*written) : std::nullopt;
  if (!value) return found.refuse_kind(R"(write an energy with its unit: "22.3 kJ/mol")");
  if (!(*value > 0.0)) return found.refuse_kind("give more than 0");
  return value;
}

std::optional<Temperature> temperature_point(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  const auto value = written ? parse_temperature(*written) : std::nullopt;
  if (!value) return found.refuse_kind(R"(write a temperature with its unit: "300 C", "600 F")");
  constexpr double kAbsoluteZero_c = -273.15;
  constexpr double kFarTooHot_c = 2000.0;
  if (value->celsius() <= kAbsoluteZero_c || value->celsius() > kFarTooHot_c)
    return found.refuse_kind("give a temperature that steel can have");
  return value;
}

std::optional<std::vector<QualifiedHold>> qualified_holds(const FoundValue& found) {
  constexpr const char* kHelp =
      R"(write holds as temperature and time: [["620 C", "8 h"], ["600 C", "2 h"]])";
  const auto* const list = found.value.as<TomlArray>();
  if (!list || list->values.empty()) return found.refuse_kind(kHelp);
  std::vector<QualifiedHold> holds;
  for (const TomlValue& item : list->values) {
    const std::string name = fmt::format("{}[{}]", found.name, holds.size() + 1);
    const auto* const pair = item.as<TomlArray>();
    if (!pair || pair->values.size() != 2) return FoundValue{item, name, found.complaints}.refuse_kind(kHelp);
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
  if (value && *value > kFarTooMuch)
    return found.refuse_kind("give the parameter divided by 1000: 17.9, not 17900");
  return value;
}

void check_tempering_reference(TableReader& in, const std::optional<Temperature>& reference) {
  constexpr double kLeast_c = 100.0;
  if (reference && reference->celsius() < kLeast_c)
    in.complain(in.line_of("tempering_reference"),
                "`tempering_reference` is a temperature at which no steel tempers",
                "give a holding temperature, in the file's unit");
}

std::optional<double> tempering_constant(const FoundValue& found) {
  constexpr double kLeast = 10.0;
  constexpr double kMost = 30.0;
  const auto value = number(found);
  if (value && !(*value >= kLeast && *value <= kMost))
    return found.refuse_kind(
        "give the constant C of the formula, from 10 to 30; 20 for C-Mn and Cr-Mo steels");
  return value;
}

}  // namespace soakwright
