// SPDX-License-Identifier: GPL-3.0-or-later
// A hold that adds up over several records of its weld.
#include <cmath>

#include <catch2/catch.hpp>

#include "core/wording/requirement_text.h"
#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

/// A previous record whose hold (stage 1) was so long for certain, and so long at most.
PreviousCycle earlier(int cycle, double certain_s, std::optional<double> possible_s,
                      const std::optional<std::string>& weld = std::nullopt) {
  Requirement time;
  time.id = "stage-1.hold-time";
  time.kind = RequirementKind::hold_time;
  time.stage = 1;
  time.weld = weld;
  time.certain_s = certain_s;
  time.possible_s = possible_s;
  time.verdict = Verdict::not_met;
  return {cycle, {time}, nullptr, nullptr, nullptr};
}

Verdicts evaluated(const std::string& procedure, const std::vector<PreviousCycle>& before,
                   const MadeRecord& made = plain_record()) {
  const Record record = made.record();
  const Procedure specified = procedure_of(procedure);
  const Job job = job_of("cycle = 3\n");
  return evaluate(record, specified, &job, *prepared_traces_for(record, specified, nullptr), before);
}

std::string added_hold(const std::string& time_min) {
  return hold_500_600_with("count = \"accumulated\"\ntime_min = \"" + time_min + "\"");
}

const Requirement& time_of(const Verdicts& verdicts) { return verdicts.requirements.front(); }

/// A requirement in words, its moments those of the plain record.
std::string text_of(const Requirement& requirement, const std::string& procedure) {
  const Record record = plain_record().record();
  return requirement_text(requirement, procedure_of(procedure), {TemperatureUnit::celsius, record});
}
std::string text_of(const Finding& finding, const std::string& procedure) {
  const Record record = plain_record().record();
  return finding_text(finding, nullptr, procedure_of(procedure), {TemperatureUnit::celsius, record});
}

}  // namespace

TEST_CASE("Holds of previous records add up, certain to certain and possible to possible") {
  // This record holds 4,400 s; cycle 1 held 1,000 s, cycle 2 600 s for certain and 900 s at most: 6,000 s,
  // 6,300 s.
  const std::vector<PreviousCycle> before{earlier(1, 1000, 1000), earlier(2, 600, 900)};
  for (const auto& [specified, expected] :
       {std::pair{"6000 s", Verdict::met}, std::pair{"6001 s", Verdict::inconclusive},
        std::pair{"6300 s", Verdict::inconclusive}, std::pair{"6301 s", Verdict::not_met}}) {
    CAPTURE(specified);
    const Verdicts verdicts = evaluated(added_hold(specified), before);
    const Requirement& time = time_of(verdicts);
    CHECK(time.verdict == expected);
    CHECK(*time.measured == close_to(6000));
    CHECK(*time.certain_s == close_to(6000));
    CHECK(*time.possible_s == close_to(6300));
    REQUIRE(time.cycles.size() == 3);
    CHECK(time.cycles[1].cycle == 2);
    CHECK(time.cycles[2].cycle == 3);
    CHECK(time.cycles[2].certain_s == close_to(4400));
    CHECK_THAT(text_of(time, added_hold(specified)),
               Catch::Contains("in total over 3 records") &&
                   Catch::Contains("Cycle 1: 16 min 40 s. Cycle 2: 10 min. Cycle 3: 1 h 13 min 20 s."));
  }
}

TEST_CASE("A previous record that starts or ends in its hold leaves the sum open") {
  const Verdicts verdicts = evaluated(added_hold("6000 s"), {earlier(2, 1000, std::nullopt)});
  CHECK(time_of(verdicts).verdict == Verdict::inconclusive);
  CHECK_FALSE(time_of(verdicts).possible_s);
  // Enough is enough, however the earlier one ended.
  CHECK(time_of(evaluated(added_hold("5400 s"), {earlier(2, 1000, std::nullopt)})).verdict == Verdict::met);
}

TEST_CASE("A continuous hold is evaluated on its own record, whatever came before") {
  const Verdicts verdicts = evaluated(hold_500_600_with("time_min = \"5000 s\""), {earlier(1, 9000, 9000)});
  CHECK(time_of(verdicts).verdict == Verdict::not_met);
  CHECK(*time_of(verdicts).measured == close_to(4400));
  CHECK(time_of(verdicts).cycles.empty());
}

TEST_CASE("A record in which no hold was found still adds what came before") {
  const MadeRecord cold = MadeRecord::every(60, 61).course("TC1", {{0, 20}, {60, 400}});
  CHECK(time_of(evaluated(added_hold("1000 s"), {earlier(1, 1000, 1000)}, cold)).verdict == Verdict::met);
  const Verdicts short_of_it = evaluated(added_hold("1001 s"), {earlier(1, 1000, 1000)}, cold);
  CHECK(time_of(short_of_it).verdict == Verdict::not_met);
  REQUIRE_FALSE(short_of_it.findings.empty());
}

TEST_CASE("What a previous record failed by itself is noted, but for the time that adds up") {
  PreviousCycle before = earlier(1, 1000, 1000);
  const auto notes = [&] {
    std::string text;
    for (const Finding& finding : evaluated(added_hold("5000 s"), {before}).findings)
      text += text_of(finding, added_hold("5000 s")) + "\n";
    return text;
  };
  CHECK(notes().find("Cycle 1") == std::string::npos);
  Requirement temperature_max;
  temperature_max.id = "record.temperature-max";
  temperature_max.kind = RequirementKind::temperature_max;
  temperature_max.verdict = Verdict::not_met;
  before.requirements.push_back(temperature_max);
  CHECK_THAT(notes(), Catch::Contains("Cycle 1 on its own is not met (record.temperature-max)"));
}

TEST_CASE("The hold of another weld adds nothing") {
  const Verdicts verdicts = evaluated(added_hold("5000 s"), {earlier(1, 9000, 9000, "W-9")});
  CHECK(*time_of(verdicts).measured == close_to(4400));
}

namespace {

/// A made record evaluated by itself, as the cycle before.
PreviousCycle evaluated_before(int cycle, const MadeRecord& made, const std::string& procedure) {
  const auto record = std::make_shared<const Record>(made.record());
  const Procedure specified = procedure_of(procedure);
  const auto ground = prepared_traces_for(*record, specified, nullptr);
  const Verdicts verdicts = evaluate(*record, specified, nullptr, *ground);
  return {cycle, verdicts.requirements, record, nullptr, ground};
}

const Requirement& of(const Verdicts& verdicts, const std::string& id) {
  for (const Requirement& requirement : verdicts.requirements)
    if (requirement.id == id) return requirement;
  FAIL("no requirement " << id);
  return verdicts.requirements.front();
}

}  // namespace

TEST_CASE("time_max of an accumulated hold is held against the time in all records, by thermocouple") {
  // TC1 is at or above 500 for 4,400 s in each; TC2 for 5,600 s in the first record and 4,400 s in the
  // second.
  MadeRecord first = plain_record();
  first.course("TC2", {{0, 110}, {50, 560}, {130, 560}, {180, 110}});
  MadeRecord second = plain_record();
  second.course("TC2", plain_run());
  for (const auto& [most, verdict] :
       {std::pair{"10000 s", Verdict::met}, std::pair{"9999 s", Verdict::not_met}}) {
    const std::string procedure =
        hold_500_600_with("count = \"accumulated\"\ntime_max = \"" + std::string(most) + "\"");
    const Verdicts verdicts = evaluated(procedure, {evaluated_before(2, first, procedure)}, second);
    const Requirement& time = of(verdicts, "stage-1.hold-time-max");
    CHECK(time.verdict == verdict);
    CHECK(time.channel == "TC2");
    CHECK(*time.measured == close_to(10000));
  }
}

TEST_CASE("A thermocouple that some record does not have leaves time_max over all open") {
  MadeRecord first = MadeRecord::every(60, 181).course("TC8", plain_run());
  const std::string procedure = hold_500_600_with("count = \"accumulated\"\ntime_max = \"9000 s\"");
  CHECK(of(evaluated(procedure, {evaluated_before(2, first, procedure)}), "stage-1.hold-time-max").verdict ==
        Verdict::inconclusive);
}

TEST_CASE("A continuous hold's time_max is that of its own record") {
  const std::string procedure = hold_500_600_with("time_max = \"4400 s\"");
  CHECK(of(evaluated(procedure, {evaluated_before(2, plain_record(), procedure)}), "stage-1.hold-time-max")
            .verdict == Verdict::met);
}

TEST_CASE("Tempering of an accumulated hold is carried along over all records") {
  // One hour at 600 and another: P = 873.15 · 20 = 17.463, after two hours 873.15 · (20 + log10 2) = 17.726.
  const MadeRecord hour = MadeRecord::every(60, 61).column("TC1", std::vector<double>(61, 600));
  const std::string stage = "[[stage]]\nkind = \"hold\"\nlow = 590\ncount = \"accumulated\"\n";
  const std::string procedure = stage + "tempering_min = 17.72\ntempering_max = 17.73\n";
  const Verdicts one = evaluated(procedure, {}, hour);
  CHECK(of(one, "stage-1.tempering-min").verdict == Verdict::not_met);
  const Verdicts two = evaluated(procedure, {evaluated_before(2, hour, procedure)}, hour);
  CHECK(of(two, "stage-1.tempering-min").verdict == Verdict::met);
  CHECK(of(two, "stage-1.tempering-max").verdict == Verdict::met);
  CHECK(*of(two, "stage-1.tempering-min").measured == close_to(873.15 * (20 + std::log10(2.0)) / 1000, 1e-9));
  CHECK_THAT(text_of(of(two, "stage-1.tempering-min"), procedure), Catch::Contains("All records"));
  // What is shown stays the record's own.
  CHECK(*two.tempering.front().parameter == close_to(873.15 * 20 / 1000, 1e-9));
  // A thermocouple that the earlier record does not have: more can only have been added.
  const MadeRecord other = MadeRecord::every(60, 61).column("TC8", std::vector<double>(61, 600));
  const Verdicts unknown = evaluated(procedure, {evaluated_before(2, other, procedure)}, hour);
  CHECK(of(unknown, "stage-1.tempering-min").verdict == Verdict::inconclusive);
  CHECK(of(unknown, "stage-1.tempering-max").verdict == Verdict::inconclusive);
}

TEST_CASE("Tempering counts all records of the weld, however the hold time is counted") {
  // The metal keeps what each record gave it: two hours at 600 are above a largest parameter of 17.6.
  const MadeRecord hour = MadeRecord::every(60, 61).column("TC1", std::vector<double>(61, 600));
  const std::string procedure =
      "[[stage]]\nkind = \"hold\"\nlow = 590\ntime_min = \"1 h\"\ntempering_min = 17.6\ntempering_max = "
      "17.6\n";
  const Verdicts one = evaluated(procedure, {}, hour);
  CHECK(of(one, "stage-1.tempering-max").verdict == Verdict::met);
  CHECK(of(one, "stage-1.tempering-min").verdict == Verdict::not_met);
  const Verdicts two = evaluated(procedure, {evaluated_before(2, hour, procedure)}, hour);
  CHECK(of(two, "stage-1.tempering-max").verdict == Verdict::not_met);
  CHECK(of(two, "stage-1.tempering-min").verdict == Verdict::met);
  CHECK_THAT(text_of(of(two, "stage-1.tempering-max"), procedure),
             Catch::Contains("All records of the weld are counted together") &&
                 Catch::Contains("This record alone gives 17.463."));
}

TEST_CASE("A thermocouple that only a previous record has is not passed over") {
  const MadeRecord hour = MadeRecord::every(60, 61).column("TC1", std::vector<double>(61, 600));
  MadeRecord both = hour;
  both.column("TC8", std::vector<double>(61, 640));
  const auto max = [&](const std::string& limit) {
    const std::string procedure = "[[stage]]\nkind = \"hold\"\nlow = 590\ntempering_max = " + limit + "\n";
    const Verdicts verdicts = evaluated(procedure, {evaluated_before(2, both, procedure)}, hour);
    return of(verdicts, "stage-1.tempering-max");
  };
  // TC8 had 913.15 · 20 = 18.263 in the previous record alone, TC1 17.726 in both together.
  CHECK(max("18.2").verdict == Verdict::not_met);
  CHECK(max("18.2").channel == "TC8");
  CHECK(max("18.4").verdict == Verdict::inconclusive);
}

TEST_CASE("Records of one cycle are told as its parts") {
  const Verdicts verdicts = evaluated(added_hold("6000 s"), {earlier(2, 1000, 1000), earlier(3, 600, 600)});
  CHECK_THAT(text_of(time_of(verdicts), added_hold("6000 s")),
             Catch::Contains("Cycle 2: 16 min 40 s. Cycle 3, part 1: 10 min. Cycle 3, part 2"));
}
