// SPDX-License-Identifier: GPL-3.0-or-later
// What was heated and where each thermocouple sat: the job, as a plain value.
//
// Made by read_job() (job_file.h) from TOML. Optional throughout: a log without a job is evaluated on every
// temperature column.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "core/procedure/heat/composition.h"
#include "core/procedure/heat/diffusivity.h"
#include "core/units/local_time.h"
#include "core/units/printed_time.h"
#include "core/units/temperature.h"
#include "core/units/thickness.h"

namespace soakwright {

enum class ThermocoupleRole { control, monitor, spare, air, set_point, off };
/// Whether such a thermocouple measures the work: it is evaluated, or waits as a spare.
constexpr bool on_the_work(ThermocoupleRole role) {
  return role == ThermocoupleRole::control || role == ThermocoupleRole::monitor ||
         role == ThermocoupleRole::spare;
}
enum class Zone { soak, edge };
enum class ChannelUnit { celsius, fahrenheit, kelvin, millivolt };
enum class ThermocoupleType { K, J, N, E, T, R, S, B };

/// Seconds from the log's first sample, or a moment as the log prints it.
using Moment = std::variant<double, LocalTime, PrintedTime>;

/// "class 1", "standard" … of the published tables, or plus-minus a fixed value.
struct Tolerance {
  enum class Kind { class_1, class_2, standard, special, fixed };
  Kind kind = Kind::fixed;
  TemperatureDifference fixed;  ///< for Kind::fixed
  bool operator==(const Tolerance&) const = default;
};

/// The temperature of an emf column's terminals: a column of the log, or a fixed temperature.
using ColdJunction = std::variant<std::string, Temperature>;

struct ThermocoupleEntry {
  std::size_t line = 0;  ///< in the job file
  std::string column;    ///< header cell, name without unit, or the column's number
  std::optional<std::string> name;
  std::optional<std::string> weld;
  ThermocoupleRole role = ThermocoupleRole::monitor;
  Zone zone = Zone::soak;
  std::optional<double> position_m;
  std::optional<double> angle_deg;
  std::optional<ChannelUnit> unit;
  std::optional<ThermocoupleType> type;
  std::optional<ColdJunction> cold_junction;
  std::optional<Tolerance> tolerance;
  std::optional<TemperatureDifference> extension;
  std::vector<std::pair<Temperature, TemperatureDifference>>
      correction;  ///< ascending; straight lines between
  std::optional<std::string> certificate;
  std::optional<CivilDate> valid_until;
  std::optional<std::string> spare_for;
  std::optional<std::string> reason;  ///< why it is not evaluated
  bool operator==(const ThermocoupleEntry&) const = default;
};

/// Published tables of minimum preheat.
enum class PreheatTable { aws_d1_1_category_b };

struct WeldEntry {
  std::size_t line = 0;
  std::string number;
  std::optional<Thickness> thickness;
  std::optional<std::string> material;
  std::optional<Composition> composition;       ///< without it the job's
  std::optional<PreheatTable> minimum_preheat;  ///< the same
  bool operator==(const WeldEntry&) const = default;
};

/// The bands of a local heat treatment; widths are whole, both sides of the weld.
struct BandEntry {
  std::size_t line = 0;
  std::optional<std::string> weld;
  Thickness diameter;             ///< outside
  std::optional<Thickness> wall;  ///< without it the thickness of the weld (band_wall.h)
  std::optional<Thickness> soak_band, heated_band;
  double centre_m = 0.0;  ///< of the weld, on the scale of the thermocouples' positions
  bool operator==(const BandEntry&) const = default;
};

struct ExclusionEntry {
  std::size_t line = 0;
  std::string column;
  Moment from;
  std::optional<Moment> to;
  std::string reason;
  bool operator==(const ExclusionEntry&) const = default;
};

struct ConfirmationEntry {
  std::size_t line = 0;
  std::string column;
  std::string suspect;  ///< open, stuck, copied, clipped
  std::string reason;
  bool operator==(const ConfirmationEntry&) const = default;
};

struct PeriodEntry {
  std::size_t line = 0;
  std::string name;
  Moment from;
  Moment to;
  bool operator==(const PeriodEntry&) const = default;
};

struct RemarkEntry {
  std::size_t line = 0;
  Moment at;
  std::string text;
  bool operator==(const RemarkEntry&) const = default;
};

/// A previous record of the same welds: a heat treatment before this one.
struct PreviousRecordEntry {
  std::size_t line = 0;
  std::string log;  ///< path from the job file
  std::optional<std::string>
      job;                   ///< the same; without it this job's thermocouples, welds and recorder count
  std::optional<int> cycle;  ///< default: counted back from this record's
  bool operator==(const PreviousRecordEntry&) const = default;
};

enum class DateOrder { dmy, mdy, ymd };
enum class LogEncoding { utf_8, utf_16_le, utf_16_be, windows_1252 };
enum class TimeMeaning {
  date_time,
  time_of_day,
  elapsed_s,
  elapsed_min,
  elapsed_h,
  elapsed_hms,
  serial_days,
  unix_s,
  unix_ms,
};

/// What a person settled about the file.
struct ImportChoices {
  std::optional<LogEncoding> encoding;
  std::optional<char> delimiter;  ///< ' ' for runs of spaces
  std::optional<char> decimal;
  std::optional<std::size_t> header_line;  ///< of the column names, from 1; 0: there is none
  std::optional<std::string> time_column;  ///< header cell, name without unit, or the column's number
  std::optional<TimeMeaning> time;
  std::optional<DateOrder> dates;
  std::optional<CivilDate> date;  ///< of the first row, where the log has a time of day only
  std::size_t date_line = 0;
  std::optional<LocalTime> start;  ///< of elapsed time 0, where the log has elapsed time only
  std::size_t start_line = 0;
  std::optional<LocalTime> clock_forward;
  std::size_t clock_forward_line = 0;
  std::optional<ChannelUnit> unit;  ///< of every temperature column that names none; not millivolt
  std::size_t unit_line = 0;
  std::optional<bool> unlisted_off;  ///< columns that the job does not list are not evaluated
  bool operator==(const ImportChoices&) const = default;
};

struct RecorderEntry {
  std::optional<TemperatureDifference> accuracy;
  std::optional<TemperatureDifference> resolution;
  std::optional<std::string> certificate;
  std::optional<CivilDate> valid_until;
  bool operator==(const RecorderEntry&) const = default;
};

enum class HydrogenShape { plate, cylinder };

/// [hydrogen]: what part of the hydrogen is left after the curve, an indication.
struct HydrogenEntry {
  std::size_t line = 0;
  HydrogenShape shape = HydrogenShape::plate;
  std::optional<Thickness> thickness;  ///< of a plate; without it the weld's
  std::optional<Thickness> diameter;   ///< of a cylinder
  Diffusivity diffusivity;
  std::optional<std::string> after;  ///< a period of the job: counted from its end, else from the start
  std::size_t after_line = 0;
  bool operator==(const HydrogenEntry&) const = default;
};

/// A hold that the material was qualified with.
struct QualifiedHold {
  Temperature at;
  double seconds = 0.0;
  bool operator==(const QualifiedHold&) const = default;
};

/// [qualified]: the tempering that the material was qualified for, for a comparison.
struct QualifiedEntry {
  std::size_t line = 0;
  std::optional<double> parameter;  ///< Hollomon-Jaffe parameter / 1000, or
  std::vector<QualifiedHold> holds;
  std::string source;
  bool operator==(const QualifiedEntry&) const = default;
};

/// Who issues the report.
struct CompanyEntry {
  std::string name;
  std::optional<std::string> address;
  std::optional<std::string> picture;  ///< path from the job file to a PNG or JPEG file
  bool operator==(const CompanyEntry&) const = default;
};

struct Job {
  std::string file;    ///< as the user named it
  std::string sha256;  ///< of the file's bytes, hexadecimal
  std::optional<std::string> work, weld, client, contractor, material, drawing, equipment, report_number;
  std::vector<std::pair<std::string, std::string>> details;  ///< further lines for the report, as ordered
  std::optional<int> cycle;
  std::optional<std::string> log, procedure;  ///< as written; named_path() gives the path
  std::size_t log_line = 0, procedure_line = 0;
  std::vector<WeldEntry> welds;
  std::optional<Composition> composition;
  std::optional<PreheatTable> minimum_preheat;
  std::vector<BandEntry> bands;
  std::vector<ThermocoupleEntry> thermocouples;
  std::vector<ExclusionEntry> exclusions;
  std::vector<ConfirmationEntry> confirmations;
  std::vector<PeriodEntry> periods;
  std::vector<RemarkEntry> remarks;
  std::vector<PreviousRecordEntry> previous_records;  ///< in the order in which they were run
  ImportChoices reading;
  std::optional<std::pair<Moment, Moment>> time_range;
  std::size_t time_range_line = 0;
  std::optional<RecorderEntry> recorder;
  std::optional<HydrogenEntry> hydrogen;
  std::optional<QualifiedEntry> qualified;
  std::optional<CompanyEntry> company;
  bool operator==(const Job&) const = default;
};

/// Which heat treatment of its welds the job's record is: as it says, else one more than the earlier ones.
int cycle_of(const Job& job);
/// The same of job.previous_records[index].
int cycle_of_previous(const Job& job, std::size_t index);

}  // namespace soakwright
