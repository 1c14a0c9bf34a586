// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/job_file.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "core/procedure/heat/band_and_preheat_tables.h"
#include "core/procedure/heat/heat_tables.h"
#include "core/procedure/job/import_choices.h"
#include "core/procedure/job/job_checks.h"
#include "core/procedure/job/job_problems.h"
#include "core/procedure/job/job_words.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/text_file.h"
#include "core/procedure/toml/value_readers.h"
#include "core/units/quantity_text.h"
#include "core/units/sha256.h"

namespace soakwright {
namespace {

std::optional<Tolerance> tolerance(const FoundValue& found) {
  using Kind = Tolerance::Kind;
  constexpr std::pair<const char*, Kind> kTables[] = {{"class 1", Kind::class_1},
                                                      {"class 2", Kind::class_2},
                                                      {"standard", Kind::standard},
                                                      {"special", Kind::special}};
  const auto* const written = found.value.as<std::string>();
  for (const auto& [name, kind] : kTables)
    if (written && *written == name) return Tolerance{kind, {}};
  const auto fixed = written ? parse_plus_minus(*written) : std::nullopt;
  if (!fixed) return found.refuse(job_problems::not_a_tolerance(found));
  if (fixed->kelvin() < 0.0) return found.refuse(value_problems::negative(found));
  return Tolerance{Kind::fixed, *fixed};
}

std::optional<ColdJunction> cold_junction(const FoundValue& found) {
  const auto* const written = found.value.as<std::string>();
  if (!written) return found.refuse(job_problems::not_a_cold_junction(found));
  if (const auto fixed = parse_temperature(*written)) return *fixed;
  const auto column = name_text(found);
  return column ? std::optional<ColdJunction>{*column} : std::nullopt;
}

using Correction = std::vector<std::pair<Temperature, TemperatureDifference>>;

std::optional<Correction> correction(const FoundValue& found) {
  const auto* const list = found.value.as<TomlArray>();
  if (!list || list->values.empty()) return found.refuse(job_problems::not_a_correction(found));
  Correction out;
  for (const TomlValue& item : list->values) {
    const FoundValue point{item, found.name, found.complaints};
    const auto* const pair = item.as<TomlArray>();
    if (!pair || pair->values.size() != 2) return point.refuse(job_problems::not_a_correction(point));
    const auto at = TemperatureIn{}({pair->values[0], found.name, found.complaints});
    const auto step = number({pair->values[1], found.name, found.complaints});
    if (!at || !step) return std::nullopt;
    if (!out.empty() && !(out.back().first < *at))
      return point.refuse(job_problems::correction_not_rising(point));
    out.emplace_back(*at, TemperatureDifference::of_kelvin(*step));
  }
  return out;
}

using Details = std::vector<std::pair<std::string, std::string>>;

/// Any names with a text each, in the order of the file.
std::optional<Details> details(const FoundValue& found) {
  const auto* const table = found.value.as<TomlTable>();
  if (!table) return found.refuse(job_problems::not_details(found));
  std::vector<const TomlEntry*> entries;
  for (const TomlEntry& entry : table->entries) entries.push_back(&entry);
  std::sort(entries.begin(), entries.end(),
            [](const TomlEntry* a, const TomlEntry* b) { return a->key_place.begin < b->key_place.begin; });
  Details out;
  for (const TomlEntry* entry : entries) {
    const auto said =
        text({entry->value, fmt::format("{}.{}", found.name, shown(entry->key)), found.complaints});
    if (!said) return std::nullopt;
    out.emplace_back(entry->key, *said);
  }
  return out;
}

void read_thermocouple(TableReader& in, ThermocoupleEntry& entry) {
  entry.line = in.line();
  in.must("column", column_name, entry.column);
  in.may("name", name_text, entry.name);
  in.may("weld", name_text, entry.weld);
  const bool role_given = in.may("role", one_of(kRoleWords), entry.role);
  in.may("zone", one_of(kZoneWords), entry.zone);
  in.may("position", place_m, entry.position_m);
  in.may("angle", angle_deg, entry.angle_deg);
  in.may("unit",
         unit_word<ChannelUnit>({{"C", ChannelUnit::celsius},
                                 {"F", ChannelUnit::fahrenheit},
                                 {"K", ChannelUnit::kelvin},
                                 {"mV", ChannelUnit::millivolt}}),
         entry.unit);
  in.may("type", one_of(kThermocoupleTypeWords), entry.type);
  in.may("cold_junction", cold_junction, entry.cold_junction);
  in.may("tolerance", tolerance, entry.tolerance);
  in.may("extension", plus_minus, entry.extension);
  in.may("correction", correction, entry.correction);
  in.may("certificate", text, entry.certificate);
  in.may("valid_until", date, entry.valid_until);
  if (in.may("spare_for", column_name, entry.spare_for) && !role_given) entry.role = ThermocoupleRole::spare;
  in.may("reason", name_text, entry.reason);
  check_reason(entry, in);
}

/// Complains where both are of one kind, clock, printed time or seconds, and `to` does not follow `from`.
/// Across the kinds only the log can tell.
void check_order(TableReader& in, const Moment& from, const Moment& to, bool may_be_one_instant) {
  if (!in.sound("from") || !in.sound("to") || from.index() != to.index()) return;
  if (from < to || (may_be_one_instant && from == to)) return;
  in.complain(in.line_of("to"), job_problems::to_not_after_from(std::holds_alternative<PrintedTime>(from)));
}

void read_exclusion(TableReader& in, ExclusionEntry& entry) {
  entry.line = in.line();
  in.must("column", column_name, entry.column);
  in.must("from", moment, entry.from);
  if (in.may("to", moment, entry.to)) check_order(in, entry.from, *entry.to, true);
  in.must("reason", name_text, entry.reason);
}

/// Only what keeps readings out of the evaluation can be confirmed; a spike, say, is evaluated all the same.
void read_confirmation(TableReader& in, ConfirmationEntry& entry) {
  entry.line = in.line();
  in.must("column", column_name, entry.column);
  in.must("suspect",
          one_of<std::string>(
              {{"open", "open"}, {"stuck", "stuck"}, {"copied", "copied"}, {"clipped", "clipped"}}),
          entry.suspect);
  in.must("reason", name_text, entry.reason);
}

void read_from_and_to(TableReader& in, Moment& from, Moment& to) {
  in.must("from", moment, from);
  in.must("to", moment, to);
  check_order(in, from, to, false);
}

/// TOML has room for one `weld`: the number of the only weld, or a table for each.
void read_welds(TableReader& in, Job& job) {
  const TomlEntry* const weld = in.entry("weld");
  if (!weld || weld->value.as<std::string>()) {
    in.may("weld", name_text, job.weld);
    return;
  }
  in.each("weld", "[[weld]]", [&](TableReader& inner) {
    WeldEntry& entry = job.welds.emplace_back();
    entry.line = inner.line();
    inner.must("number", name_text, entry.number);
    inner.may("thickness", thickness, entry.thickness);
    inner.may("material", text, entry.material);
    read_preheat(inner, entry.composition, entry.minimum_preheat);
  });
}

void read_job_keys(TableReader& in, Job& job) {
  in.may("work", text, job.work);
  read_welds(in, job);
  in.may("client", text, job.client);
  in.may("contractor", text, job.contractor);
  in.may("material", text, job.material);
  in.may("drawing", text, job.drawing);
  in.may("equipment", text, job.equipment);
  in.may("report_number", text, job.report_number);
  in.may("details", details, job.details);
  in.elsewhere("thickness", job_problems::thickness_of_job());
  read_preheat(in, job.composition, job.minimum_preheat);
  read_bands(in, job);
  in.may("cycle", count_from_1, job.cycle);
  if (in.may("log", path_value, job.log)) job.log_line = in.line_of("log");
  if (in.may("procedure", path_value, job.procedure)) job.procedure_line = in.line_of("procedure");
  in.each("thermocouple", "[[thermocouple]]",
          [&](TableReader& inner) { read_thermocouple(inner, job.thermocouples.emplace_back()); });
  in.each("exclude", "[[exclude]]",
          [&](TableReader& inner) { read_exclusion(inner, job.exclusions.emplace_back()); });
  in.each("confirm", "[[confirm]]",
          [&](TableReader& inner) { read_confirmation(inner, job.confirmations.emplace_back()); });
  in.each("period", "[[period]]", [&](TableReader& inner) {
    PeriodEntry& entry = job.periods.emplace_back();
    entry.line = inner.line();
    inner.must("name", name_text, entry.name);
    read_from_and_to(inner, entry.from, entry.to);
  });
  in.each("remark", "[[remark]]", [&](TableReader& inner) {
    RemarkEntry& entry = job.remarks.emplace_back();
    entry.line = inner.line();
    inner.must("at", moment, entry.at);
    inner.must("text", text, entry.text);
  });
  in.each("previous_record", "[[previous_record]]", [&](TableReader& inner) {
    PreviousRecordEntry& entry = job.previous_records.emplace_back();
    entry.line = inner.line();
    inner.must("log", path_value, entry.log);
    inner.may("job", path_value, entry.job);
    inner.may("cycle", count_from_1, entry.cycle);
  });
  in.table("import", "[import]", [&](TableReader& inner) { read_import_choices(inner, job.reading); });
  in.table("time_range", "[time_range]", [&](TableReader& inner) {
    job.time_range_line = inner.line();
    auto& [from, to] = job.time_range.emplace();
    read_from_and_to(inner, from, to);
  });
  in.table("recorder", "[recorder]", [&](TableReader& inner) {
    RecorderEntry& recorder = job.recorder.emplace();
    inner.may("accuracy", plus_minus, recorder.accuracy);
    inner.may("resolution", resolution, recorder.resolution);
    inner.may("certificate", text, recorder.certificate);
    inner.may("valid_until", date, recorder.valid_until);
  });
  in.table("hydrogen", "[hydrogen]",
           [&](TableReader& inner) { read_hydrogen(inner, job.hydrogen.emplace()); });
  in.table("qualified", "[qualified]",
           [&](TableReader& inner) { read_qualified(inner, job.qualified.emplace()); });
  in.table("company", "[company]", [&](TableReader& inner) {
    CompanyEntry& company = job.company.emplace();
    inner.must("name", name_text, company.name);
    inner.may("address", text, company.address);
    inner.may("picture", path_value, company.picture);
  });
}

/// The parser knows only that there are two `weld`.
Problems with_hint_about_welds(Problems problems) {
  for (Problem& problem : problems)
    if (problem.what.find("redefine") != std::string::npos &&
        problem.what.find("'weld'") != std::string::npos)
      problem = job_problems::weld_written_twice(std::move(problem));
  return problems;
}

}  // namespace

Result<Job> parse_job(std::string_view source, const std::string& file) {
  auto job = read_document<Job>(source, file, TomlFileKind::job, [](TableReader& in, Job& value) {
    read_job_keys(in, value);
    check_job(value, in);
    check_preheat_and_bands(in, value);
  });
  if (!job) return with_hint_about_welds(job.problems());
  job.value().file = file;
  job.value().sha256 = sha256_hex(source);
  return job;
}

Result<Job> read_job(const std::string& path) {
  const auto bytes = read_text_file(path);
  if (!bytes) return bytes.problems();
  return parse_job(bytes.value(), path);
}

}  // namespace soakwright
