// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/value_problems.h"

#include <utility>

#include <fmt/format.h>

#include "core/procedure/toml/toml_problems.h"
#include "core/units/number_text.h"

namespace soakwright::value_problems {
namespace {

/// What is written, and what would help.
ProblemWords written(const FoundValue& found, std::string help) {
  return {fmt::format("`{}` is {}", found.name, described(found.value)), std::move(help)};
}

}  // namespace

ProblemWords not_a_text(const FoundValue& found) { return written(found, "write text in double quotes"); }

ProblemWords empty_name(const FoundValue& found) {
  return {fmt::format("`{}` is empty", found.name), "give a name"};
}

ProblemWords unknown_word(const FoundValue& found, const std::vector<std::string>& known) {
  const auto* const word = found.value.as<std::string>();
  return written(found, suggestion(word != nullptr ? *word : std::string{}, known));
}

ProblemWords other_word_for_unit(const FoundValue& found, const std::string& word) {
  return written(found, fmt::format("write `{} = \"{}\"`", found.name, word));
}

ProblemWords control_character_in_path(const FoundValue& found) {
  return {
      fmt::format(R"(`{}` has a control character in it: in double quotes \t, \n and the like are escapes)",
                  found.name),
      R"(write the path with / or in single quotes: 'C:\test\new.csv')"};
}

ProblemWords not_a_number(const FoundValue& found) { return written(found, "write a plain number"); }

ProblemWords not_finite(const FoundValue& found) {
  return {fmt::format("`{}` is not a finite number", found.name), "write a plain number"};
}

ProblemWords not_a_count(const FoundValue& found) { return written(found, "write a whole number from 1"); }

ProblemWords negative(const FoundValue& found) { return written(found, "give 0 or more"); }

ProblemWords not_above_0(const FoundValue& found) { return written(found, "give more than 0"); }

ProblemWords column_before_first(const FoundValue& found) {
  return written(found, "columns are counted from 1");
}

ProblemWords not_a_duration(const FoundValue& found) {
  return written(found, R"(write a duration: "90 s", "95 min", "1.5 h", "1 h 35 min")");
}

ProblemWords not_a_thickness(const FoundValue& found) {
  return written(found, R"(write a thickness in mm or in: "38 mm", "1.5 in")");
}

ProblemWords not_a_length(const FoundValue& found) {
  return written(found, R"(write a length in mm, cm, m, in or ft: "1.2 m", "300 mm", "15 ft")");
}

ProblemWords not_an_angle(const FoundValue& found) {
  return written(found, R"(write an angle or a position on the clock: "90 deg", "3 o'clock")");
}

ProblemWords angle_without_unit(const FoundValue& found, double plain) {
  return written(found,
                 fmt::format(R"(write `{0} = "{1} deg"`, or a position on the clock: `{0} = "3 o'clock"`)",
                             found.name, number_text(plain)));
}

ProblemWords not_plus_minus(const FoundValue& found) {
  return written(found, "write a plus-minus value with its unit: \"±1.1 C\"");
}

ProblemWords not_a_resolution(const FoundValue& found) {
  return written(found, R"(write the recorder's last digit with its unit: "0.1 C")");
}

ProblemWords no_such_temperature(const FoundValue& found) {
  return written(found, "no such temperature: give one in the file's unit");
}

ProblemWords not_a_date(const FoundValue& found) {
  return written(found, "write a date without quotes: 2031-09-30");
}

ProblemWords not_a_local_time(const FoundValue& found) {
  return written(found, "write a local time of the log: \"2031-04-02 13:10\"");
}

ProblemWords not_a_moment(const FoundValue& found) {
  return written(found,
                 "write a local time as the log prints it (\"2031-04-02 13:10\", \"13:10:00\", \"+1 d "
                 "00:10:00\", elapsed \"0:09:30\"), or the seconds from its first sample");
}

ProblemWords not_a_time_per_thickness(const FoundValue& found) {
  return written(found, R"(write a time per thickness: "15 min per 25 mm")");
}

ProblemWords not_points_of_thickness(const FoundValue& found) {
  return written(found, R"(write points as [["6 mm", "15 min"], ["50 mm", "2 h"]])");
}

ProblemWords point_not_thicker(const FoundValue& found) {
  return {fmt::format("`{}` is not thicker than the point before it", found.name),
          "give the points with rising thickness"};
}

}  // namespace soakwright::value_problems
