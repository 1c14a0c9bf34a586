// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/job_checks.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "core/procedure/heat/heat_tables.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

/// Column names match whatever their case and outer spaces.
std::string folded(std::string_view name) {
  std::string out{trimmed(name)};
  for (char& letter : out)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return out;
}

/// Of `key` in the `index`th table of `[[list]]`.
std::size_t line_of(const TableReader& in, std::string_view list, std::size_t index, std::string_view key) {
  const TomlEntry* const entry = in.entry(list);
  const auto* const tables = entry ? entry->value.as<TomlArray>() : nullptr;
  if (!tables || index >= tables->values.size()) return in.line();
  const TomlValue& item = tables->values[index];
  if (const auto* table = item.as<TomlTable>())
    for (const TomlEntry& one : table->entries)
      if (one.key == key) return one.line;
  return item.line;
}

/// Of `key` in the table `[name]`.
std::size_t line_in(const TableReader& in, std::string_view name, std::string_view key) {
  const TomlEntry* const entry = in.entry(name);
  const auto* const table = entry ? entry->value.as<TomlTable>() : nullptr;
  if (table)
    for (const TomlEntry& one : table->entries)
      if (one.key == key) return one.line;
  return in.line_of(name);
}

/// Complains about every entry whose `name_of()` an earlier one has too; empty names were complained about.
/// True where there is none.
template <typename Entry, typename NameOf>
bool check_once(TableReader& in, const std::vector<Entry>& entries, std::string_view list,
                std::string_view key, const NameOf& name_of, const char* help) {
  std::map<std::string, std::size_t> line_of_first;
  bool once = true;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const std::string name = folded(name_of(entries[i]));
    if (name.empty()) continue;
    const auto [first, is_new] = line_of_first.emplace(name, entries[i].line);
    if (is_new) continue;
    once = false;
    in.complain(line_of(in, list, i, key),
                fmt::format("`{}` \"{}\" stands in the [[{}]] at line {} too", key,
                            shown(name_of(entries[i])), list, first->second),
                help);
  }
  return once;
}

void check_spares(const Job& job, TableReader& in) {
  const auto& all = job.thermocouples;
  std::map<std::string, const ThermocoupleEntry*> by_name;
  for (const ThermocoupleEntry& entry : all) {
    by_name.emplace(folded(entry.column), &entry);
    if (entry.name) by_name.emplace(folded(*entry.name), &entry);
  }
  std::map<std::string, std::size_t> line_of_spare;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!all[i].spare_for) continue;
    const auto complain = [&](std::string_view what, const char* help) {
      in.complain(line_of(in, "thermocouple", i, "spare_for"),
                  fmt::format("`spare_for` \"{}\" {}", shown(*all[i].spare_for), what), help);
    };
    if (all[i].role != ThermocoupleRole::spare) {
      complain("stands beside a `role` that is not spare, and does nothing there",
               "write `role = \"spare\"`, or leave out one of the two");
      continue;
    }
    // One that the job does not list may still be a column of the log.
    const auto found = by_name.find(folded(*all[i].spare_for));
    const ThermocoupleEntry* const main_one = found == by_name.end() ? nullptr : found->second;
    if (main_one == &all[i]) {
      complain("names the thermocouple itself", "name the one that it takes over from");
      continue;
    }
    if (main_one && main_one->spare_for)
      complain("names one that is itself a spare", "name a thermocouple that is evaluated");
    else if (main_one &&
             (main_one->role == ThermocoupleRole::air || main_one->role == ThermocoupleRole::set_point ||
              main_one->role == ThermocoupleRole::off))
      complain("names one that is not evaluated", "name a thermocouple with role control or monitor");
    const auto [first, is_new] =
        line_of_spare.emplace(folded(main_one ? main_one->column : *all[i].spare_for), all[i].line);
    if (!is_new)
      complain(fmt::format("has a spare already, the [[thermocouple]] at line {}", first->second),
               "one thermocouple can have one spare");
  }
}

void check_welds(const Job& job, TableReader& in) {
  std::vector<std::string> known;
  if (job.weld) known.push_back(*job.weld);
  for (const WeldEntry& weld : job.welds) known.push_back(weld.number);
  for (std::size_t i = 0; i < job.thermocouples.size(); ++i) {
    const auto& weld = job.thermocouples[i].weld;
    if (!weld || std::find(known.begin(), known.end(), *weld) != known.end()) continue;
    in.complain(line_of(in, "thermocouple", i, "weld"),
                fmt::format("`weld` \"{}\" is no weld of the job", shown(*weld)),
                known.empty() ? "name the job's welds: `weld = …` at the top, or a [[weld]] for each"
                              : suggestion(*weld, known));
  }
}

/// Cycles do not fall from record to record, up to this job's own; records of one cycle are parts of it.
void check_previous_record(const Job& job, TableReader& in) {
  if (job.previous_records.empty()) return;
  const auto log = [](const PreviousRecordEntry& entry) { return entry.log; };
  check_once(in, job.previous_records, "previous_record", "log", log, "name each earlier log once");
  for (std::size_t i = 0; i < job.previous_records.size(); ++i) {
    const int cycle = cycle_of_previous(job, i);
    const int next = i + 1 < job.previous_records.size() ? cycle_of_previous(job, i + 1) : cycle_of(job);
    if (cycle >= 1 && cycle <= next) continue;
    in.complain(line_of(in, "previous_record", i, "cycle"),
                cycle < 1
                    ? fmt::format("this would be cycle {}: the job's `cycle` leaves no room for {} earlier "
                                  "{}",
                                  cycle, job.previous_records.size(),
                                  job.previous_records.size() == 1 ? "record" : "records")
                    : fmt::format("cycle {} comes after cycle {}", cycle, next),
                "list the records in the order in which they were run; an earlier part of one interrupted "
                "cycle has that "
                "cycle's number");
    return;
  }
}

}  // namespace

int cycle_of(const Job& job) { return job.cycle.value_or(static_cast<int>(job.previous_records.size()) + 1); }

int cycle_of_previous(const Job& job, std::size_t index) {
  return job.previous_records[index].cycle.value_or(cycle_of(job) -
                                                    static_cast<int>(job.previous_records.size() - index));
}

void check_job(const Job& job, TableReader& in) {
  const auto column = [](const ThermocoupleEntry& entry) { return entry.column; };
  const auto name = [](const ThermocoupleEntry& entry) { return entry.name.value_or(entry.column); };
  if (check_once(in, job.thermocouples, "thermocouple", "column", column, "list each column once"))
    check_once(in, job.thermocouples, "thermocouple", "name", name,
               "give each thermocouple a name of its own");
  const auto number = [](const WeldEntry& entry) { return entry.number; };
  check_once(in, job.welds, "weld", "number", number, "list each weld once");
  const auto period = [](const PeriodEntry& entry) { return entry.name; };
  check_once(in, job.periods, "period", "name", period,
             "give each period a name of its own, and the procedure a maintain stage for each");
  check_spares(job, in);
  check_welds(job, in);
  check_previous_record(job, in);
  check_hydrogen_period(job, in);
  if (job.reading.unlisted_off && job.thermocouples.empty())
    in.complain(line_in(in, "import", "unlisted"),
                "`unlisted = \"off\"` leaves nothing to evaluate: the job lists no thermocouple",
                "add a [[thermocouple]] for each column that is evaluated, or take `unlisted` out");
}

}  // namespace soakwright
