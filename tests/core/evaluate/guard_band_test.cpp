// SPDX-License-Identifier: GPL-3.0-or-later
// What a guard range of w = U promises, against published figures and by drawing errors.
#include <cmath>
#include <cstdio>
#include <numeric>
#include <random>
#include <vector>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "core/evaluate/weld_case.h"
#include "core/measure/guard.h"
#include "tests/core/measure/made_procedure.h"
#include "tests/core/measure/made_record.h"

using namespace soakwright;

namespace {

/// Φ of the standard normal distribution.
double phi(double z) { return 0.5 * std::erfc(-z / std::sqrt(2.0)); }

Requirement at_least(double limit) { return requirement_for(RequirementKind::edge, 1, std::nullopt, limit); }
Requirement at_most(double limit) {
  return requirement_for(RequirementKind::temperature_max, 0, std::nullopt, limit);
}

#if defined(SOAKWRIGHT_SANITIZED)
constexpr int kDraws = 10'000;
#else
constexpr int kDraws = 100'000;
#endif
constexpr std::uint64_t kSeed = 20310402;

/// Four standard deviations of a share found in kDraws: met by chance once in 16,000 runs, and the seed is
/// fixed.
double tolerance_of(double share) { return 4.0 * std::sqrt(share * (1.0 - share) / kDraws); }

void print(const char* what, double share, double promised) {
  std::printf("%s: %d draws, seed %llu: wrongly accepted %.4f, promised %.4f\n", what, kDraws,
              static_cast<unsigned long long>(kSeed), share, promised);
}

/// P(sum of independent rectangular errors < bound), by convolving their densities on a fine grid.
double share_below(const std::vector<double>& half_widths, double bound) {
  constexpr double kStep = 0.001;
  std::vector<double> density{1.0};
  double low = 0.0;
  for (const double a : half_widths) {
    const auto width = static_cast<std::size_t>(std::lround(2.0 * a / kStep));
    std::vector<double> sum(density.size() + width - 1, 0.0);
    double running = 0.0;
    for (std::size_t i = 0; i < sum.size(); ++i) {
      if (i < density.size()) running += density[i];
      if (i >= width) running -= density[i - width];
      sum[i] = running / static_cast<double>(width);
    }
    density = std::move(sum);
    low -= a;
  }
  // Cell i of the sum of n grids lies about low + (i + n/2)·step.
  const double first = low + kStep * static_cast<double>(half_widths.size()) / 2.0;
  double below = 0.0;
  for (std::size_t i = 0; i < density.size(); ++i)
    if (first + kStep * static_cast<double>(i) < bound) below += density[i];
  return below;
}

}  // namespace

TEST_CASE("P(conform) of published examples, and what a guard range of U makes of them") {
  struct Case {
    const char* source;
    double limit, u, reading;
    bool least;
    double conforms;  ///< as published
    Verdict guarded;
  };
  // Met where P(conform) is at least Φ(2) = 0.9772, not met where it is below 1 − Φ(2).
  const std::vector<Case> cases = {
      {"ILAC-G8:09/2019, normal law", 595, 2, 593, true, 0.1587, Verdict::inconclusive},
      {"ILAC-G8:09/2019, normal law", 595, 2, 595, true, 0.5, Verdict::inconclusive},
      {"ILAC-G8:09/2019, normal law", 595, 2, 597, true, 0.8413, Verdict::inconclusive},
      {"ILAC-G8:09/2019, normal law", 595, 2, 599, true, 0.9772, Verdict::met},
      {"beyond by more than U", 595, 2, 590.9, true, 0.0202, Verdict::not_met},
      {"JCGM 106:2012, Zener voltage, upper limit", -5.40, 0.05, -5.47, false, 0.92, Verdict::inconclusive},
  };
  for (const Case& c : cases) {
    CAPTURE(c.source, c.reading);
    const double z = (c.least ? c.reading - c.limit : c.limit - c.reading) / c.u;
    CHECK(phi(z) == Approx(c.conforms).margin(0.005));
    const Requirement requirement = c.least ? at_least(c.limit) : at_most(c.limit);
    CHECK(held_to_limit(requirement, c.reading, kCoverage * c.u) == c.guarded);
    // Simple acceptance has no guard range.
    CHECK(held_to_limit(requirement, c.reading, 0.0) == (z >= 0.0 ? Verdict::met : Verdict::not_met));
    CHECK((held_to_limit(requirement, c.reading, kCoverage * c.u) == Verdict::met) ==
          (phi(z) >= phi(2.0) - 1e-9));
  }
}

TEST_CASE("Between two limits the worse one decides") {
  // JCGM 106:2012: 13.6, u 1.8, within 12.5…16.3: P(conform) 0.66. Neither edge is clear of U = 3.6.
  CHECK(phi((16.3 - 13.6) / 1.8) - phi((12.5 - 13.6) / 1.8) == Approx(0.66).margin(0.005));
  CHECK(held_to_limit(at_least(12.5), 13.6, 3.6) == Verdict::inconclusive);
  CHECK(held_to_limit(at_most(16.3), 13.6, 3.6) == Verdict::inconclusive);
}

TEST_CASE("A guard range of U keeps the risk at the limit under 2.5 %") {
  // ILAC-G8:09/2019: w = U, specific risk below 2.5 %; ISO 14253-1:2017: w = 0.83 U, 5 %.
  CHECK(1.0 - phi(2.0) < 0.025);
  CHECK(1.0 - phi(0.83 * 2.0) == Approx(0.05).margin(0.002));
  std::mt19937_64 random(kSeed);
  std::normal_distribution<double> error(0.0, 2.0);
  const Requirement requirement = at_most(600.0);
  int accepted = 0;
  int rejected = 0;
  for (int i = 0; i < kDraws; ++i) {
    const Verdict verdict = held_to_limit(requirement, 600.0 + error(random), 4.0);
    accepted += verdict == Verdict::met;
    rejected += verdict == Verdict::not_met;
  }
  const double promised = 1.0 - phi(2.0);
  print("normal errors", static_cast<double>(accepted) / kDraws, promised);
  CHECK(std::fabs(static_cast<double>(accepted) / kDraws - promised) < tolerance_of(promised));
  CHECK(std::fabs(static_cast<double>(rejected) / kDraws - promised) < tolerance_of(promised));
}

TEST_CASE("Work that is just at its temperature_max is accepted as seldom as its budget promises") {
  // ±1.5 C, cable ±1.5 C, recorder ±1 C, a log in whole degrees: the work is at 600 − f, f drawn within the
  // last digit, so that every place between two digits has its turn, and the temperature_max is where the
  // work is.
  const Procedure specified = procedure_of(
      "[evaluation]\ndecision_rule = \"guarded\"\n[record]\ntemperature_max = 600\n[[stage]]\nkind = "
      "\"cool\"\nrate_max = "
      "100\n");
  const Job job = job_of(
      "[[thermocouple]]\ncolumn = \"TC1\"\ntolerance = \"±1.5 C\"\nextension = \"±1.5 C\"\n"
      "[recorder]\naccuracy = \"±1.0 C\"\n");
  std::mt19937_64 random(kSeed);
  const auto within = [&](double a) { return std::uniform_real_distribution<double>(-a, a)(random); };
  int accepted = 0;
  for (int i = 0; i < kDraws; ++i) {
    const double work = 600.0 + within(0.5);
    const double printed = std::round(work + within(1.5) + within(1.5) + within(1.0));
    const Record record =
        MadeRecord::every(60, 2).column("TC1", {printed, printed}, 0).entry("TC1", 0).record();
    Procedure at_work = specified;
    at_work.record_limits.temperature_max = Temperature::of_celsius(work);
    const Verdicts verdicts = evaluate(record, at_work, &job);
    accepted += verdicts.requirements.front().verdict == Verdict::met;
  }
  const double u = 2.0 * std::sqrt((2.25 + 2.25 + 1.0) / 3.0 + 1.0 / 12.0);
  const double promised = share_below({1.5, 1.5, 1.0, 0.5}, -u);
  const double share = static_cast<double>(accepted) / kDraws;
  print("one thermocouple", share, promised);
  CHECK(promised < 0.025);
  CHECK(promised > 0.01);
  CHECK(std::fabs(share - promised) < tolerance_of(promised));
}

TEST_CASE("A pair that is just as far apart as it may be is accepted as seldom") {
  const double first = 2.0 * std::sqrt((4.0 + 1.0) / 3.0);
  const double second = 2.0 * std::sqrt((2.25 + 1.0) / 3.0);
  const double u = pair_uncertainty_k(first, second);
  CHECK(u == Approx(std::sqrt(first * first + second * second)));
  const Requirement requirement = requirement_for(RequirementKind::spread, 1, std::nullopt, 30.0);
  std::mt19937_64 random(kSeed);
  const auto within = [&](double a) { return std::uniform_real_distribution<double>(-a, a)(random); };
  int accepted = 0;
  for (int i = 0; i < kDraws; ++i) {
    const double spread = 30.0 + within(2.0) + within(1.0) - within(1.5) - within(1.0);
    accepted += held_to_limit(requirement, spread, u) == Verdict::met;
  }
  const double promised = share_below({2.0, 1.0, 1.5, 1.0}, -u);
  const double share = static_cast<double>(accepted) / kDraws;
  print("a pair", share, promised);
  CHECK(promised < 0.025);
  CHECK(std::fabs(share - promised) < tolerance_of(promised));
}
