// SPDX-License-Identifier: GPL-3.0-or-later
// Every shipped rule, drafted for each of its materials at five thicknesses, on records that just keep each
// limit and records that just miss it.
//
// The limits are those of the drafted text as it reads back; their figures are held against the published
// formulas in tests/core/procedure/rules/rule_draft_test.cpp.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/draft.h"
#include "core/evaluate/evaluation.h"
#include "core/procedure/procedure_file.h"
#include "tests/core/measure/made_record.h"
#include "tests/core/procedure/shipped_rules.h"

namespace soakwright {
namespace {

/// What a drafted procedure limits, in the core's units.
struct Limits {
  std::map<std::string, std::size_t> stage;  ///< by what it limits
  std::optional<double> start, heat, cool, low, high, time_s, heat_spread, hold_spread, maintain;
};

std::string id_of(const Limits& limits, const std::string& what, const char* name) {
  std::string id = "stage-";
  id += std::to_string(limits.stage.at(what));
  return id + "." + name;
}

Limits limits_of(const Procedure& procedure) {
  Limits limits;
  if (const auto& most = procedure.record_limits.start_temperature_max) limits.start = most->celsius();
  for (const Stage& stage : procedure.stages) {
    if (const auto* ramp = std::get_if<RampStage>(&stage.specified)) {
      const bool heat = ramp->direction == RampStage::Direction::heat;
      if (ramp->rate_max) {
        (heat ? limits.heat : limits.cool) =
            limit_at(*ramp->rate_max, procedure.thickness).value().celsius_per_hour();
        limits.stage[heat ? "heat" : "cool"] = stage.number;
      }
      if (ramp->spread_max) {
        REQUIRE(heat);
        limits.heat_spread = ramp->spread_max->kelvin();
        limits.stage["heat spread"] = stage.number;
      }
    } else if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) {
      limits.stage["hold"] = stage.number;
      limits.low = hold->low.celsius();
      if (hold->high) limits.high = hold->high->celsius();
      limits.time_s = limit_at(hold->time_min.value(), procedure.thickness).value();
      if (hold->spread_max) limits.hold_spread = hold->spread_max->kelvin();
    } else {
      limits.stage["maintain"] = stage.number;
      limits.maintain = std::get<MaintainStage>(stage.specified).low.celsius();
    }
  }
  return limits;
}

/// How a run is driven. Rates in °C/h, times in seconds.
struct Run {
  double start = 20.0, heat = 100.0, cool = 100.0, level = 0.0, hold_s = 0.0;
  double lag = 0.0;  ///< TC2 waits this far below TC1 before both come into the range
  double dip = 0.0;  ///< TC2 falls this far below TC1 in the middle of the hold
  double low = 0.0;  ///< of the holding range
};

/// Two thermocouples, a metre apart, every 30 s, with three decimals.
Record driven(const Run& run) {
  constexpr double kBelow = 8.0;  // where the laggard is waited for
  const double top = run.low - kBelow;
  const double per_minute = run.heat / 60.0;
  const double arrived = (top - run.start) / per_minute;
  const double slow = run.lag > 0.0 ? 0.5 : 1.0;
  // The laggard waits ten minutes, then catches up at half the rate.
  const double waited = run.lag > 0.0 ? 10.0 + run.lag / (per_minute * slow) : 0.0;
  const double up = arrived + waited + (run.level - top) / per_minute;
  const double dip_way = run.dip / (0.4 * std::min(run.heat, run.cool) / 60.0);
  // Where the level is far above the lower limit, the way up and down takes longer than the hold: a plateau
  // of ten minutes then.
  const double in_range = run.hold_s / 60.0 - (run.level - run.low) * (60.0 / run.heat + 60.0 / run.cool);
  const double plateau = in_range > 1.0 ? in_range : 10.0;
  const double down = run.dip > 0.0 ? up + plateau * 2.0 + dip_way * 2.0 : up + plateau;
  const double end = down + (run.level - 20.0) / (run.cool / 60.0);
  Knots first{{0, run.start},  {arrived, top},    {arrived + waited + 1e-9, top},
              {up, run.level}, {down, run.level}, {end, 20}};
  Knots second = first;
  if (run.lag > 0.0) {
    const double below = top - run.lag;
    second = {{0, run.start},
              {(below - run.start) / per_minute, below},
              {arrived + 10.0, below},
              {arrived + waited, top},
              {up, run.level},
              {down, run.level},
              {end, 20}};
  }
  if (run.dip > 0.0) {
    const double begin = up + plateau;
    second = {{0, run.start},
              {arrived, top},
              {up, run.level},
              {begin, run.level},
              {begin + dip_way, run.level - run.dip},
              {begin + 2.0 * dip_way, run.level},
              {down, run.level},
              {end, 20}};
  }
  return MadeRecord::every(30.0, static_cast<std::size_t>(end * 2.0) + 2)
      .course("TC1", first, 3)
      .course("TC2", second, 3)
      .at("TC1", 0.0)
      .at("TC2", 1.0)
      .record();
}

Record level_record(double celsius) {
  return MadeRecord::every(60.0, 61).course("TC1", {{0, celsius}}).period("welding", 600.0, 3000.0).record();
}

Verdict verdict_of(const Record& record, const Procedure& procedure, const std::string& id) {
  const Verdicts all = evaluate(record, procedure, nullptr);
  for (const Requirement& one : all.requirements)
    if (one.id == id) return one.verdict;
  FAIL("no requirement " << id);
  return Verdict::inconclusive;
}

struct Pair {
  std::string id;
  Run kept, missed;
};

/// A record inside and one outside of each limit; everything else well inside.
std::vector<Pair> pairs_of(const Limits& limits) {
  constexpr double kAboveLow = 4.0;
  Run usual;
  usual.heat = limits.heat.value_or(200.0) * 0.999;
  usual.cool = limits.cool.value_or(200.0) * 0.999;
  usual.low = limits.low.value();
  usual.level = usual.low + kAboveLow;
  usual.hold_s = limits.time_s.value() + 1.0;
  std::vector<Pair> pairs;
  const auto add = [&](const std::string& id, const auto& change, double kept, double missed) {
    Pair pair{id, usual, usual};
    change(pair.kept, kept);
    change(pair.missed, missed);
    pairs.push_back(pair);
  };
  const auto heat = [](Run& run, double value) { run.heat = value; };
  const auto cool = [](Run& run, double value) { run.cool = value; };
  const auto time = [](Run& run, double value) { run.hold_s = value; };
  const auto level = [](Run& run, double value) { run.level = value; };
  add(id_of(limits, "hold", "hold-time"), time, *limits.time_s + 1.0, *limits.time_s - 20.0);
  add(id_of(limits, "hold", "hold-time"), level, usual.level, usual.low - 0.1);
  if (limits.heat)
    add(id_of(limits, "heat", "heating-rate"), heat, *limits.heat * 0.9999, *limits.heat * 1.005);
  if (limits.cool)
    add(id_of(limits, "cool", "cooling-rate"), cool, *limits.cool * 0.9999, *limits.cool * 1.005);
  if (limits.high)
    add(id_of(limits, "hold", "over-temperature"), level, *limits.high - 0.01, *limits.high + 0.01);
  if (limits.start)
    add(
        "record.start-temperature", [](Run& run, double value) { run.start = value; }, *limits.start - 0.01,
        *limits.start + 0.01);
  if (limits.heat_spread)
    add(
        id_of(limits, "heat spread", "spread"), [](Run& run, double value) { run.lag = value; },
        *limits.heat_spread - 0.01, *limits.heat_spread + 0.01);
  if (limits.hold_spread)
    add(
        id_of(limits, "hold", "spread"), [](Run& run, double value) { run.dip = value; },
        *limits.hold_spread - 0.5, *limits.hold_spread + 0.5);
  return pairs;
}

void check_preheat(const Procedure& procedure, const Limits& limits) {
  const std::string id = id_of(limits, "maintain", "maintain");
  CHECK(verdict_of(level_record(*limits.maintain), procedure, id) == Verdict::met);
  CHECK(verdict_of(level_record(*limits.maintain - 0.1), procedure, id) == Verdict::not_met);
}

void check_each_limit(const Procedure& procedure) {
  const Limits limits = limits_of(procedure);
  if (limits.maintain) return check_preheat(procedure, limits);
  const std::vector<Pair> pairs = pairs_of(limits);
  const Verdicts usual = evaluate(driven(pairs.front().kept), procedure, nullptr);
  CHECK(usual.verdict == Verdict::met);
  std::set<std::string> required, tried;
  for (const Requirement& one : usual.requirements) required.insert(one.id);
  for (const Pair& pair : pairs) {
    INFO(pair.id);
    CHECK(verdict_of(driven(pair.kept), procedure, pair.id) == Verdict::met);
    CHECK(verdict_of(driven(pair.missed), procedure, pair.id) == Verdict::not_met);
    tried.insert(pair.id);
  }
  CHECK(tried == required);
}

std::vector<std::optional<double>> lower_temperatures(const PublishedRule& rule) {
  std::set<std::optional<double>> found{std::nullopt};
  for (const RuleStage& one : rule.stages)
    if (one.lower_by) found.insert(one.lower_by->in(rule.unit));
  return {found.begin(), found.end()};
}

/// Each procedure that the rule can give at five thicknesses, once, as it reads back.
std::vector<Procedure> drafts_of(const PublishedRule& rule) {
  std::vector<Procedure> drafts;
  const std::vector<std::string> materials =
      rule.materials.empty() ? std::vector<std::string>{""} : rule.materials;
  for (const double millimetres : {6.0, 20.0, 38.0, 75.0, 150.0})
    for (const std::string& material : materials)
      for (const auto& lower_by : lower_temperatures(rule)) {
        DraftRequest request{rule.name, mm(millimetres), material, lower_by, "", "", {}};
        auto text = draft_procedure(shipped_rules(), request);
        if (!text && rule.hold_is_left_open()) {
          request.hold = rule.unit == TemperatureUnit::fahrenheit ? "1060-1100" : "570-593";
          request.hold_time = "90 min";
          text = draft_procedure(shipped_rules(), request);
        }
        if (!text && lower_by) continue;  // not for this material
        const Procedure draft = accepted(parse_procedure(accepted(text), "draft.toml"));
        const bool known = std::any_of(drafts.begin(), drafts.end(), [&](const Procedure& one) {
          return one.thickness == draft.thickness &&
                 std::equal(one.stages.begin(), one.stages.end(), draft.stages.begin(), draft.stages.end(),
                            [](const Stage& a, const Stage& b) { return a.specified == b.specified; });
        });
        if (!known) drafts.push_back(draft);
      }
  return drafts;
}

}  // namespace

TEST_CASE(
    "each limit of each published rule separates a record that just keeps it from one that just misses it") {
  for (const PublishedRule& rule : shipped_rules().rules) {
    const std::vector<Procedure> drafts = drafts_of(rule);
    CHECK(drafts.size() >= 5);
    for (const Procedure& procedure : drafts) {
      INFO(rule.name << " at " << procedure.thickness->millimetres() << " mm");
      check_each_limit(procedure);
    }
  }
}

TEST_CASE("a draft says of every stage where it comes from, and what is from memory says so") {
  for (const PublishedRule& rule : shipped_rules().rules)
    for (const Procedure& procedure : drafts_of(rule))
      for (const Stage& stage : procedure.stages) {
        INFO(rule.name << ", stage " << stage.number);
        CHECK(stage.provenance.source);
        const bool by_user = stage.provenance.source != rule.provenance.source;
        if (!by_user) CHECK((stage.provenance.edition && stage.provenance.clause && stage.provenance.flag));
      }
  const auto text =
      accepted(draft_procedure(shipped_rules(), {"en-13445-4", mm(38), "", {}, "590-620", "95 min", {}}));
  CHECK_THAT(text, Catch::Contains("# From memory, check against your edition.\n"));
  CHECK_THAT(text, Catch::Contains("that is 144.74 °C/h"));  // 5500/38
  CHECK_THAT(text, Catch::Contains("source = \"given by the user, not by EN 13445-4\""));
}

}  // namespace soakwright
