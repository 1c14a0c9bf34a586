// SPDX-License-Identifier: GPL-3.0-or-later
// Excluding time can make a verdict better. Where it does, the sentence beside the verdict says so.
#include <algorithm>
#include <map>
#include <memory>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "core/procedure/procedure_file.h"
#include "core/report/report.h"
#include "tests/core/evaluate/random_log.h"

using namespace soakwright;

namespace {

Analysis analysed(const Record& record, const Procedure& procedure) {
  Analysis analysis;
  analysis.record = std::make_shared<const Record>(record);
  analysis.procedure = std::make_shared<const Procedure>(procedure);
  analysis.verdicts = std::make_shared<const Verdicts>(evaluate(record, procedure, nullptr));
  return analysis;
}

bool any_better(const Verdicts& with, const Verdicts& without) {
  std::map<std::string, Verdict> before;
  for (const Requirement& requirement : without.requirements) before[requirement.id] = requirement.verdict;
  return with.verdict < without.verdict ||
         std::any_of(with.requirements.begin(), with.requirements.end(), [&](const Requirement& requirement) {
           const auto same = before.find(requirement.id);
           return same != before.end() && requirement.verdict < same->second;
         });
}

}  // namespace

TEST_CASE("A verdict that an exclusion makes better names the thermocouple beside it") {
  constexpr int kRecords = 300;
  Dice dice(20310402);
  int better = 0;
  for (int i = 0; i < kRecords; ++i) {
    const RandomLog log = random_log(dice);
    const auto procedure = parse_procedure(procedure_text(log.limits), "random.toml");
    REQUIRE(procedure);
    const Record whole = record_of(log);
    Record cut = whole;
    const std::size_t channel = dice.below(whole.channels.size());
    const double from = dice.between(0.0, whole.end_s());
    const double to =
        dice.chance(0.3) ? whole.end_s() : std::min(whole.end_s(), from + dice.between(60.0, 6000.0));
    cut.exclusions.push_back({channel, from, to, "junction came off the work"});
    const Analysis with = analysed(cut, procedure.value());
    const Analysis without = analysed(whole, procedure.value());
    CAPTURE(i, from, to);
    const std::string sentence = make_report(with).verdict_sentence;
    CHECK_THAT(sentence, Catch::Contains("Excluded by a person: " + whole.channels[channel].name + ", ") &&
                             Catch::Contains("(junction came off the work)"));
    CHECK_THAT(make_report(without).verdict_sentence, !Catch::Contains("xcluded"));
    if (any_better(*with.verdicts, *without.verdicts)) ++better;
  }
  // The records do show what the sentence is there for.
  CHECK(better > 10);
}
