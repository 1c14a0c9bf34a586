// A hold that adds up over several records of its weld.
#include <catch2/catch.hpp>

#include "tests/core/evaluate/evaluated.h"

using namespace soakwright;

namespace {

/// An previous record whose hold (stage 1) was so long for certain, and so long at most.
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
  return {cycle, {time}};
}

Verdicts evaluated(const std::string& procedure, const std::vector<PreviousCycle>& before,
                   const MadeRecord& made = plain_record()) {
  const Record record = made.record();
  const Procedure asked = procedure_of(procedure);
  const Job job = job_of("cycle = 3\n");
  return evaluate(record, asked, &job, *prepared_traces_for(record, asked, nullptr), before);
}

std::string added_hold(const std::string& time_min) {
  return hold_500_600_with("count = \"accumulated\"\ntime_min = \"" + time_min + "\"");
}

const Requirement& time_of(const Verdicts& verdicts) { return verdicts.requirements.front(); }

}  // namespace

TEST_CASE("Holds of previous records add up, certain to certain and possible to possible") {
  // This record holds 4,400 s; cycle 1 held 1,000 s, cycle 2 600 s for certain and 900 s at most: 6,000 s,
  // 6,300 s.
  const std::vector<PreviousCycle> before{earlier(1, 1000, 1000), earlier(2, 600, 900)};
  for (const auto& [asked, expected] :
       {std::pair{"6000 s", Verdict::met}, std::pair{"6001 s", Verdict::inconclusive},
        std::pair{"6300 s", Verdict::inconclusive}, std::pair{"6301 s", Verdict::not_met}}) {
    CAPTURE(asked);
    const Verdicts verdicts = evaluated(added_hold(asked), before);
    const Requirement& time = time_of(verdicts);
    CHECK(time.verdict == expected);
    CHECK(*time.measured == close_to(6000));
    CHECK(*time.certain_s == close_to(6000));
    CHECK(*time.possible_s == close_to(6300));
    REQUIRE(time.cycles.size() == 3);
    CHECK(time.cycles[1].cycle == 2);
    CHECK(time.cycles[2].cycle == 3);
    CHECK(time.cycles[2].certain_s == close_to(4400));
    CHECK_THAT(
        time.text,
        Catch::Contains(
            "added up over 3 records (cycle 1: 16 min 40 s, cycle 2: 10 min, cycle 3: 1 h 13 min 20 s)"));
  }
}

TEST_CASE("An previous record that starts or ends in its hold leaves the sum open") {
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

TEST_CASE("What an previous record failed by itself is noted, but for the time that adds up") {
  PreviousCycle before = earlier(1, 1000, 1000);
  const auto notes = [&] {
    std::string text;
    for (const Finding& finding : evaluated(added_hold("5000 s"), {before}).findings)
      text += finding.text + "\n";
    return text;
  };
  CHECK(notes().find("cycle 1") == std::string::npos);
  Requirement temperature_max;
  temperature_max.id = "record.temperature-max";
  temperature_max.kind = RequirementKind::temperature_max;
  temperature_max.verdict = Verdict::not_met;
  before.requirements.push_back(temperature_max);
  CHECK_THAT(notes(), Catch::Contains("cycle 1, evaluated by itself, is not met: record.temperature-max"));
}

TEST_CASE("The hold of another weld adds nothing") {
  const Verdicts verdicts = evaluated(added_hold("5000 s"), {earlier(1, 9000, 9000, "W-9")});
  CHECK(*time_of(verdicts).measured == close_to(4400));
}
