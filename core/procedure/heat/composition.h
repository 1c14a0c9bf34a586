// SPDX-License-Identifier: GPL-3.0-or-later
// The composition of a steel, and the carbon equivalents that published formulas make of it.
//
// Shares are in per cent by mass, as a material certificate prints them. An element that is not given is not
// known; it is never taken for zero.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/units/word_table.h"

namespace soakwright {

enum class Element { C, Si, Mn, Cr, Mo, Ni, Cu, V, B };
inline constexpr auto kElementWords =
    word_table<Element::B>("C", "Si", "Mn", "Cr", "Mo", "Ni", "Cu", "V", "B");
inline constexpr std::size_t kElements = kElementWords.size;

struct Composition {
  std::size_t line = 0;  ///< in the job file
  std::array<std::optional<double>, kElements> percent;
  [[nodiscard]] std::optional<double> of(Element element) const {
    return percent[static_cast<std::size_t>(element)];
  }
  bool operator==(const Composition&) const = default;
};

/// The highest share of an element that a weldable steel has; above it the figure is a slip of the pen
/// (common practice, no source).
double most_plausible_percent(Element element);

/// CE(IIW) = C + Mn/6 + (Cr+Mo+V)/5 + (Ni+Cu)/15 (International Institute of Welding).
/// CET = C + (Mn+Mo)/10 + (Cr+Cu)/20 + Ni/40.
/// Pcm = C + Si/30 + (Mn+Cu+Cr)/20 + Ni/60 + Mo/15 + V/10 + 5 B (Ito and Bessyo, 1968).
enum class CarbonFormula { ce_iiw, cet, pcm };
inline constexpr auto kCarbonFormulaWords = word_table<CarbonFormula::pcm>("CE(IIW)", "CET", "Pcm");

struct CarbonEquivalent {
  CarbonFormula formula = CarbonFormula::ce_iiw;
  std::optional<double> percent;  ///< nullopt if an element of the formula is not given
  std::vector<Element> missing;
  bool operator==(const CarbonEquivalent&) const = default;
};

/// Of each formula.
std::vector<CarbonEquivalent> carbon_equivalents(const Composition& composition);

}  // namespace soakwright
