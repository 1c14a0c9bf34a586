// SPDX-License-Identifier: GPL-3.0-or-later
// No source: what a sentence looks like is our own.
#include "core/wording/statement_words.h"

#include <catch2/catch.hpp>

#include "core/wording/notice_words.h"
#include "core/wording/sections/budget_words.h"

using namespace soakwright;

namespace {

std::string said(const Statement& statement) {
  Record record;
  record.times_s = {0.0, 60.0};
  record.interval_s = 60.0;
  return words(statement, PrintedNumbers{TemperatureUnit::celsius, record});
}

}  // namespace

TEST_CASE("every sentence has words, and its places are numbered without a hole") {
  for (std::size_t i = 1; i < kSentences; ++i) {
    const auto sentence = static_cast<Sentence>(i);
    const std::string_view pattern = pattern_of(sentence);
    INFO(i << ": " << pattern);
    REQUIRE_FALSE(pattern.empty());
    CHECK(pattern.ends_with('.'));
    for (std::size_t place = 0; place < arguments_of(sentence); ++place)
      CHECK(pattern.find(std::string{"{"} + std::to_string(place)) != std::string_view::npos);
  }
}

TEST_CASE("a part in brackets is said where its argument is given; the name of a table keeps its brackets") {
  const Temperature limit = Temperature::of_celsius(650.0);
  const Statement met =
      state(Sentence::highest_reading, std::string{"TC1"}, limit, AtMoment{60.0}, std::string{"650 °C"});
  CHECK(said(met).ends_with("limit 650 °C."));
  CHECK_THAT(said(state(Sentence::leap_stays_a_gap)), Catch::Contains("[import] of the job"));
  CHECK(said(state(Sentence::time_range_beyond_record, FileLine{1204}, AtStamp{0.0}, AtStamp{60.0})) ==
        "The job, line 1204: [time_range] reaches beyond the record; it counts from 0:00:00 to 0:01:00.");
}

TEST_CASE("a count has its noun, and what a file has is said to the letter") {
  CHECK(said(state(Sentence::cells_of_one_text, Count::of(1), AsWritten{"----"})) ==
        "1 cell holds '----' and no number; taken as missing.");
  const std::vector<CountedText> texts{{1200, "OPEN"}, {3, ""}};
  CHECK(said(state(Sentence::cells_of_many_texts, Count::of(1210), texts, Count::of(7))) ==
        "1,210 cells hold no number: 1200 × 'OPEN', 3 × '', 7 with other texts; taken as missing.");
  CHECK(said(state(Sentence::lines_without_time, AsWritten{""})) ==
        "Lines without a readable time are left out, the first: ''.");
  CHECK(said(state(Sentence::name_suggests, AsWritten{"SP-101"}, OneOfContent{ColumnContent::set_point})) ==
        "The name 'SP-101' suggests a set point, but the column reads like a thermocouple and is evaluated. "
        "If it is none, give its role in the job.");
  CHECK(said(state(Sentence::column_not_evaluated, ColumnContent::alarm)) ==
        "This column is not evaluated: alarm or event.");
}

TEST_CASE("a file warning has one text, with the digits of its stamps") {
  Record record;
  record.times_s = {0.0, 1.0};
  const Notice gap{"gap", 3, 2, std::nullopt,
                   state(Sentence::gaps_of_rows, Count::of(2), BetweenStamps{61.25})};
  CHECK(notice_text(gap, record) ==
        "2 steps between rows are longer than three intervals; the longest is 1 min 1.250 s.");
}

TEST_CASE("a contribution to U says what it is and where its size is from") {
  // IEC 60584-1, class 1 of type K: 1.5 °C or 0.4 %.
  BudgetSource source{BudgetSource::Kind::thermocouple, {1.5, 0.004, std::nullopt}};
  source.type = ThermocoupleType::K;
  source.class_of_type = Tolerance::Kind::class_1;
  CHECK(budget_words::source(source) == "type K, IEC 60584-1 class 1: 1.5 °C or 0.4 %");
  CHECK(budget_words::source({BudgetSource::Kind::extension_cable, {1.5, 0.0, std::nullopt}}) == "1.5 °C");
  CHECK(budget_words::source({BudgetSource::Kind::resolution, {0.1, 0.0, std::nullopt}}) ==
        "0.1 °C, of the log");
  CHECK(budget_words::name(BudgetSource::Kind::extension_cable) == "extension cable");
}
