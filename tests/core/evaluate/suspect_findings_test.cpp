// SPDX-License-Identifier: GPL-3.0-or-later
// What a suspicion does to an evaluation: frozen readings of a hold must not count as a hold, a person may
// confirm or exclude them, and a warning is a note. That a competent person decides is common practice, no
// source.
#include "core/evaluate/suspect_findings.h"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "core/phases/course.h"
#include "core/wording/statement_words.h"
#include "tests/core/measure/made_procedure.h"
#include "tests/core/phases/drawn_record.h"

using namespace soakwright;

namespace {

constexpr double kHour = 3600.0;
constexpr double kFrom = 4.5 * kHour;
constexpr double kTo = 5.5 * kHour;
const std::vector<std::pair<double, double>> kRelief = {
    {0.0, 20.0}, {4.0 * kHour, 605.0}, {6.0 * kHour, 605.0}, {9.0 * kHour, 60.0}};

/// Six thermocouples, every 30 s, to a tenth of a degree, with 0.15 K of noise.
Record relief() {
  made::Drawing drawing;
  drawing.points = kRelief;
  drawing.interval_s = 30.0;
  drawing.noise_k = 0.15;
  return made::draw(drawing);
}

std::size_t row_at(const Record& record, double at_s) {
  return static_cast<std::size_t>(std::lower_bound(record.times_s.begin(), record.times_s.end(), at_s) -
                                  record.times_s.begin());
}

template <typename Reads>
void rewrite(Record& record, std::size_t channel, const Reads& reads) {
  std::vector<double> celsius;
  for (std::size_t row = 0; row < record.rows(); ++row) celsius.push_back(reads(row));
  record.channels[channel] = made::channel_of(record.channels[channel].name, celsius,
                                              std::vector<char>(celsius.size()), TemperatureUnit::celsius, 1);
}

/// Repeats its reading from kFrom to kTo.
void freeze(Record& record, std::size_t channel) {
  const Readings readings = record.channels[channel].readings;
  const std::size_t first = row_at(record, kFrom);
  const std::size_t last = row_at(record, kTo);
  rewrite(record, channel,
          [&](std::size_t row) { return *readings.celsius(row > first && row <= last ? first : row); });
}

void add_k(Record& record, std::size_t channel, double at_s, double height_k) {
  const Readings readings = record.channels[channel].readings;
  const std::size_t at = row_at(record, at_s);
  rewrite(record, channel,
          [&](std::size_t row) { return *readings.celsius(row) + (row == at ? height_k : 0.0); });
}

struct Outcome {
  Course course;
  Verdicts verdicts;
  [[nodiscard]] std::vector<Finding> notes() const {
    std::vector<Finding> notes;
    for (const Finding& finding : verdicts.findings)
      if (finding.kind == Finding::Kind::note && !finding.suspects.empty()) notes.push_back(finding);
    return notes;
  }
};

Outcome outcome_of(const Record& record, const std::string& record_limits = {}) {
  const Procedure procedure = procedure_of(
      record_limits + "[[stage]]\nkind = \"hold\"\nlow = 590\nhigh = 660\ntime_min = \"95 min\"\n");
  Outcome outcome;
  outcome.course = course_of(record);
  const auto ground =
      prepared_traces_for(record, procedure, nullptr, unmeasured_times(record, outcome.course));
  outcome.verdicts = evaluate(record, procedure, nullptr, *ground);
  note_suspects(record, outcome.course, outcome.verdicts);
  return outcome;
}

std::string text_of(const Finding& note, const Record& record) {
  return words(note.what, PrintedNumbers{TemperatureUnit::celsius, record});
}

bool has(const std::string& text, const std::string& piece) { return text.find(piece) != std::string::npos; }

}  // namespace

TEST_CASE("a clean hold is met without a note") {
  const Outcome outcome = outcome_of(relief());
  CHECK(outcome.verdicts.verdict == Verdict::met);
  CHECK(outcome.notes().empty());
}

TEST_CASE("a thermocouple that is stuck in the hold leaves it inconclusive, with a note") {
  Record record = relief();
  freeze(record, 2);
  const Outcome outcome = outcome_of(record);
  CHECK(outcome.verdicts.verdict == Verdict::inconclusive);
  REQUIRE(outcome.notes().size() == 1);
  const Finding note = outcome.notes().front();
  CHECK(note.requirement.empty());
  CHECK(note.channel == "TC3");
  CHECK(*note.from_s == Approx(kFrom).margin(120.0));
  CHECK(*note.to_s == Approx(kTo).margin(120.0));
  CHECK(has(text_of(note, record), "TC3 is suspect (stuck)"));
  CHECK(has(text_of(note, record), "no measurement"));

  SECTION("until a person confirms the readings") {
    record.confirmations.push_back({2, "stuck", "compared with a second recorder"});
    const Outcome confirmed = outcome_of(record);
    CHECK(confirmed.verdicts.verdict == Verdict::met);
    REQUIRE(confirmed.notes().size() == 1);
    CHECK(has(text_of(confirmed.notes().front(), record),
              "The job confirms the readings: compared with a second recorder."));
    CHECK(unused_confirmations(record, confirmed.course).empty());
  }
  SECTION("not when he confirms something else, which is a notice") {
    record.confirmations.push_back({2, "clipped", "seen"});
    record.confirmations.push_back({4, "stuck", "seen"});
    const Outcome other = outcome_of(record);
    CHECK(other.verdicts.verdict == Verdict::inconclusive);
    const std::vector<Notice> notices = unused_confirmations(record, other.course);
    REQUIRE(notices.size() == 2);
    CHECK(notices[0].code == "confirm-without-suspect");
    CHECK(notices[0].channel == "TC3");
    CHECK(notices[1].channel == "TC5");
  }
  SECTION("or excludes the time: then the others decide, and nothing is suspect") {
    record.exclusions.push_back({2, kFrom - 300.0, kTo + 300.0, "input card hung"});
    const Outcome excluded = outcome_of(record);
    CHECK(excluded.verdicts.verdict == Verdict::met);
    CHECK(excluded.notes().empty());
  }
}

TEST_CASE("a row that all repeat is one note without a channel, and the hold inconclusive") {
  Record record = relief();
  for (std::size_t channel = 0; channel < 6; ++channel) freeze(record, channel);
  const Outcome outcome = outcome_of(record);
  CHECK(outcome.verdicts.verdict == Verdict::inconclusive);
  REQUIRE(outcome.notes().size() == 1);
  CHECK_FALSE(outcome.notes().front().channel);
  CHECK(outcome.notes().front().suspects.size() == 6);
  CHECK(has(text_of(outcome.notes().front(), record), "TC1, TC2, TC3, TC4, TC5 and TC6 are suspect (stuck)"));
}

TEST_CASE("too few thermocouples only because some are suspect is inconclusive until a person decides") {
  const std::string at_least_six = "[record]\nthermocouples_min = 6\n";
  Record record = relief();
  freeze(record, 2);
  const auto verdict_of = [&] {
    for (const Requirement& requirement : outcome_of(record, at_least_six).verdicts.requirements)
      if (requirement.kind == RequirementKind::thermocouples) return requirement.verdict;
    throw std::logic_error("thermocouples are not evaluated");
  };
  CHECK(verdict_of() == Verdict::inconclusive);
  SECTION("confirmed: met") {
    record.confirmations.push_back({2, "stuck", "compared with a second recorder"});
    CHECK(verdict_of() == Verdict::met);
  }
  SECTION("excluded: not met") {
    record.exclusions.push_back({2, kFrom - 300.0, kTo + 300.0, "input card hung"});
    CHECK(verdict_of() == Verdict::not_met);
  }
  SECTION("another one excluded beside it: not met either way") {
    record.exclusions.push_back({4, kFrom, kTo, "came off the work"});
    CHECK(verdict_of() == Verdict::not_met);
  }
}

TEST_CASE("a spike in the hold is a warning only: the reading is evaluated") {
  Record record = relief();
  add_k(record, 1, 5.0 * kHour, 45.0);
  const Outcome outcome = outcome_of(record);
  CHECK(outcome.verdicts.verdict == Verdict::met);
  REQUIRE(outcome.notes().size() == 1);
  CHECK(has(text_of(outcome.notes().front(), record), "This is a warning only"));
}

TEST_CASE("a suspicion outside the evaluated stages is no finding") {
  Record record = relief();
  add_k(record, 1, 8.0 * kHour, 45.0);
  const Outcome outcome = outcome_of(record);
  CHECK(outcome.course.suspects.size() == 1);
  CHECK(outcome.notes().empty());
}
