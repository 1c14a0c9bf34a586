// SPDX-License-Identifier: GPL-3.0-or-later
// Uncertainty budgets: what contributes, and U.
#include "core/uncertainty/budget.h"

#include <cmath>

#include <catch2/catch.hpp>

#include "tests/core/measure/made_procedure.h"
#include "tests/core/measure/made_record.h"

using namespace soakwright;

namespace {

Budget budget_for(const std::string& job, int decimals = 1, TemperatureUnit unit = TemperatureUnit::celsius) {
  const Record record =
      MadeRecord::every(60, 2).column("TC1", {20, 21}, decimals, unit).entry("TC1", 0).record();
  return budgets_of(record, job_of(job)).front();
}

const std::string kTc1 = "[[thermocouple]]\ncolumn = \"TC1\"\n";

Budget of_rectangle(double half_width) {
  return Budget({{{BudgetSource::Kind::thermocouple, {half_width, 0.0, std::nullopt}}, std::sqrt(3.0)}});
}

}  // namespace

TEST_CASE("Limits ±a count a/√3 and a digital step q counts q/√12") {
  // GUM 4.3.7, example: copper, 16.52e-6 ± 0.40e-6 per °C, u = 0.23e-6 (from memory).
  CHECK(of_rectangle(0.40e-6).expanded_k(20) / kCoverage == Approx(0.23e-6).epsilon(0.01));
  // GUM F.2.2.1: u = 0.29 · q (from memory). A log in whole degrees, and nothing else worth naming.
  CHECK(budget_for(kTc1 + "tolerance = \"±0 C\"\n", 0).expanded_k(600) / kCoverage ==
        Approx(0.29).epsilon(0.01));
}

TEST_CASE("U is twice the root of the sum of squares of what the job gives and the log's last digit") {
  const std::string class_1 = kTc1 + "type = \"K\"\ntolerance = \"class 1\"\n";
  SECTION("thermocouple and last digit") {
    // a = 0.4 % of 600 = 2.4, q = 0.1: 2·√(2.4²/3 + 0.1²/12) = 2·√(1.92 + 0.000833)
    CHECK(budget_for(class_1).expanded_k(600) == Approx(2.77188).epsilon(1e-5));
    // At 300 °C the fixed 1.5 is the greater: 2·√(0.75 + 0.000833)
    CHECK(budget_for(class_1).expanded_k(300) == Approx(1.73301).epsilon(1e-5));
  }
  SECTION("extension cable and recorder") {
    const Budget budget = budget_for(
        class_1 + "extension = \"±1.5 C\"\n[recorder]\naccuracy = \"±1.0 C\"\nresolution = \"0.1 C\"\n");
    REQUIRE(budget.parts().size() == 4);
    CHECK(budget.parts()[1].source.kind == BudgetSource::Kind::extension_cable);
    // 2·√(1.92 + 0.75 + 0.333333 + 0.000833)
    CHECK(budget.expanded_k(600) == Approx(3.46651).epsilon(1e-5));
  }
  SECTION("a fixed tolerance does not depend on the reading, nor does it touch a rate") {
    const Budget budget = budget_for(kTc1 + "tolerance = \"±1.1 C\"\n");
    CHECK(budget.expanded_k(20) == Approx(2.0 * std::sqrt(1.21 / 3.0 + 0.01 / 12.0)));
    CHECK(budget.expanded_k(620) == budget.expanded_k(20));
    CHECK(budget.rate_share() == 0.0);
  }
  SECTION("a tolerance in % of the reading is one of a rate, too") {
    CHECK(budget_for(class_1).rate_share() == Approx(2.0 * 0.004 / std::sqrt(3.0)));
  }
}

TEST_CASE("A calibrated thermocouple's tolerance is its calibration's") {
  const std::string fixed = "tolerance = \"±0.8 C\"\n";
  const auto kind_of = [&](const std::string& more) {
    return budget_for(kTc1 + fixed + more).parts()[0].source.kind;
  };
  CHECK(kind_of("") == BudgetSource::Kind::thermocouple);
  CHECK(kind_of("correction = [[0, 0.0], [600, -1.4]]\n") == BudgetSource::Kind::calibration);
  CHECK(kind_of("certificate = \"BF-2031-17\"\n") == BudgetSource::Kind::calibration);
}

TEST_CASE("The coarser of the recorder's step and the log's last digit counts") {
  const std::string coarse = kTc1 + "tolerance = \"±0 C\"\n[recorder]\nresolution = \"0.5 C\"\n";
  CHECK(budget_for(coarse).expanded_k(600) == Approx(2.0 * 0.5 / std::sqrt(12.0)));
  CHECK(budget_for(coarse, 0).expanded_k(600) == Approx(2.0 * 1.0 / std::sqrt(12.0)));
  // Whole degrees Fahrenheit are steps of 5/9 K.
  CHECK(budget_for(kTc1 + "tolerance = \"±0 C\"\n", 0, TemperatureUnit::fahrenheit).expanded_k(600) ==
        Approx(2.0 * (5.0 / 9.0) / std::sqrt(12.0)));
}

TEST_CASE("Where the class says nothing U has no bound, and what is not on the work has no budget") {
  const Budget budget = budget_for(kTc1 + "type = \"K\"\ntolerance = \"class 1\"\n");
  CHECK(std::isinf(budget.expanded_k(1001)));
  const Record record = MadeRecord::every(60, 2)
                            .column("TC1", {20, 21})
                            .column("Air", {20, 21})
                            .role("Air", ThermocoupleRole::air)
                            .entry("TC1", 0)
                            .record();
  CHECK(budgets_of(record, job_of(kTc1 + "tolerance = \"±1.1 C\"\n"))[1].parts().empty());
}
