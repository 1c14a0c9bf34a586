// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/job_problems.h"

#include <utility>

#include <fmt/format.h>

#include "core/procedure/toml/toml_problems.h"

namespace soakwright::job_problems {
namespace {

constexpr const char* kOrderOfRecords =
    "list the records in the order in which they were run; an earlier part of one interrupted cycle has that "
    "cycle's number";

/// What is written, and what would help.
ProblemWords written(const FoundValue& found, std::string help) {
  return {fmt::format("`{}` is {}", found.name, described(found.value)), std::move(help)};
}

/// The same `key` in two tables of `[[list]]`.
std::string given_twice(const char* list, const char* key, const std::string& value,
                        std::size_t line_of_first) {
  return fmt::format("`{}` \"{}\" is given in the [[{}]] at line {} too", key, shown(value), list,
                     line_of_first);
}

}  // namespace

ProblemWords not_a_tolerance(const FoundValue& found) {
  return written(found, R"(write "class 1", "class 2", "standard", "special" or "±1.1 C")");
}

ProblemWords not_a_cold_junction(const FoundValue& found) {
  return written(found, R"(name the column of the terminals' temperature, or write it: "23.0 C")");
}

ProblemWords not_a_correction(const FoundValue& found) {
  return written(found, "write pairs of reading and correction in C: [[0, 0.0], [600, -1.4]]");
}

ProblemWords correction_not_rising(const FoundValue& point) {
  return {fmt::format("`{}` has a point that is not above the one before it", point.name),
          "give the points with rising temperature"};
}

ProblemWords not_details(const FoundValue& found) {
  return written(found, R"(write names with a text each: { "Order" = "4711", "Code" = "…" })");
}

ProblemWords thickness_of_job() {
  return {"`thickness` is not a key of the job",
          "give it in the procedure, or write the weld as [[weld]] with `number` and `thickness`"};
}

ProblemWords to_not_after_from(bool of_day) {
  return {"`to` is not after `from`",
          of_day ? "have they changed places? A time of day after midnight is written \"+1 d 00:10:00\""
                 : "have they changed places?"};
}

Problem weld_written_twice(Problem problem) {
  problem.help =
      "write either `weld = \"…\"` for the only weld, or a [[weld]] with its `number` for each, not both";
  return problem;
}

ProblemWords same_column(const std::string& column, std::size_t line_of_first) {
  return {given_twice("thermocouple", "column", column, line_of_first), "list each column once"};
}

ProblemWords same_thermocouple_name(const std::string& name, std::size_t line_of_first) {
  return {given_twice("thermocouple", "name", name, line_of_first),
          "give each thermocouple a name of its own"};
}

ProblemWords same_weld(const std::string& number, std::size_t line_of_first) {
  return {given_twice("weld", "number", number, line_of_first), "list each weld once"};
}

ProblemWords same_period(const std::string& name, std::size_t line_of_first) {
  return {given_twice("period", "name", name, line_of_first),
          "give each period a name of its own, and the procedure a maintain stage for each"};
}

ProblemWords same_previous_log(const std::string& log, std::size_t line_of_first) {
  return {given_twice("previous_record", "log", log, line_of_first), "name each log once"};
}

ProblemWords weld_not_in_job(const std::string& weld, const std::vector<std::string>& known) {
  return {fmt::format("`weld` \"{}\" is no weld of the job", shown(weld)),
          known.empty() ? "name the job's welds: `weld = …` at the top, or a [[weld]] for each"
                        : suggestion(weld, known)};
}

ProblemWords reason_of_evaluated() {
  return {"`reason` says why a thermocouple is not evaluated, and this one is",
          "take `reason` out, or give the `role`; readings are excluded with [[exclude]]"};
}

ProblemWords unlisted_off_without_thermocouples() {
  return {"`unlisted = \"off\"` leaves nothing to evaluate: the job lists no thermocouple",
          "add a [[thermocouple]] for each column that is evaluated, or take `unlisted` out"};
}

ProblemWords spare_of_another_role(const std::string& spare_for) {
  return {fmt::format("`spare_for` \"{}\" does nothing beside a `role` that is not spare", shown(spare_for)),
          "write `role = \"spare\"`, or leave out one of the two"};
}

ProblemWords spare_for_itself(const std::string& spare_for) {
  return {fmt::format("`spare_for` \"{}\" names the thermocouple itself", shown(spare_for)),
          "name the one that it takes over from"};
}

ProblemWords spare_for_spare(const std::string& spare_for) {
  return {fmt::format("`spare_for` \"{}\" names one that is itself a spare", shown(spare_for)),
          "name a thermocouple that is evaluated"};
}

ProblemWords spare_for_unevaluated(const std::string& spare_for) {
  return {fmt::format("`spare_for` \"{}\" names one that is not evaluated", shown(spare_for)),
          "name a thermocouple with role control or monitor"};
}

ProblemWords second_spare(const std::string& spare_for, std::size_t line_of_first) {
  return {fmt::format("`spare_for` \"{}\" has a spare already, the [[thermocouple]] at line {}",
                      shown(spare_for), line_of_first),
          "one thermocouple can have one spare"};
}

ProblemWords no_cycle_left(int cycle, std::size_t previous_records) {
  return {
      previous_records == 1
          ? fmt::format("this would be cycle {}: the job's `cycle` leaves no room for a previous record",
                        cycle)
          : fmt::format("this would be cycle {}: the job's `cycle` leaves no room for {} previous records",
                        cycle, previous_records),
      kOrderOfRecords};
}

ProblemWords cycles_fall(int cycle, int next) {
  return {fmt::format("cycle {} comes after cycle {}", cycle, next), kOrderOfRecords};
}

Problem named_in_job(Problem problem, const std::string& job, const std::string& key, std::size_t line) {
  if (!problem.help.empty()) problem.help += "; ";
  problem.help += fmt::format("`{}` in {}, line {}, names this file", key, job, line);
  return problem;
}

}  // namespace soakwright::job_problems
