// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/job_checks.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "core/procedure/heat/heat_tables.h"
#include "core/procedure/job/job_problems.h"
#include "core/units/name_match.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

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
                std::string_view key, const NameOf& name_of,
                ProblemWords (*same)(const std::string&, std::size_t)) {
  std::map<std::string, std::size_t> line_of_first;
  bool once = true;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const std::string name = name_to_match(name_of(entries[i]));
    if (name.empty()) continue;
    const auto [first, is_new] = line_of_first.emplace(name, entries[i].line);
    if (is_new) continue;
    once = false;
    in.complain(line_of(in, list, i, key), same(name_of(entries[i]), first->second));
  }
  return once;
}

void check_spares(const Job& job, TableReader& in) {
  const auto& all = job.thermocouples;
  std::map<std::string, const ThermocoupleEntry*> by_name;
  for (const ThermocoupleEntry& entry : all) {
    by_name.emplace(name_to_match(entry.column), &entry);
    if (entry.name) by_name.emplace(name_to_match(*entry.name), &entry);
  }
  std::map<std::string, std::size_t> line_of_spare;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!all[i].spare_for) continue;
    const std::string& spare_for = *all[i].spare_for;
    const auto complain = [&](ProblemWords words) {
      in.complain(line_of(in, "thermocouple", i, "spare_for"), std::move(words));
    };
    if (all[i].role != ThermocoupleRole::spare) {
      complain(job_problems::spare_of_another_role(spare_for));
      continue;
    }
    // One that the job does not list may still be a column of the log.
    const auto found = by_name.find(name_to_match(spare_for));
    const ThermocoupleEntry* const main_one = found == by_name.end() ? nullptr : found->second;
    if (main_one == &all[i]) {
      complain(job_problems::spare_for_itself(spare_for));
      continue;
    }
    if (main_one && main_one->spare_for)
      complain(job_problems::spare_for_spare(spare_for));
    else if (main_one &&
             (main_one->role == ThermocoupleRole::air || main_one->role == ThermocoupleRole::set_point ||
              main_one->role == ThermocoupleRole::off))
      complain(job_problems::spare_for_unevaluated(spare_for));
    const auto [first, is_new] =
        line_of_spare.emplace(name_to_match(main_one ? main_one->column : spare_for), all[i].line);
    if (!is_new) complain(job_problems::second_spare(spare_for, first->second));
  }
}

void check_welds(const Job& job, TableReader& in) {
  std::vector<std::string> known;
  if (job.weld) known.push_back(*job.weld);
  for (const WeldEntry& weld : job.welds) known.push_back(weld.number);
  for (std::size_t i = 0; i < job.thermocouples.size(); ++i) {
    const auto& weld = job.thermocouples[i].weld;
    if (!weld || std::find(known.begin(), known.end(), *weld) != known.end()) continue;
    in.complain(line_of(in, "thermocouple", i, "weld"), job_problems::weld_not_in_job(*weld, known));
  }
}

/// Cycles do not fall from record to record, up to this job's own; records of one cycle are parts of it.
void check_previous_record(const Job& job, TableReader& in) {
  if (job.previous_records.empty()) return;
  const auto log = [](const PreviousRecordEntry& entry) { return entry.log; };
  check_once(in, job.previous_records, "previous_record", "log", log, job_problems::same_previous_log);
  for (std::size_t i = 0; i < job.previous_records.size(); ++i) {
    const int cycle = cycle_of_previous(job, i);
    const int next = i + 1 < job.previous_records.size() ? cycle_of_previous(job, i + 1) : cycle_of(job);
    if (cycle >= 1 && cycle <= next) continue;
    in.complain(line_of(in, "previous_record", i, "cycle"),
                cycle < 1 ? job_problems::no_cycle_left(cycle, job.previous_records.size())
                          : job_problems::cycles_fall(cycle, next));
    return;
  }
}

}  // namespace

int cycle_of(const Job& job) { return job.cycle.value_or(static_cast<int>(job.previous_records.size()) + 1); }

int cycle_of_previous(const Job& job, std::size_t index) {
  return job.previous_records[index].cycle.value_or(cycle_of(job) -
                                                    static_cast<int>(job.previous_records.size() - index));
}

void check_reason(const ThermocoupleEntry& entry, TableReader& in) {
  const bool evaluated =
      (entry.role == ThermocoupleRole::control || entry.role == ThermocoupleRole::monitor) &&
      entry.zone == Zone::soak;
  if (!entry.reason || !evaluated) return;
  // A role or zone that could not be read has its own complaint.
  for (const char* key : {"role", "zone"})
    if (in.entry(key) != nullptr && !in.sound(key)) return;
  in.complain(in.line_of("reason"), job_problems::reason_of_evaluated());
}

void check_job(const Job& job, TableReader& in) {
  const auto column = [](const ThermocoupleEntry& entry) { return entry.column; };
  const auto name = [](const ThermocoupleEntry& entry) { return entry.name.value_or(entry.column); };
  if (check_once(in, job.thermocouples, "thermocouple", "column", column, job_problems::same_column))
    check_once(in, job.thermocouples, "thermocouple", "name", name, job_problems::same_thermocouple_name);
  const auto number = [](const WeldEntry& entry) { return entry.number; };
  check_once(in, job.welds, "weld", "number", number, job_problems::same_weld);
  const auto period = [](const PeriodEntry& entry) { return entry.name; };
  check_once(in, job.periods, "period", "name", period, job_problems::same_period);
  check_spares(job, in);
  check_welds(job, in);
  check_previous_record(job, in);
  check_hydrogen_period(job, in);
  if (job.reading.unlisted_off.value_or(false) && job.thermocouples.empty())
    in.complain(line_in(in, "import", "unlisted"), job_problems::unlisted_off_without_thermocouples());
}

}  // namespace soakwright
