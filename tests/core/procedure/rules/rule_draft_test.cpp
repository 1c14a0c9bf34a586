// SPDX-License-Identifier: GPL-3.0-or-later
// Procedures from the published rules, against figures worked out by hand from the published formulas.
#include "core/procedure/rules/rule_draft.h"

#include <string>

#include <catch2/catch.hpp>

#include "tests/core/procedure/shipped_rules.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

constexpr auto kHeat = RampStage::Direction::heat;
constexpr auto kCool = RampStage::Direction::cool;
const std::string kUcs = "asme-viii-1-ucs-56";

Procedure made(const std::string& rule, Thickness thickness, const std::string& material = {},
               std::optional<double> lower_by = std::nullopt) {
  return accepted(draft_of(rule, thickness, material, lower_by)).procedure;
}
std::string refused(const Result<Draft>& result) {
  return result ? "accepted" : all_texts(result.problems());
}

}  // namespace

TEST_CASE("UCS-56(d): heating and cooling limits by thickness") {
  // ASME BPVC VIII-1 UCS-56(d): 400 F/h and 500 F/h divided by the thickness in inches, at most 400 and 500,
  // need not be below 100. An interval of 1 F is 5/9 K (NIST SP 811 B.8).
  struct Row {
    double in, heat_f, cool_f;
  };
  for (const Row& row : {Row{1, 400, 500}, Row{2, 200, 250}, Row{4, 100, 125}, Row{5, 100, 100}}) {
    const Procedure procedure = made(kUcs, inches(row.in), "P-No. 1 Gr. 1");
    INFO(row.in << " in");
    CHECK(rate_of(procedure, kHeat) == Approx(row.heat_f * 5.0 / 9.0).epsilon(1e-12));
    CHECK(rate_of(procedure, kCool) == Approx(row.cool_f * 5.0 / 9.0).epsilon(1e-12));
  }
}

TEST_CASE("UCS-56: hold times by thickness and material") {
  // P-No. 1: 1 h/in to 2 in, at least 15 min, then 15 min per inch. P-No. 4: the same to 5 in.
  struct Row {
    const char* material;
    double in, minutes;
  };
  for (const Row& row : {Row{"P-No. 1 Gr. 1", 0.2, 15}, Row{"P-No. 1 Gr. 3", 1.5, 90}, Row{"P-No. 3", 3, 135},
                         Row{"P-No. 1 Gr. 2", 6, 180}, Row{"P-No. 4 Gr. 1", 4, 240},
                         Row{"P-No. 4 Gr. 2", 6, 315}, Row{"P-No. 5A", 6, 315}})
    for (const std::string& rule : {kUcs, kUcs + "-si"}) {
      INFO(rule << ", " << row.material << ", " << row.in << " in");
      CHECK(minutes_of(made(rule, inches(row.in), row.material)) == Approx(row.minutes).epsilon(1e-12));
    }
  CHECK(hold_of(made(kUcs, inches(1), "P-No. 3")).low.in(TemperatureUnit::fahrenheit) == Approx(1100.0));
  CHECK(hold_of(made(kUcs, inches(1), "P-No. 4 Gr. 1")).low.in(TemperatureUnit::fahrenheit) ==
        Approx(1200.0));
  CHECK(hold_of(made(kUcs + "-si", inches(1), "P-No. 5A")).low.celsius() == 675.0);
}

TEST_CASE("B31.1: 600 F/h is an interval, 333.3 C/h and never 315.6") {
  // ASME B31.1 132.5 (2018): 600 F/h divided by half the thickness in inches, at most 600 F/h.
  CHECK(rate_of(made("asme-b31-1-132-5", inches(1)), kHeat) == Approx(1000.0 / 3.0).epsilon(1e-12));
  CHECK(rate_of(made("asme-b31-1-132-5", inches(2)), kCool) == Approx(1000.0 / 3.0).epsilon(1e-12));
  CHECK(rate_of(made("asme-b31-1-132-5", inches(4)), kHeat) == Approx(500.0 / 3.0).epsilon(1e-12));
}

TEST_CASE("B31.3: ranges and times of table 331.1.1, and the printed rate") {
  // ASME B31.3 331.1.4 (from memory): 335 C/h divided by half the thickness in inches, at most 335.
  const std::string rule = "asme-b31-3-331-1";
  CHECK(rate_of(made(rule, mm(50.8), "P-No. 1 Gr. 1"), kHeat) == Approx(335.0));
  CHECK(rate_of(made(rule, mm(101.6), "P-No. 1 Gr. 1"), kCool) == Approx(167.5));
  struct Row {
    const char* material;
    double mm, low, high, minutes;
  };
  for (const Row& row : {Row{"P-No. 1 Gr. 1", 5, 595, 650, 15}, Row{"P-No. 3", 38, 595, 650, 91.2},
                         Row{"P-No. 4", 75, 650, 705, 135}, Row{"P-No. 5A", 50, 675, 760, 120},
                         Row{"P-No. 15E Gr. 1", 10, 705, 775, 30}, Row{"P-No. 15E Gr. 1", 100, 705, 775, 240},
                         Row{"P-No. 15E Gr. 1", 150, 705, 775, 315}}) {
    INFO(row.material << ", " << row.mm << " mm");
    const Procedure procedure = made(rule, mm(row.mm), row.material);
    CHECK(hold_of(procedure).low.celsius() == row.low);
    CHECK(hold_of(procedure).high->celsius() == row.high);
    CHECK(minutes_of(procedure) == Approx(row.minutes).epsilon(1e-12));
  }
}

TEST_CASE("a lower holding temperature takes a longer time, and is not for every material") {
  // ASME B31.3-2016 table 331.1.2: 30/55/85/110 C lower for 2/4/10/20 h up to 25 mm, 15 min more per further
  // 25 mm; beyond 55 C only P-No. 1 Gr. 1 and 2. UCS-56.1 alike, from memory.
  struct Row {
    double lower_by, mm, low, hours;
  };
  for (const std::string rule : {"asme-b31-3-331-1", "asme-viii-1-ucs-56-si"}) {
    for (const Row& row :
         {Row{30, 20, 565, 2}, Row{55, 25, 540, 4}, Row{85, 50, 510, 10.25}, Row{110, 75, 485, 20.5}}) {
      INFO(rule << ", " << row.lower_by);
      const Procedure procedure = made(rule, mm(row.mm), "P-No. 1 Gr. 2", row.lower_by);
      CHECK(hold_of(procedure).low.celsius() == row.low);
      CHECK(minutes_of(procedure) == Approx(row.hours * 60.0).epsilon(1e-12));
    }
    CHECK_THAT(refused(draft_of(rule, mm(25), "P-No. 3", 85)),
               Contains("has no hold that is 85 °C lower for P-No. 3"));
    CHECK_THAT(refused(draft_of(rule, mm(25), "P-No. 3", 85)), Contains("30, 55 °C"));
    CHECK_THAT(refused(draft_of(rule, mm(25), "P-No. 1 Gr. 1", 40)), Contains("no hold that is 40 °C lower"));
    CHECK_THAT(refused(draft_of(rule, mm(25), "P-No. 5A", 30)), Contains("leave out --lower-by"));
  }
}

TEST_CASE("AWS D1.1: times by steps of the thickness, worked out where no one rule expresses them") {
  // AWS D1.1 stress relief, time from memory: 15 min to 1/4 in; 15 min per 1/4 in or fraction to 2 in; above
  // that 2 h and 15 min per further inch or fraction.
  struct Row {
    double in, minutes;
  };
  for (const Row& row : {Row{0.2, 15}, Row{0.25, 15}, Row{0.26, 30}, Row{1.1, 75}, Row{2, 120}, Row{2.3, 135},
                         Row{3, 135}, Row{3.1, 150}}) {
    INFO(row.in << " in");
    const Draft draft =
        accepted(draft_of("aws-d1-1-stress-relief-si", inches(row.in), "carbon and low-alloy steel"));
    CHECK(std::get<double>(hold_of(draft.procedure).time_min.value()) == Approx(row.minutes * 60.0));
    CHECK(draft.stages.at(1).worked_out_for == inches(row.in));
  }
  const Procedure si = made("aws-d1-1-stress-relief-si", mm(40), "carbon and low-alloy steel");
  CHECK(rate_of(si, kHeat) == Approx(140.0));  // 5600/40
  const Procedure us = made("aws-d1-1-stress-relief", inches(2), "carbon and low-alloy steel");
  CHECK(rate_of(us, kHeat) == Approx(200.0 * 5.0 / 9.0));
}

TEST_CASE("EN 13445-4, PD 5500 and AS 4458: rates by thickness") {
  // EN 13445-4 and PD 5500, from memory: heating 220 to 25 mm, then 5500/t, at least 55; cooling 275, 6875/t,
  // 55. AS 4458: 200 to 25 mm, then 5000/t.
  struct Row {
    const char* rule;
    double mm, heat, cool;
  };
  for (const Row& row :
       {Row{"en-13445-4", 25, 220, 275}, Row{"en-13445-4", 12, 220, 275}, Row{"pd-5500", 50, 110, 137.5},
        Row{"pd-5500", 150, 55, 55}, Row{"as-4458-c-mn", 25, 200, 200}, Row{"as-4458-c-mn", 50, 100, 100}}) {
    INFO(row.rule << ", " << row.mm << " mm");
    const Procedure procedure = made(row.rule, mm(row.mm));
    CHECK(rate_of(procedure, kHeat) == Approx(row.heat).epsilon(1e-12));
    CHECK(rate_of(procedure, kCool) == Approx(row.cool).epsilon(1e-12));
  }
  CHECK(hold_of(made("pd-5500", mm(50))).spread_max->kelvin() == 40.0);
  CHECK_FALSE(hold_of(made("en-13445-4", mm(50))).spread_max);
}

TEST_CASE("AWS D1.1, category B: minimum preheat by thickness") {
  // AWS D1.1: 3-20 mm 0 C; 20-38 mm 10 C; 38-65 mm 65 C; above 65 mm 110 C.
  struct Row {
    double mm, low;
  };
  for (const Row& row :
       {Row{3, 0}, Row{20, 0}, Row{20.1, 10}, Row{38, 10}, Row{38.1, 65}, Row{65, 65}, Row{66, 110}}) {
    const Procedure procedure = made("aws-d1-1-preheat-category-b", mm(row.mm));
    REQUIRE(procedure.stages.size() == 1);
    CHECK(std::get<MaintainStage>(procedure.stages[0].specified).low.celsius() == row.low);
  }
}

TEST_CASE("what a rule does not cover is refused, and what it needs is named") {
  const auto without = [](const std::string& rule, const DraftChoices& choices) {
    return refused(draft_from(shipped_rule(rule), choices));
  };
  CHECK_THAT(refused(draft_of("aws-d1-1-preheat-category-b", mm(2.9))),
             Contains("does not cover a thickness of 2.9 mm") && Contains("nothing is extrapolated"));
  CHECK_THAT(refused(draft_of(kUcs, mm(38), "P-No. 8")),
             Contains("does not cover the material \"P-No. 8\"") && Contains("P-No. 5A"));
  CHECK(draft_of(kUcs, mm(38), "P-No. 8").problems().front().kind == ProblemKind::bad_input);
  CHECK_THAT(refused(draft_of(kUcs, mm(38))), Contains("no material is given"));
  CHECK_THAT(refused(draft_of("api-rp-934-c-dehydrogenation", mm(38), "P-No. 1")),
             Contains("does not depend on the material"));
  CHECK_THAT(without(kUcs, {std::nullopt, "P-No. 3", std::nullopt, std::nullopt}),
             Contains("no thickness is given"));
  CHECK_THAT(without("asme-b31-1-132-5", {mm(38), "", std::nullopt, std::nullopt}),
             Contains("gives no holding temperature and time") && Contains("--hold-time"));
  const OpenHold hold{Temperature::of_celsius(590.0), Temperature::of_celsius(640.0), 3600.0};
  CHECK_THAT(without(kUcs, {mm(38), "P-No. 3", std::nullopt, hold}), Contains("has a hold of its own"));
  // AWS D1.1: quenched and tempered steel at most 1100 F.
  CHECK_THAT(without("aws-d1-1-stress-relief", {mm(38), "quenched and tempered steel", std::nullopt, hold}),
             Contains("allows at most 1100 °F"));
  // A material is known by its letters and digits.
  CHECK(draft_of(kUcs, mm(38), "p-no.1 gr.1").ok());
}
