// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/composition.h"

#include <utility>

namespace soakwright {
namespace {

using Terms = std::vector<std::pair<Element, double>>;  ///< element, and its factor

const Terms& terms_of(CarbonFormula formula) {
  using enum Element;
  static const Terms ce_iiw = {{C, 1.0},       {Mn, 1.0 / 6.0},  {Cr, 1.0 / 5.0}, {Mo, 1.0 / 5.0},
                               {V, 1.0 / 5.0}, {Ni, 1.0 / 15.0}, {Cu, 1.0 / 15.0}};
  static const Terms cet = {{C, 1.0},         {Mn, 1.0 / 10.0}, {Mo, 1.0 / 10.0},
                            {Cr, 1.0 / 20.0}, {Cu, 1.0 / 20.0}, {Ni, 1.0 / 40.0}};
  static const Terms pcm = {{C, 1.0},         {Si, 1.0 / 30.0}, {Mn, 1.0 / 20.0},
                            {Cu, 1.0 / 20.0}, {Cr, 1.0 / 20.0}, {Ni, 1.0 / 60.0},
                            {Mo, 1.0 / 15.0}, {V, 1.0 / 10.0},  {B, 5.0}};
  switch (formula) {
    case CarbonFormula::ce_iiw:
      return ce_iiw;
    case CarbonFormula::cet:
      return cet;
    case CarbonFormula::pcm:
      return pcm;
  }
  return ce_iiw;
}

CarbonEquivalent equivalent(CarbonFormula formula, const Composition& composition) {
  CarbonEquivalent found;
  found.formula = formula;
  double sum = 0.0;
  for (const auto& [element, factor] : terms_of(formula)) {
    if (const auto percent = composition.of(element))
      sum += *percent * factor;
    else
      found.missing.push_back(element);
  }
  if (found.missing.empty()) found.percent = sum;
  return found;
}

}  // namespace

double most_plausible_percent(Element element) {
  constexpr std::array<double, kElements> kMost = {1.0, 5.0, 20.0, 30.0, 10.0, 40.0, 10.0, 5.0, 0.1};
  return kMost[static_cast<std::size_t>(element)];
}

std::vector<CarbonEquivalent> carbon_equivalents(const Composition& composition) {
  return {equivalent(CarbonFormula::ce_iiw, composition), equivalent(CarbonFormula::cet, composition),
          equivalent(CarbonFormula::pcm, composition)};
}

}  // namespace soakwright
