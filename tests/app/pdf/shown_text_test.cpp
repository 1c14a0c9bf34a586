// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/shown_text.h"

#include <catch2/catch.hpp>

#include "tests/app/pdf/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;
using Catch::Matchers::Contains;
using pdf::shown_text;

TEST_CASE("words from right to left are isolated from the figures beside them, and nothing else is") {
  // U+2068 FIRST STRONG ISOLATE, U+2069 POP DIRECTIONAL ISOLATE: Unicode Standard Annex #9, 2.4.
  const std::pair<const char*, QString> rows[] = {
      {"TC1 106.4 \xC2\xB0"
       "C/h",
       QStringLiteral("TC1 106.4 °C/h")},
      {"\xE6\x97\xA5\xE6\x9C\xAC 1", QStringLiteral("日本 1")},
      {"\xD7\xA9\xD7\x9C 106.4", QStringLiteral("\u2068של\u2069 106.4")},
      {"at \xD7\xA9\xD7\x9C 12 \xD7\x9D, 5", QStringLiteral("at \u2068של 12 ם\u2069, 5")},
      {"\xD8\xA7 TC \xD8\xA8", QStringLiteral("\u2068ا\u2069 TC \u2068ب\u2069")},
      {"\xE2\x80\xAE"
       "EVIL 106.4",
       QStringLiteral("\uFFFDEVIL 106.4")},
      {"a\nb", QStringLiteral("a b")},
      {"", QString()},
  };
  for (const auto& [text, expected] : rows) {
    INFO(text);
    CHECK(shown_text(text).toStdString() == expected.toStdString());
  }
}

TEST_CASE("a name that overrides the direction of writing does not reverse figures in the report") {
  Analysis analysis = made_up_analysis();
  Record record = *analysis.record;
  for (Channel& channel : record.channels)
    channel.name =
        "\xE2\x80\xAE"
        "EVIL" +
        channel.name;
  analysis.record = std::make_shared<const Record>(std::move(record));
  Verdicts verdicts = *analysis.verdicts;
  for (Requirement& requirement : verdicts.requirements)
    requirement.remarks = {state(Sentence::no_such_period, std::string("\xE2\x80\xAE"
                                                                       "EVIL heated at 106.4 \xC2\xB0"
                                                                       "C/h"))};
  analysis.verdicts = std::make_shared<const Verdicts>(std::move(verdicts));
  const std::string text = Printed(make_report(analysis)).text();
  CHECK_THAT(text, Contains("EVIL heated at 106.4"));
  CHECK_THAT(text, !Contains("4.601"));
  CHECK_THAT(text, !Contains("LIVE"));
}

TEST_CASE("a name from right to left leaves the order of the figures beside it") {
  Analysis analysis = made_up_analysis();
  Verdicts verdicts = *analysis.verdicts;
  for (Requirement& requirement : verdicts.requirements)
    requirement.remarks = {
        state(Sentence::no_such_period, std::string("\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D 106.4 \xC2\xB0"
                                                    "C/h over 15 min"))};
  analysis.verdicts = std::make_shared<const Verdicts>(std::move(verdicts));
  CHECK_THAT(Printed(make_report(analysis)).text(), Contains("106.4 \xC2\xB0"
                                                             "C/h over 15 min"));
}
