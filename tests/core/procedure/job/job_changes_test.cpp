// SPDX-License-Identifier: GPL-3.0-or-later
// Edits in a job's text: what changes, what stays to the byte, and that the result is the job that was meant.
#include "core/procedure/job/job_changes.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/procedure/job/parsed_job.h"

using namespace soakwright;
using given_job::kHead;

namespace {

using Value = std::optional<std::string>;

JobChange setting(const std::string& key, Value value) { return {std::nullopt, key, std::move(value)}; }
JobChange of_tc1(const std::string& key, Value value) {
  return {ColumnNames{{"TC1", "TC1 (°C)", "2"}}, key, std::move(value)};
}

JobChange excluding(std::vector<std::pair<std::string, std::string>> keys) {
  return {{}, {}, {}, AddedEntry{"exclude", std::move(keys)}};
}

JobChange of_head(const std::string& key, Value value) { return {{}, key, std::move(value), {}, {}, {}}; }

struct Row {
  const char* why;
  std::string before;
  JobChange change;
  std::string after;
};

}  // namespace

TEST_CASE("a change touches its own place in the job and nothing else") {
  const Row table[] = {
      {"no table yet", kHead, setting("delimiter", ";"), kHead + "\n[import]\ndelimiter = \";\"\n"},
      {"no last line end", "soakwright = \"job 1\" # mine", setting("dates", "dmy"),
       "soakwright = \"job 1\" # mine\n\n[import]\ndates = \"dmy\"\n"},
      {"a value replaced before its comment",
       kHead + "[import] # by hand\ndates = 'mdy'  # asked Ines\n# end\n", setting("dates", "dmy"),
       kHead + "[import] # by hand\ndates = \"dmy\"  # asked Ines\n# end\n"},
      {"a key added behind the last one's comment",
       kHead + "[import]\n  dates = \"dmy\" # °\n\n[time_range]\nfrom = 0\nto = 9\n",
       setting("header_line", "3"),
       kHead + "[import]\n  dates = \"dmy\" # °\n  header_line = 3\n\n[time_range]\nfrom = 0\nto = 9\n"},
      {"a key added under an empty header", kHead + "[import] # none yet\n[time_range]\nfrom = 0\nto = 9\n",
       setting("time", "elapsed min"),
       kHead + "[import] # none yet\ntime = \"elapsed min\"\n[time_range]\nfrom = 0\nto = 9\n"},
      {"a comment stays where its key goes", kHead + "[import]\ndates = \"dmy\" # why\ndecimal = \",\"\n",
       setting("dates", {}), kHead + "[import]\n# why\ndecimal = \",\"\n"},
      {"a key without comment goes with its line", kHead + "[import]\ndates = \"dmy\"\ndecimal = \",\"\n",
       setting("dates", {}), kHead + "[import]\ndecimal = \",\"\n"},
      {"dotted keys", kHead + "import.dates = \"dmy\" # x\nwork = \"drum\"\n", setting("decimal", ","),
       kHead + "import.dates = \"dmy\" # x\nimport.decimal = \",\"\nwork = \"drum\"\n"},
      {"braces", kHead + "import = { dates = \"dmy\" } # x\n", setting("delimiter", "tab"),
       kHead + "import = { dates = \"dmy\", delimiter = \"tab\" } # x\n"},
      {"empty braces", kHead + "import = {} # x\n", setting("delimiter", "|"),
       kHead + "import = { delimiter = \"|\" } # x\n"},
      {"the first of two taken out of braces", kHead + "import = { dates = \"dmy\", decimal = \",\" }\n",
       setting("dates", {}), kHead + "import = { decimal = \",\" }\n"},
      {"the last of two taken out of braces", kHead + "import = { dates = \"dmy\", decimal = \",\" }\n",
       setting("decimal", {}), kHead + "import = { dates = \"dmy\" }\n"},
      {"line ends of Windows", "soakwright = \"job 1\"\r\n# a\r\n[import]\r\ndates = \"dmy\"\r\n",
       setting("decimal", "."),
       "soakwright = \"job 1\"\r\n# a\r\n[import]\r\ndates = \"dmy\"\r\ndecimal = \".\"\r\n"},
      {"what is not there is not taken out", kHead + "[import]\ndates = \"dmy\"\n", setting("decimal", {}),
       kHead + "[import]\ndates = \"dmy\"\n"},
      {"an entry found by its header in another case",
       kHead + "[[thermocouple]]\ncolumn = \"tc1 (°C)\" # °\n", of_tc1("unit", "F"),
       kHead + "[[thermocouple]]\ncolumn = \"tc1 (°C)\" # °\nunit = \"F\"\n"},
      {"an entry found by its number", kHead + "[[thermocouple]]\ncolumn = 2\nunit = \"C\"\n",
       of_tc1("unit", "mV"), kHead + "[[thermocouple]]\ncolumn = 2\nunit = \"mV\"\n"},
      {"a new entry behind the others", kHead + "[[thermocouple]]\ncolumn = \"TC2\" # b\n\n[recorder] # r\n",
       of_tc1("role", "air"),
       kHead +
           "[[thermocouple]]\ncolumn = \"TC2\" # b\n\n[[thermocouple]]\ncolumn = \"TC1\"\nrole = \"air\"\n\n"
           "[recorder] # r\n"},
      {"the first entry", kHead, of_tc1("name", "inside \"90°\" \\"),
       kHead + "\n[[thermocouple]]\ncolumn = \"TC1\"\nname = \"inside \\\"90°\\\" \\\\\"\n"},
      {"a new entry in a list of braces", kHead + "thermocouple = [ # all\n  { column = \"TC2\" }, # b\n]\n",
       of_tc1("type", "N"),
       kHead +
           "thermocouple = [ # all\n  { column = \"TC2\" }, { column = \"TC1\", type = \"N\" }, # b\n]\n"},
      {"a date, which is no text", kHead, setting("date", "2031-04-02"),
       kHead + "\n[import]\ndate = 2031-04-02\n"},
      {"a moment, which is no text", kHead + "[import]\nstart = 2031-04-02T06:00:00 # s\n",
       setting("start", "2031-04-03T06:00:00"), kHead + "[import]\nstart = 2031-04-03T06:00:00 # s\n"},
      {"a first exclusion", kHead + "# end\n",
       excluding({{"column", "TC1"}, {"from", "0"}, {"reason", "off"}}),
       kHead + "# end\n\n[[exclude]]\ncolumn = \"TC1\"\nfrom = 0\nreason = \"off\"\n"},
      {"an exclusion behind the others",
       kHead + "[[exclude]]\ncolumn = 1\nfrom = 0\nreason = \"a\" # b\n\n[recorder] # r\n",
       excluding({{"column", "TC2"}, {"from", "2031-04-02 13:10"}, {"to", "9.5"}, {"reason", "\"loose\""}}),
       kHead + "[[exclude]]\ncolumn = 1\nfrom = 0\nreason = \"a\" # b\n\n[[exclude]]\ncolumn = \"TC2\"\n"
               "from = \"2031-04-02 13:10\"\nto = 9.5\nreason = \"\\\"loose\\\"\"\n\n[recorder] # r\n"},
      {"an exclusion in a list of braces",
       kHead + "exclude = [{ column = \"TC1\", from = 0, reason = \"a\" }]\n",
       excluding({{"column", "TC2"}, {"from", "0"}, {"reason", "b"}}),
       kHead + "exclude = [{ column = \"TC1\", from = 0, reason = \"a\" }, { column = \"TC2\", from = 0, "
               "reason = \"b\" }]\n"},
      {"a key of the head behind the others",
       kHead + "work = \"drum\" # w\n\n[import]\ndates = \"dmy\"\n[[thermocouple]]\ncolumn = 2\n",
       of_head("client", "Saltmarsh"),
       kHead + "work = \"drum\" # w\nclient = \"Saltmarsh\"\n\n[import]\ndates = "
               "\"dmy\"\n[[thermocouple]]\ncolumn = "
               "2\n"},
      {"a key of the head replaced", kHead + "work = \"drum\" # w\n", of_head("work", "lug"),
       kHead + "work = \"lug\" # w\n"},
      {"a key of the head taken out", kHead + "work = \"drum\"\nweld = \"W-1\"\n", of_head("work", {}),
       kHead + "weld = \"W-1\"\n"},
      {"a number of the head", kHead, of_head("cycle", "2"), kHead + "cycle = 2\n"},
      {"a table that is not there yet",
       kHead,
       {{}, "accuracy", "±1.0 C", {}, {}, "recorder"},
       kHead + "\n[recorder]\naccuracy = \"±1.0 C\"\n"},
      {"the whole text", kHead + "# a\n", {{}, {}, {}, {}, kHead + "# b\n"}, kHead + "# b\n"},
      {"a key of an entry in braces", kHead + "thermocouple = [{ column = \"TC1\" }]\n",
       of_tc1("zone", "edge"), kHead + "thermocouple = [{ column = \"TC1\", zone = \"edge\" }]\n"},
  };
  for (const Row& row : table) {
    INFO(row.why);
    const auto changed = changed_job(row.before, row.change, "given.toml");
    REQUIRE(changed.ok());
    CHECK(changed.value() == row.after);
    INFO((parse_job(changed.value(), "given.toml").ok()
              ? std::string{}
              : all_texts(parse_job(changed.value(), "g").problems())));
    CHECK(parse_job(changed.value(), "given.toml").ok());
  }
}

TEST_CASE("a new job takes every change and reads as what was meant") {
  const std::string text = new_job_text("d3 \"n2\".csv", "");
  const auto changed =
      changed_job(text,
                  {setting("encoding", "windows-1252"), setting("delimiter", "spaces"),
                   setting("decimal", ","), setting("header_line", "0"), setting("time_column", "1"),
                   setting("time", "elapsed h"), setting("dates", "ymd"), of_tc1("unit", "mV"),
                   of_tc1("type", "N"), of_tc1("cold_junction", "23.0 C"), of_tc1("name", "inside")},
                  "new.toml");
  const Job job = accepted(parse_job(accepted(changed), "new.toml"));
  CHECK(job.log == "d3 \"n2\".csv");
  CHECK(job.reading.encoding == LogEncoding::windows_1252);
  CHECK(job.reading.delimiter == ' ');
  CHECK(job.reading.decimal == ',');
  CHECK(job.reading.header_line == 0);
  CHECK(job.reading.time_column == "1");
  CHECK(job.reading.time == TimeMeaning::elapsed_h);
  REQUIRE(job.thermocouples.size() == 1);
  CHECK(job.thermocouples[0].unit == ChannelUnit::millivolt);
  CHECK(job.thermocouples[0].type == ThermocoupleType::N);
  CHECK(job.thermocouples[0].name == "inside");
}

TEST_CASE("setting a key and taking it out again gives the text back") {
  const std::string before =
      kHead + "# all of it\n[import] # r\ndates = \"dmy\" # d\n\n# the end\n[recorder]\n";
  const auto there = changed_job(before, setting("decimal", ","), "f");
  REQUIRE(there.ok());
  CHECK(there.value() != before);
  CHECK(accepted(changed_job(there.value(), setting("decimal", {}), "f")) == before);
}

TEST_CASE("what a job says of the reading is told as the changes that would write it") {
  const auto given = [](const std::string& text) { return accepted(given_in_job(text, "f")); };
  CHECK(given(kHead).empty());
  CHECK(given(kHead + "[import]\n").empty());
  CHECK(given(kHead + "[import]\nheader_line = 5 # names\n[recorder]\n") ==
        std::vector<JobChange>{setting("header_line", "5")});
  CHECK(given(kHead + "import = { delimiter = 'tab', dates = \"dmy\" }\n") ==
        std::vector<JobChange>{setting("dates", "dmy"), setting("delimiter", "tab")});
  const auto broken = given_in_job("soakwright = \n", "given.toml");
  REQUIRE_FALSE(broken.ok());
  CHECK(broken.problems().front().line == 1);
}

TEST_CASE("a text that is not TOML is not edited") {
  const auto changed = changed_job("soakwright = \n", setting("decimal", ","), "given.toml");
  REQUIRE_FALSE(changed.ok());
  CHECK(changed.problems().front().line == 1);
  CHECK(changed.problems().front().file == "given.toml");
}
