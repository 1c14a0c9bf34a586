// SPDX-License-Identifier: GPL-3.0-or-later
// Every key of the file formats is known to the parser at its place, and no other is.
//
// A key is known where its absence of sense is what is complained about, not the key itself: each is given a
// value that no key takes (a time of day), so that exactly the keys that are read complain about their value.
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"
#include "tests/core/procedure/refusals.h"

using namespace soakwright;

namespace {

enum class File { procedure, job, review };

struct Place {
  File file;
  const char* opening;  ///< what stands before the key in the file, behind the version line
  const char* closing;  ///< and after it
  std::vector<const char*> keys;
};

const std::vector<Place>& places() {
  static const std::vector<Place> all = {
      {File::procedure,
       "",
       "",
       {"number", "revision", "title", "unit", "thickness", "source", "edition", "clause", "flag",
        "evaluation", "record", "stage"}},
      {File::procedure,
       "[evaluation]\n",
       "",
       {"rate_window", "decision_rule", "interpolate_max", "excursion_allowed", "in_range_min",
        "tempering_constant", "tempering_reference"}},
      {File::procedure, "[evaluation]\nexcursion_allowed = { ", " }", {"time", "depth"}},
      {File::procedure,
       "[record]\n",
       "",
       {"temperature_max", "start_temperature_max", "end_temperature_max", "gap_max", "sampling_interval_max",
        "thermocouples_min"}},
      {File::procedure, "[[stage]]\n", "", {"kind"}},
      {File::procedure,
       "[[stage]]\nkind = \"heat\"\n",
       "",
       {"above", "below", "rate_max", "rate_min", "spread_max", "spread_within", "source", "edition",
        "clause", "flag"}},
      {File::procedure,
       "[[stage]]\nkind = \"cool\"\n",
       "",
       {"above", "below", "rate_max", "rate_min", "spread_max", "spread_within", "source", "edition",
        "clause", "flag"}},
      {File::procedure,
       "[[stage]]\nkind = \"heat\"\nrate_max = { ",
       " }",
       {"over", "per", "at_least", "at_most"}},
      {File::procedure,
       "[[stage]]\nkind = \"hold\"\n",
       "",
       {"low", "high", "time_min", "time_max", "count", "excursion_time_max", "spread_max", "spread_within",
        "edge_fraction_min", "tempering_min", "tempering_max", "source", "edition", "clause", "flag"}},
      {File::procedure, "[[stage]]\nkind = \"hold\"\ntime_min = { ", " }", {"points", "beyond", "step"}},
      {File::procedure,
       "[[stage]]\nkind = \"maintain\"\n",
       "",
       {"low", "high", "during", "source", "edition", "clause", "flag"}},
      {File::job, "", "", {"work",     "weld",      "client",          "contractor", "material",
                           "drawing",  "equipment", "report_number",   "details",    "cycle",
                           "log",      "procedure", "thermocouple",    "exclude",    "confirm",
                           "period",   "remark",    "previous_record", "import",     "time_range",
                           "recorder", "hydrogen",  "qualified",       "company"}},
      {File::job, "[[weld]]\n", "", {"number", "thickness", "material"}},
      {File::job,
       "[[thermocouple]]\n",
       "",
       {"column", "name", "weld", "role", "zone", "position", "angle", "unit", "type", "cold_junction",
        "tolerance", "extension", "correction", "certificate", "valid_until", "spare_for", "reason"}},
      {File::job, "[[exclude]]\n", "", {"column", "from", "to", "reason"}},
      {File::job, "[[confirm]]\n", "", {"column", "suspect", "reason"}},
      {File::job, "[[period]]\n", "", {"name", "from", "to"}},
      {File::job, "[[remark]]\n", "", {"at", "text"}},
      {File::job, "[[previous_record]]\n", "", {"log", "job", "cycle"}},
      {File::job,
       "[import]\n",
       "",
       {"encoding", "delimiter", "decimal", "header_line", "time_column", "time", "dates", "date", "start",
        "clock_forward", "unit", "unlisted"}},
      {File::job, "[time_range]\n", "", {"from", "to"}},
      {File::job, "[recorder]\n", "", {"accuracy", "resolution", "certificate", "valid_until"}},
      {File::job,
       "[hydrogen]\n",
       "",
       {"shape", "thickness", "diameter", "diffusivity", "d0", "activation_energy", "temperature_min",
        "temperature_max", "source", "after"}},
      {File::job, "[qualified]\n", "", {"parameter", "holds", "source"}},
      {File::job, "[company]\n", "", {"name", "address", "picture"}},
      {File::review, "", "", {"result_sha256", "finding", "person"}},
      {File::review,
       "[[finding]]\n",
       "",
       {"requirement", "weld", "channel", "from_s", "disposition", "reason"}},
      {File::review, "[[person]]\n", "", {"role", "name", "company", "date", "remark"}},
  };
  return all;
}

std::string problems_of(const Place& place, const std::string& key) {
  const auto text = [&](const char* kind) {
    return std::string{"soakwright = \""} + kind + " 1\"\n" + place.opening + key + " = 06:40:00" +
           place.closing + "\n";
  };
  switch (place.file) {
    case File::procedure:
      return all_texts(parse_procedure(text("procedure"), "f").problems());
    case File::job:
      return all_texts(parse_job(text("job"), "f").problems());
    case File::review:
      return all_texts(parse_review(text("review"), "f").problems());
  }
  return {};
}

}  // namespace

TEST_CASE("every key of the formats is read where it belongs") {
  for (const Place& place : places())
    for (const std::string key : place.keys) {
      INFO(place.opening << key);
      const std::string problems = problems_of(place, key);
      INFO(problems);
      CHECK_THAT(problems, Catch::Contains("`" + key + "` is a time of day"));
      CHECK_THAT(problems, !Catch::Contains("is not a key of"));
    }
}

TEST_CASE("a key with one letter too many is refused everywhere, and the right one is named") {
  for (const Place& place : places())
    for (const std::string key : place.keys) {
      // A kind that is not known leaves nothing to say about the stage's other keys.
      if (key == "kind") continue;
      INFO(place.opening << key);
      const std::string problems = problems_of(place, key + "x");
      INFO(problems);
      CHECK_THAT(problems, Catch::Contains("`" + key + "x` is not a key of"));
      // Of a word of two letters, one letter is half.
      if (key.size() > 2) CHECK_THAT(problems, Catch::Contains("did you mean `" + key + "`?"));
    }
}

TEST_CASE("a stage of another kind does not know the keys of this one") {
  const auto refused = [](const char* kind, const std::string& key) {
    const Place place{File::procedure, kind, "", {}};
    return problems_of(place, key).find("`" + key + "` is not a key of") != std::string::npos;
  };
  for (const char* const key : {"low", "high", "time_min", "time_max", "count", "excursion_time_max",
                                "edge_fraction_min", "tempering_min", "tempering_max", "during"})
    CHECK(refused("[[stage]]\nkind = \"heat\"\n", key));
  for (const char* const key : {"above", "below", "rate_max", "rate_min", "during"})
    CHECK(refused("[[stage]]\nkind = \"hold\"\n", key));
  for (const char* const key : {"above", "rate_max", "time_min", "spread_max", "count"})
    CHECK(refused("[[stage]]\nkind = \"maintain\"\n", key));
}
