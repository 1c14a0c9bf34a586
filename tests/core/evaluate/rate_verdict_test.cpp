// SPDX-License-Identifier: GPL-3.0-or-later
// Rate verdicts beyond the steepest window: rises after the hold, jumps, overall rates, spikes, control
// within the range. Worked by hand from the corners of the courses; all invented.
#include <cmath>

#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

std::string heat(const std::string& keys) { return "[[stage]]\nkind = \"heat\"\n" + keys + "\n"; }
std::string cool(const std::string& keys) { return "[[stage]]\nkind = \"cool\"\n" + keys + "\n"; }
std::string hold() { return hold_500_600_with("time_min = \"10 min\""); }

MadeRecord along(const Knots& knots, double interval_s = 60.0) {
  const double rows = knots.back().first * 60.0 / interval_s;
  return MadeRecord::every(interval_s, static_cast<std::size_t>(rows) + 1).course("TC1", knots);
}

/// Every text of the requirement and its findings.
std::string texts(const Evaluated& evaluated, const std::string& id) {
  std::string all = evaluated.text(id);
  for (const Finding& finding : evaluated.findings(id)) all += "\n" + evaluated.text(finding);
  return all;
}
bool says(const Evaluated& evaluated, const std::string& id, const std::string& words) {
  const std::string all = texts(evaluated, id);
  INFO(all);
  CHECK(all.find(words) != std::string::npos);
  return all.find(words) != std::string::npos;
}

}  // namespace

// ---- beside the hold ----

TEST_CASE("A burner relit in the cooling is held to the heating limit") {
  // Up and down at 5 K a minute; on the way down from 400 to 460 in 20 min (180 °C/h) but for a limit of 400.
  const Knots relit = {{0, 20}, {106, 550}, {136, 550}, {166, 400}, {186, 460}, {268, 50}};
  const auto told = [&](const std::string& limit) {
    return Evaluated(along(relit), heat("above = 300\nrate_max = " + limit) + hold());
  };
  CHECK(told("400").told("stage-1.heating-rate") == "300 met");
  // From 350 to 490 in 20 min: 420 °C/h.
  const Knots steep = {{0, 20}, {106, 550}, {136, 550}, {176, 350}, {196, 490}, {276, 90}};
  const Evaluated evaluated(along(steep), heat("above = 300\nrate_max = 400") + hold());
  CHECK(evaluated.told("stage-1.heating-rate") == "420 not met");
  says(evaluated, "stage-1.heating-rate", "after the hold");
}

TEST_CASE("A trip on the way up is held to the cooling limit") {
  // From 400 down to 320 in 16 min: 300 °C/h, against 200 allowed and 150 in the cooling itself.
  const Knots trip = {{0, 20}, {76, 400}, {92, 320}, {138, 550}, {168, 550}, {368, 50}};
  const Evaluated evaluated(along(trip), hold() + cool("above = 300\nrate_max = 200"));
  CHECK(evaluated.told("stage-2.cooling-rate") == "300 not met");
  says(evaluated, "stage-2.cooling-rate", "before the hold");
  // With a hold before it the trip lies in that hold's cooling.
  CHECK(
      Evaluated(along(trip), hold() + cool("above = 300\nrate_max = 300")).verdict("stage-2.cooling-rate") ==
      "met");
}

TEST_CASE("Beside the hold only slopes in the stage's direction count, and unknown time there does not") {
  // Cooling at 150 °C/h after the hold: the heat stage has no rise there and takes its own.
  const Knots plain = {{0, 20}, {106, 550}, {136, 550}, {336, 50}};
  const Evaluated evaluated(along(plain).missing("TC1", 160 * 60, 175 * 60),
                            heat("above = 300\nrate_max = 400") + hold());
  CHECK(evaluated.told("stage-1.heating-rate") == "300 met");
  CHECK(evaluated.findings("stage-1.heating-rate").empty());
  // A record that begins in the hold shows no heating: rises after it do not stand in for it.
  const Knots late = {{0, 550}, {30, 550}, {60, 400}, {100, 480}, {186, 50}};
  const Evaluated unseen(along(late), heat("rate_max = 400") + hold());
  CHECK(unseen.verdict("stage-1.heating-rate") == "inconclusive");
}

// ---- control within the range ----

TEST_CASE("Control within the hold's range is no ramp, an excursion from it is") {
  // In the hold from 540 to 570 and back in 10 min each: 180 °C/h; ramps of 60 and 50 °C/h.
  Knots control = {{0, 20}, {520, 540}};
  for (int i = 0; i < 4; ++i) {
    control.emplace_back(control.back().first + 10, 570);
    control.emplace_back(control.back().first + 10, 540);
  }
  control.emplace_back(control.back().first + 600, 40);
  const std::string limits = heat("above = 300\nrate_max = 70") + hold() + cool("above = 300\nrate_max = 70");
  const Evaluated evaluated(along(control), limits);
  CHECK(evaluated.verdict("stage-1.heating-rate") == "met");
  CHECK(*evaluated["stage-1.heating-rate"].measured == close_to(60, 0.1));
  CHECK(evaluated.verdict("stage-3.cooling-rate") == "met");
  CHECK(*evaluated["stage-3.cooling-rate"].measured == close_to(50, 0.1));  // readings to 0.1 °C
  // 20 min at 480 in the hold's middle: down and up by 10 K a minute below 500.
  Knots dip = {{0, 20}, {520, 540}, {560, 540}, {566, 480}, {586, 480}, {592, 540}, {640, 540}, {1240, 40}};
  const Evaluated deep(along(dip, 10), "[evaluation]\nrate_window = \"90 s\"\n" + limits);
  CHECK(deep.verdict("stage-1.heating-rate") == "not met");
  CHECK(*deep["stage-1.heating-rate"].measured == close_to(600, 2));
  CHECK(deep.verdict("stage-3.cooling-rate") == "not met");
  CHECK(*deep["stage-3.cooling-rate"].measured == close_to(600, 2));
}

// ---- parts that are no longer than their window ----

TEST_CASE("A part that is one window is told with its own length") {
  // 10 K a minute from 350 to 450 and down again: from 405 to 415 in 1 min, 7 rows. Else 200 °C/h.
  const Knots peak = {{0, 20}, {99, 350}, {109, 450}, {119, 350}, {179, 550}, {209, 550}, {309, 50}};
  const std::string limits = heat("above = 405\nbelow = 415\nrate_max = 500") + hold();
  // Shorter than in_range_min: no window, and it runs through the whole range of the stage.
  const Evaluated unseen(along(peak, 10), limits);
  CHECK(unseen.verdict("stage-1.heating-rate") == "inconclusive");
  const Evaluated whole(along(peak, 10), "[evaluation]\nin_range_min = \"1 min\"\n" + limits);
  const Requirement& rate = whole["stage-1.heating-rate"];
  CHECK(whole.verdict("stage-1.heating-rate") == "not met");
  CHECK(*rate.measured == close_to(600, 2));  // readings to 0.1 °C
  CHECK(*rate.to_s - *rate.from_s == close_to(60));
  says(whole, "stage-1.heating-rate", "over 1 min");
  CHECK(texts(whole, "stage-1.heating-rate").find("over 15 min") == std::string::npos);
}

TEST_CASE("A part shorter than in_range_min is not evaluated") {
  // 60 °C/h; at 260 °C a contact reads 301 to 313 for 5 s, 3 K more each second: 10,800 °C/h, five readings.
  std::vector<double> values;
  for (int row = 0; row < 3600 * 6; ++row)
    values.push_back(on_course({{0, 200}, {350, 550}, {360, 550}}, row));
  for (std::size_t i = 0; i < 5; ++i) values[3600 + i] = 301.0 + 3.0 * static_cast<double>(i);
  const MadeRecord made = MadeRecord::every(1, values.size()).column("TC1", values);
  const std::string limits = heat("above = 300\nrate_max = 70") + hold_500_600_with("time_min = \"1 min\"");
  const Evaluated evaluated(made, limits);
  CHECK(evaluated.verdict("stage-1.heating-rate") == "met");
  CHECK(*evaluated["stage-1.heating-rate"].measured == close_to(60, 0.1));
  // 4.8 s above 300 are a part where in_range_min is shorter.
  CHECK(Evaluated(made, "[evaluation]\nin_range_min = \"2 s\"\n" + limits).verdict("stage-1.heating-rate") ==
        "not met");
}

// ---- jumps ----

TEST_CASE("A jump that no window shows leaves the rate inconclusive") {
  // 280 to 480 in 6 min and back: 2,000 °C/h, one window over the part above 300, slope 0.
  const Knots peak = {{0, 20}, {78, 280}, {84, 480}, {90, 280}, {180, 550}, {210, 550}, {400, 50}};
  const Evaluated evaluated(along(peak, 30), heat("above = 300\nrate_max = 220") + hold());
  CHECK(evaluated.verdict("stage-1.heating-rate") == "inconclusive");
  CHECK(evaluated["stage-1.heating-rate"].margin > 0.0);
  says(evaluated, "stage-1.heating-rate", "rose by 180.0 °C in 5 min 24 s");
  // No longer than L times the window: 220 °C/h · 15 min = 55 K.
  const Knots low = {{0, 20}, {78, 280}, {84, 354}, {90, 280}, {180, 550}, {210, 550}, {400, 50}};
  CHECK(Evaluated(along(low, 30), heat("above = 300\nrate_max = 220") + hold())
            .verdict("stage-1.heating-rate") == "met");
  // Where a window says not met, a jump is not told beside it.
  const Knots both = {{0, 20}, {78, 280}, {84, 480}, {90, 280}, {120, 550}, {210, 550}, {400, 50}};
  const Evaluated failed(along(both, 30), heat("above = 300\nrate_max = 220") + hold());
  CHECK(failed.verdict("stage-1.heating-rate") == "not met");
  CHECK(texts(failed, "stage-1.heating-rate").find("rose by") == std::string::npos);
}

TEST_CASE("Eight standard deviations of the readings are no jump") {
  // A level of 0.1/√12 from the last digit: the bound is 55 + 0.231 K. Above 300 the peak rises by h.
  const auto verdict = [](double top) {
    const Knots peak = {{0, 20}, {78, 280}, {84, top}, {90, 280}, {180, 550}, {210, 550}, {400, 50}};
    return Evaluated(along(peak, 30), heat("above = 300\nrate_max = 220") + hold())
        .verdict("stage-1.heating-rate");
  };
  CHECK(verdict(355.2) == "met");
  CHECK(verdict(355.3) == "inconclusive");
}

// ---- overall rates ----

TEST_CASE("An overall rate certainly above the limit makes the rate not met, though no window shows it") {
  // Every 10 min: W is 80 min. 300 at 56 min, 500 at 96 min, 300 °C/h; the windows reach into nothing else,
  // but the part is one window of 5 samples.
  const Knots ramp = {{0, 20}, {106, 550}, {226, 550}, {546, 70}};
  const auto with_limit = [&](const std::string& limit) {
    return Evaluated(along(ramp, 1200), "[evaluation]\ninterpolate_max = \"1 h\"\n" +
                                            heat("above = 300\nrate_max = " + limit) + hold());
  };
  // Every 20 min: rows at 60, 80 min in the ramp: nothing to fit.
  const Evaluated fast = with_limit("200");
  CHECK_FALSE(fast["stage-1.heating-rate"].measured);
  CHECK(fast.verdict("stage-1.heating-rate") == "not met");
  says(fast, "stage-1.heating-rate", "over the whole ramp");
  CHECK(fast.short_of("stage-1.heating-rate") == "TC1 is 100.0 °C/h too fast over the whole ramp.");
  CHECK(with_limit("400").verdict("stage-1.heating-rate") == "inconclusive");
}

TEST_CASE("An overall rate is certain from 4·√2·s/Δt above the limit on") {
  // Rows every 20 min; 20 to 500 would be crossed at 96 min on the ramp; the line from 80 min (420) to 100
  // min (520) is straight. 300 at 56 min: Δt = 40 min = 2,400 s. s = 0.1/√12: 4·√2·s/Δt = 0.245 °C/h.
  const Knots ramp = {{0, 20}, {106, 550}, {226, 550}, {546, 70}};
  const auto verdict = [&](const std::string& limit) {
    const Evaluated evaluated(along(ramp, 1200), "[evaluation]\ninterpolate_max = \"1 h\"\n" +
                                                     heat("above = 300\nrate_max = " + limit) + hold());
    CHECK(*evaluated["stage-1.heating-rate"].overall[0].second == close_to(300));
    return evaluated.verdict("stage-1.heating-rate");
  };
  const double noise = 4 * std::sqrt(2.0) * 0.1 / std::sqrt(12.0) / 2400 * 3600;
  REQUIRE(noise == close_to(0.245, 0.0005));
  CHECK(verdict("299.75") == "not met");
  CHECK(verdict("299.76") == "inconclusive");
}

TEST_CASE("The overall rate of a stage that ends below the hold's range ends with the stage") {
  // 300 °C/h from 300 to 420, 600 °C/h from there on: two heat stages with a limit each.
  const Knots two = {{0, 20}, {56, 300}, {80, 420}, {93, 550}, {200, 550}, {300, 50}};
  const Evaluated evaluated(along(two, 30), heat("above = 300\nbelow = 420\nrate_max = 310\nrate_min = 290") +
                                                heat("above = 420\nrate_max = 610") + hold());
  CHECK(*evaluated["stage-1.heating-rate"].overall[0].second == close_to(300));
  CHECK(evaluated.verdict("stage-1.heating-rate") == "met");
  CHECK(evaluated.verdict("stage-1.heating-rate-min") == "met");
  CHECK(*evaluated["stage-2.heating-rate"].overall[0].second == close_to(600));
  CHECK(evaluated.verdict("stage-2.heating-rate") == "met");
}

TEST_CASE("Rates at the edge of the heated band are measured, and no limit applies to them") {
  // 300 °C/h on the work; at the edge 450 °C/h up to 490, below the hold's range.
  MadeRecord made = along({{0, 20}, {106, 550}, {226, 550}, {326, 50}});
  made.course("TC2", {{0, 70}, {56, 490}, {226, 490}, {326, 50}}).at_edge("TC2");
  const Evaluated evaluated(made, heat("above = 100\nrate_max = 310\nrate_min = 290") + hold());
  CHECK(evaluated.told("stage-1.heating-rate") == "300 met");
  const Requirement& rate = evaluated["stage-1.heating-rate"];
  REQUIRE(rate.edge_steepest.size() == 1);
  CHECK(rate.edge_steepest[0].first == "TC2");
  CHECK(*rate.edge_steepest[0].second == close_to(450));
  REQUIRE(rate.edge_overall.size() == 1);
  CHECK_FALSE(rate.edge_overall[0].second);  // never in the hold's range
  CHECK(evaluated.verdict("stage-1.heating-rate-min") == "met");
}

TEST_CASE(
    "A least rate is inconclusive where one channel has no overall rate, not met where one is too slow") {
  MadeRecord made = along({{0, 20}, {106, 550}, {226, 550}, {326, 50}});
  made.course("TC2", {{0, 320}, {46, 550}, {226, 550}, {326, 50}});  // begins above 300
  CHECK(Evaluated(made, hold() + cool("above = 300\nrate_min = 100")).verdict("stage-2.cooling-rate-min") ==
        "met");
  const auto heating = [&](const std::string& least) {
    return Evaluated(made, heat("above = 300\nrate_min = " + least) + hold());
  };
  CHECK(heating("290").verdict("stage-1.heating-rate-min") == "inconclusive");
  says(heating("290"), "stage-1.heating-rate-min", "TC2 has no overall heating rate");
  CHECK(heating("310").verdict("stage-1.heating-rate-min") == "not met");
}

// ---- spikes ----

TEST_CASE("One spike neither fails a run nor hides a steep ramp") {
  // Rows every 30 s; a single reading 60 K high.
  const auto with_spike = [](double rate) {
    const double up = 530.0 / rate * 60.0;
    MadeRecord made = along({{0, 20}, {up, 550}, {up + 60, 550}, {up + 260, 50}}, 30);
    std::vector<double> values;
    for (std::size_t row = 0; row < static_cast<std::size_t>((up + 260) * 2) + 1; ++row)
      values.push_back(
          on_course({{0, 20}, {up, 550}, {up + 60, 550}, {up + 260, 50}}, 30.0 * static_cast<double>(row)));
    values[static_cast<std::size_t>(up)] += 60.0;  // half way up
    return MadeRecord::every(30, values.size()).column("TC1", values);
  };
  const std::string limits = heat("above = 200\nrate_max = 220") + hold();
  const Evaluated slow(with_spike(200), limits);
  CHECK(slow.verdict("stage-1.heating-rate") == "inconclusive");
  says(slow, "stage-1.heating-rate", "Without a tenth of its readings");
  const Evaluated fast(with_spike(250), limits);
  CHECK(fast.verdict("stage-1.heating-rate") == "not met");
}

// ---- what the record does not show ----

TEST_CASE("A thermocouple excluded to the record's end is not the one whose cooling is not shown") {
  MadeRecord made = plain_record();
  made.course("TC2", plain_run());
  const std::string limits = hold() + cool("above = 300\nrate_max = 600");
  // TC2 comes off in the hold, at 100 min.
  MadeRecord lost = MadeRecord(made).missing("TC2", 100 * 60, 1e9);
  CHECK(Evaluated(lost, limits).verdict("stage-2.cooling-rate") == "inconclusive");
  CHECK(Evaluated(MadeRecord(made).exclusion("TC2", 100 * 60, 180 * 60), limits)
            .verdict("stage-2.cooling-rate") == "met");
}
