// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/preheat.h"

#include <utility>
#include <variant>

namespace soakwright {
namespace {

Thickness mm(double value) { return Thickness::of(value, LengthUnit::millimetre); }

void add_procedure(const Procedure& procedure, WeldPreheat& found) {
  for (const Stage& stage : procedure.stages) {
    const auto* const maintain = std::get_if<MaintainStage>(&stage.specified);
    if (!maintain || (found.procedure_minimum && *found.procedure_minimum <= maintain->low)) continue;
    found.procedure_minimum = maintain->low;
    found.procedure_stage = stage.number;
  }
}

WeldPreheat of_weld(const Job& job, const WeldEntry* weld, const Procedure* procedure) {
  WeldPreheat found;
  found.weld = weld ? std::optional(weld->number) : job.weld;
  if (weld) found.thickness = weld->thickness;
  if (!found.thickness && procedure) found.thickness = procedure->thickness;
  const auto& composition = weld && weld->composition ? weld->composition : job.composition;
  if (composition) found.equivalents = carbon_equivalents(*composition);
  found.minimum_asked_for = job.minimum_preheat.has_value() || (weld && weld->minimum_preheat.has_value());
  if (found.minimum_asked_for && found.thickness)
    found.published_minimum = aws_category_b_preheat(*found.thickness);
  found.with_procedure = procedure != nullptr;
  if (procedure) add_procedure(*procedure, found);
  return found;
}

}  // namespace

std::optional<Temperature> aws_category_b_preheat(Thickness thickness) {
  constexpr std::pair<double, double> kUpTo[] = {{20.0, 0.0}, {38.0, 10.0}, {65.0, 65.0}};
  constexpr double kThinnest = 3.0, kAboveAll = 110.0;
  if (thickness < mm(kThinnest)) return std::nullopt;
  for (const auto& [most, celsius] : kUpTo)
    if (thickness <= mm(most)) return Temperature::of_celsius(celsius);
  return Temperature::of_celsius(kAboveAll);
}

std::vector<WeldPreheat> preheat_of(const Job& job, const Procedure* procedure) {
  std::vector<WeldPreheat> welds;
  const auto add = [&](const WeldEntry* weld) {
    WeldPreheat found = of_weld(job, weld, procedure);
    if (!found.equivalents.empty() || found.minimum_asked_for) welds.push_back(std::move(found));
  };
  if (job.welds.empty()) add(nullptr);
  for (const WeldEntry& weld : job.welds) add(&weld);
  return welds;
}

Provenance aws_category_b_provenance() {
  return {"AWS D1.1", std::nullopt, "category B", Provenance::Flag::seen};
}

}  // namespace soakwright
