// SPDX-License-Identifier: GPL-3.0-or-later
// What a job says about times of its record: exclusions, periods, remarks; and what a person confirms.
#include <string>

#include <catch2/catch.hpp>

#include "tests/core/procedure/job/parsed_job.h"

using namespace soakwright;
using namespace soakwright::given_job;

TEST_CASE(
    "a moment is a local time in quotes or without, a time as printed, or seconds from the first sample") {
  const auto from = [](const std::string& written) {
    return job("[[exclude]]\ncolumn = \"TC1\"\nreason = \"off\"\nfrom = " + written + "\n")
        .exclusions[0]
        .from;
  };
  const Moment expected = clock("2031-04-02 13:10");
  CHECK(from("\"2031-04-02 13:10\"") == expected);
  CHECK(from("\"2031-04-02T13:10:00\"") == expected);
  CHECK(from("2031-04-02T13:10:00") == expected);
  CHECK(from("2031-04-02 13:10:00.5") == Moment{clock("2031-04-02 13:10:00.5")});
  CHECK(from("25800") == Moment{25800.0});
  CHECK(from("-0.5") == Moment{-0.5});
  constexpr std::int64_t kMinuteNs = 60 * kNanosecondsPerSecond;
  CHECK(from("\"13:10\"") == Moment{PrintedTime{790 * kMinuteNs, false}});
  CHECK(from("\"+1 d 00:10:00\"") == Moment{PrintedTime{1450 * kMinuteNs, true}});
  CHECK(from("\"0:09:30\"") == Moment{PrintedTime{570 * kNanosecondsPerSecond, true}});
}

TEST_CASE("moments of two kinds are left to the log to compare") {
  CHECK(job("[[period]]\nname = \"welding\"\nfrom = 0\nto = \"2031-04-02 09:15\"\n").periods.size() == 1);
}

TEST_CASE("what a person excluded, named and remarked is read") {
  const Job found =
      job("[[exclude]]\ncolumn = 2\nfrom = 0\nto = 0\nreason = \"junction came off the work\"\n"
          "[[period]]\nname = \"welding\"\nfrom = \"2031-04-02 06:40\"\nto = \"2031-04-02 09:15\"\n"
          "[[remark]]\nat = \"2031-04-02 11:02\"\ntext = \"power cut, 4 min\"\n");
  REQUIRE(found.exclusions.size() == 1);
  CHECK(found.exclusions[0].column == "2");
  CHECK(found.exclusions[0].to == Moment{0.0});
  CHECK(found.exclusions[0].reason == "junction came off the work");
  REQUIRE(found.periods.size() == 1);
  CHECK(found.periods[0].name == "welding");
  CHECK(found.periods[0].to == Moment{clock("2031-04-02 09:15")});
  CHECK(found.periods[0].line == 7);
  REQUIRE(found.remarks.size() == 1);
  CHECK(found.remarks[0].text == "power cut, 4 min");
}

TEST_CASE("welds, time_ranges excluded, periods and remarks that are refused") {
  const auto exclusion = [](const std::string& lines) { return kHead + "[[exclude]]\n" + lines; };
  const auto period = [](const std::string& lines) {
    return kHead + "[[period]]\nname = \"welding\"\n" + lines;
  };
  for (const Refused& row : {
           Refused{kHead + "[[weld]]\nthickness = \"22 mm\"\n", 2, "`number` is missing in [[weld]]",
                   "add `number"},
           Refused{kHead + "[[weld]]\nnumber = \"W-1\"\n[[weld]]\nnumber = \"w-1\"\n", 5,
                   "`number` \"w-1\" is given in the [[weld]] at line 2 too", "once"},
           Refused{exclusion("from = 0\nreason = \"off\""), 2, "`column` is missing in [[exclude]]", "add"},
           Refused{exclusion("column = 2\nreason = \"off\""), 2, "`from` is missing in [[exclude]]", "add"},
           Refused{exclusion("column = 2\nfrom = 0"), 2, "`reason` is missing in [[exclude]]", "add"},
           Refused{exclusion("column = 2\nfrom = 0\nreason = \"\""), 5, "`reason` is empty", ""},
           Refused{exclusion("column = 2\nfrom = \"13.10\"\nreason = \"off\""), 4, "`from` is \"13.10\"",
                   "seconds from its first sample"},
           Refused{exclusion("column = 2\nfrom = 2031-04-02\nreason = \"off\""), 4, "`from` is 2031-04-02",
                   "2031-04-02 13:10"},
           Refused{exclusion("column = 2\nfrom = 2031-04-02T13:10:00Z\nreason = \"off\""), 4,
                   "offset from UTC", "local time"},
           Refused{exclusion("column = 2\nfrom = nan\nreason = \"off\""), 4, "`from` is not a finite number",
                   ""},
           Refused{exclusion("column = 2\nfrom = 60\nto = 0\nreason = \"off\""), 5,
                   "`to` is not after `from`", "changed places"},
           Refused{exclusion("column = 2\nfrom = 0\nuntil = 9\nreason = \"off\""), 5,
                   "`until` is not a key of [[exclude]]", "column, from, to"},
           Refused{period("from = 0"), 2, "`to` is missing in [[period]]", "add"},
           Refused{period("from = \"2031-04-02 09:15\"\nto = \"2031-04-02 06:40\""), 5,
                   "`to` is not after `from`", "changed places"},
           Refused{period("from = \"23:50:00\"\nto = \"00:10:00\""), 5, "`to` is not after `from`", "+1 d"},
           Refused{period("from = 0\nto = 0"), 5, "`to` is not after `from`", "changed places"},
           Refused{period("from = 0\nto = 1\n[[period]]\nname = \"welding\"\nfrom = 2\nto = 3"), 7,
                   "`name` \"welding\" is given in the [[period]] at line 2 too", "maintain stage for each"},
           Refused{kHead + "[[remark]]\nat = 60\n", 2, "`text` is missing in [[remark]]", "add"},
           Refused{kHead + "[[remark]]\ntext = \"x\"\n", 2, "`at` is missing in [[remark]]", "add"},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}

TEST_CASE("what a person confirms is read, and refused where it would change nothing") {
  const Job found =
      job("[[confirm]]\ncolumn = \"TC3\"\nsuspect = \"stuck\"\nreason = \"checked on a second recorder\"\n");
  REQUIRE(found.confirmations.size() == 1);
  CHECK(found.confirmations[0].column == "TC3");
  CHECK(found.confirmations[0].suspect == "stuck");
  CHECK(found.confirmations[0].reason == "checked on a second recorder");
  CHECK(found.confirmations[0].line == 2);
  const auto confirm = [](const std::string& lines) { return kHead + "[[confirm]]\n" + lines; };
  for (const Refused& row :
       {Refused{confirm("suspect = \"stuck\"\nreason = \"seen\""), 2, "`column` is missing in [[confirm]]",
                "add"},
        Refused{confirm("column = 2\nreason = \"seen\""), 2, "`suspect` is missing in [[confirm]]", "add"},
        Refused{confirm("column = 2\nsuspect = \"open\""), 2, "`reason` is missing in [[confirm]]", "add"},
        Refused{confirm("column = 2\nsuspect = \"spike\"\nreason = \"seen\""), 4, "`suspect` is \"spike\"",
                "clipped"}})
    CHECK(unlike(parse_job(row.text, "given.toml"), row).empty());
}
