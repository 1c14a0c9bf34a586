// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/uncertainty/tolerance_table.h"

#include <algorithm>
#include <cmath>

#include "core/procedure/job/job_words.h"

namespace soakwright {
namespace {

/// Where a table begins at 0 or at -40 °C it is read from here on: a cold start is never near a limit, and
/// there the fixed value is the greater one.
constexpr double kColdest_c = -40.0;

struct Row {
  ThermocoupleType type;
  HalfWidth class_1, class_2, special, standard;
};

constexpr HalfWidth greater_of(double fixed_k, double percent, double to_c, double from_c = kColdest_c) {
  return {fixed_k, percent / 100.0, std::nullopt, from_c, to_c};
}
/// A table that does not have the class: it holds nowhere.
constexpr HalfWidth none() { return {0.0, 0.0, std::nullopt, 0.0, -1.0}; }

using enum ThermocoupleType;

constexpr HalfWidth kNobleClass1{1.0, 0.003, 1100.0, kColdest_c, 1600.0};

// IEC 60584-1 and ASTM E230, as in several independent published copies.
constexpr Row kRows[] = {
    {K, greater_of(1.5, 0.4, 1000), greater_of(2.5, 0.75, 1200), greater_of(1.1, 0.4, 1260),
     greater_of(2.2, 0.75, 1260)},
    {N, greater_of(1.5, 0.4, 1000), greater_of(2.5, 0.75, 1200), greater_of(1.1, 0.4, 1260),
     greater_of(2.2, 0.75, 1260)},
    {J, greater_of(1.5, 0.4, 750), greater_of(2.5, 0.75, 750), greater_of(1.1, 0.4, 760),
     greater_of(2.2, 0.75, 760)},
    {E, greater_of(1.5, 0.4, 800), greater_of(2.5, 0.75, 900), greater_of(1.0, 0.4, 870),
     greater_of(1.7, 0.5, 870)},
    {T, greater_of(0.5, 0.4, 350), greater_of(1.0, 0.75, 350), greater_of(0.5, 0.4, 370),
     greater_of(1.0, 0.75, 370)},
    {R, kNobleClass1, greater_of(1.5, 0.25, 1600), greater_of(0.6, 0.1, 1480), greater_of(1.5, 0.25, 1480)},
    {S, kNobleClass1, greater_of(1.5, 0.25, 1600), greater_of(0.6, 0.1, 1480), greater_of(1.5, 0.25, 1480)},
    {B, none(), greater_of(0.0, 0.25, 1700, 600), none(), greater_of(0.0, 0.5, 1700, 870)},
};

}  // namespace

std::optional<double> HalfWidth::at(double celsius) const {
  if (!(celsius >= from_c && celsius <= to_c)) return std::nullopt;
  if (line_from_c) return fixed_k + share * std::max(0.0, celsius - *line_from_c);
  return std::max(fixed_k, share * std::fabs(celsius));
}

std::optional<HalfWidth> published_tolerance(ThermocoupleType type, Tolerance::Kind kind) {
  const auto* row = std::find_if(std::begin(kRows), std::end(kRows),
                                 [&](const Row& candidate) { return candidate.type == type; });
  const HalfWidth& found = kind == Tolerance::Kind::class_1   ? row->class_1
                           : kind == Tolerance::Kind::class_2 ? row->class_2
                           : kind == Tolerance::Kind::special ? row->special
                                                              : row->standard;
  if (found.to_c < found.from_c) return std::nullopt;
  return found;
}

std::string type_name(ThermocoupleType type) { return std::string{kThermocoupleTypeWords.of(type)}; }

std::string class_name(Tolerance::Kind kind) { return std::string{kToleranceWords.of(kind)}; }

}  // namespace soakwright
