// SPDX-License-Identifier: GPL-3.0-or-later
// Job files: what is accepted and what it becomes, beside what is refused and in which words.
#include "core/procedure/job/job_file.h"

#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

#include "core/units/sha256.h"
#include "tests/core/procedure/job/parsed_job.h"

using namespace soakwright;
using namespace soakwright::given_job;

TEST_CASE("a job may say nothing but that it is one") {
  const Job found = job("");
  CHECK(found.file == "given.toml");
  CHECK(found.sha256 == sha256_hex(kHead));
  Job nothing;
  nothing.file = found.file;
  nothing.sha256 = found.sha256;
  CHECK(found == nothing);
}

TEST_CASE("the head of a job is read") {
  const Job found =
      job("work = \"Steam drum D-3\"\nweld = \"W-117\"\nclient = \"Saltmarsh Heat & Power\"\ncontractor = "
          "\"Brackwater "
          "Fabrication\"\nmaterial = \"P355GH\"\ndrawing = \"D-3-11\"\nequipment = \"Unit 4\"\ncycle = 2\n"
          "report_number = \"R-31-04\"\n"
          "log = \"d3.csv\"\nprocedure = \"htp-021.toml\"\n");
  CHECK(found.work == "Steam drum D-3");
  CHECK(found.weld == "W-117");
  CHECK(found.client == "Saltmarsh Heat & Power");
  CHECK(found.contractor == "Brackwater Fabrication");
  CHECK(found.material == "P355GH");
  CHECK(found.drawing == "D-3-11");
  CHECK(found.equipment == "Unit 4");
  CHECK(found.report_number == "R-31-04");
  CHECK(found.cycle == 2);
  CHECK(found.log == "d3.csv");
  CHECK(found.procedure == "htp-021.toml");
}

TEST_CASE("details are read in the order in which they are written") {
  using Details = std::vector<std::pair<std::string, std::string>>;
  const Details expected{{"Order", "4711"}, {"Code", "works rules"}, {"Heating method", "ceramic pads"}};
  CHECK(job("details = { \"Order\" = \"4711\", Code = \"works rules\", \"Heating method\" = \"ceramic pads\" "
            "}\n")
            .details == expected);
  CHECK(job("[details]\nOrder = \"4711\"\nCode = \"works rules\"\n\"Heating method\" = \"ceramic pads\"\n")
            .details == expected);
}

TEST_CASE("what was settled about the file, the time_range and the recorder are read") {
  const Job found =
      job("[import]\ndates = \"dmy\"\nclock_forward = \"2031-03-30 02:00\"\n"
          "[time_range]\nfrom = \"2031-04-02 06:00\"\nto = \"2031-04-03 02:00\"\n"
          "[recorder]\naccuracy = \"±1.0 C\"\nresolution = \"0.1 C\"\ncertificate = \"R-7\"\nvalid_until = "
          "2031-12-31\n");
  CHECK(found.reading.dates == DateOrder::dmy);
  CHECK(found.reading.clock_forward == clock("2031-03-30 02:00"));
  CHECK(found.time_range->second == Moment{clock("2031-04-03 02:00")});
  CHECK(found.recorder->accuracy->kelvin() == 1.0);
  CHECK(found.recorder->resolution->kelvin() == 0.1);
  CHECK(found.recorder->certificate == "R-7");
  CHECK(found.recorder->valid_until == CivilDate{2031, 12, 31});
  CHECK(job("[import]\ndate = 2031-04-02").reading.date == CivilDate{2031, 4, 2});
  CHECK(job("[import]\nstart = 2031-04-02T06:00:00").reading.start == clock("2031-04-02 06:00"));
  CHECK(job("[import]\nstart = \"2031-04-02 06:00\"").reading.start == clock("2031-04-02 06:00"));
  CHECK(job("[import]\ndates = \"mdy\"").reading.dates == DateOrder::mdy);
  CHECK(job("[import]\ndates = \"ymd\"").reading.dates == DateOrder::ymd);
}

TEST_CASE("several welds are listed, each with its thermocouples") {
  const Job found =
      job("[[weld]]\nnumber = \"W-117\"\n[[weld]]\nnumber = \"W-118\"\nthickness = \"22 mm\"\nmaterial = "
          "\"P355GH\"\n"
          "[[thermocouple]]\ncolumn = \"TC1\"\nweld = \"W-118\"\n");
  REQUIRE(found.welds.size() == 2);
  CHECK_FALSE(found.welds[0].thickness.has_value());
  CHECK(found.welds[1].thickness->millimetres() == 22.0);
  CHECK(found.welds[1].material == "P355GH");
  CHECK(found.welds[1].line == 4);
  CHECK(found.thermocouples[0].weld == "W-118");
}

TEST_CASE("jobs whose head is refused") {
  for (const Refused& row : {
           Refused{"soakwright = \"procedure 1\"\nnumber = \"1\"\n", 1,
                   "\"procedure 1\": this file is a procedure, not a job", "a job is needed here"},
           Refused{"soakwright = \"job 9\"\n", 1, "\"job 9\"", "\"job 1\""},
           Refused{"work = \"drum\"\n", 1, "`soakwright` is missing in the job", "add"},
           Refused{kHead + "cycle = 0\n", 2, "`cycle` is 0", "from 1"},
           Refused{kHead + "cycle = \"first\"\n", 2, "`cycle` is \"first\"", "whole number"},
           Refused{kHead + "clint = \"x\"\n", 2, "`clint` is not a key of the job", "did you mean `client`?"},
           Refused{kHead + "weld = 117\n", 2, "`weld` is 117", "[[weld]]"},
           Refused{kHead + "log = \"\"\n", 2, "`log` is empty", "name"},
           Refused{kHead + "log = \"C:\\data\\x.csv\"\n", 2, "escape", "in single quotes"},
           Refused{kHead + "log = \"C:\\new\\test.csv\"\n", 2, "`log` has a control character",
                   "in single quotes"},
           Refused{kHead + "thickness = \"38 mm\"\n", 2, "`thickness` is not a key of the job",
                   "[[weld]] with `number` and `thickness`"},
           Refused{kHead + "details = \"Order 4711\"\n", 2, "`details` is \"Order 4711\"",
                   "names with a text"},
           Refused{kHead + "details = { Order = 4711 }\n", 2, "`details.Order` is 4711", "double quotes"},
           Refused{kHead + "duty = \"x\"\n", 2, "`duty` is not a key of the job", "did you mean `"},
           Refused{kHead + "number = \"HTP-021\"\n", 2, "`number` is not a key of the job",
                   "known here: soakwright, work"},
           Refused{kHead + "weld = \"W-117\"\n[[weld]]\nnumber = \"W-118\"\n", 3, "not TOML",
                   "a [[weld]] with its `number` for each, not both"},
           Refused{kHead + "[thermocouple]\ncolumn = \"TC1\"\n", 2, "`thermocouple` is a table",
                   "[[thermocouple]]"},
           Refused{kHead + "[[import]]\ndates = \"dmy\"\n", 2, "`import` is a list", "[import]"},
           Refused{kHead + "[import]\ndates = \"dym\"\n", 3, "`dates` is \"dym\"", "dmy, mdy, ymd"},
           Refused{kHead + "[import]\nclock_forward = \"2031-03-30\"\n", 3,
                   "`clock_forward` is \"2031-03-30\"", "13:10"},
           Refused{kHead + "[import]\ndate = \"2031-04-02\"\n", 3, "`date` is \"2031-04-02\"",
                   "without quotes"},
           Refused{kHead + "[import]\nstart = 2031-04-02\n", 3, "`start` is 2031-04-02", "local time"},
           Refused{kHead + "[import]\nclock_forward = 7200\n", 3, "`clock_forward` is 7200", "local time"},
           Refused{kHead + "[import]\ndattes = \"dmy\"\n", 3, "`dattes` is not a key of [import]",
                   "did you mean `dates`?"},
           Refused{kHead + "[time_range]\nfrom = 0\n", 2, "`to` is missing in [time_range]", "add `to"},
           Refused{kHead + "[time_range]\nfrom = 60\nto = 60\n", 4, "`to` is not after `from`",
                   "changed places"},
           Refused{kHead + "[recorder]\naccuracy = \"1 %\"\n", 3, "`accuracy` is \"1 %\"", "±1.1 C"},
           Refused{kHead + "[recorder]\naccuracy = 1.0\n", 3, "`accuracy` is 1", "±1.1 C"},
           Refused{kHead + "[recorder]\nresolution = \"±0.1 C\"\n", 3, "`resolution` is", "last digit"},
           Refused{kHead + "[recorder]\nresolution = \"0 C\"\n", 3, "`resolution` is \"0 C\"", "more than 0"},
           Refused{kHead + "[recorder]\nvalid_until = \"2031-12-31\"\n", 3, "`valid_until` is \"2031-12-31\"",
                   "without quotes"},
           Refused{kHead + "[recorder]\nvalid_until = 2031-12-32\n", 3, "not TOML", ""},
       })
    CHECK(unlike(parsed(row.text), row) == "");
}
