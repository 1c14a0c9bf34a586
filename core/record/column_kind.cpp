// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/column_kind.h"

#include <algorithm>
#include <set>
#include <utility>

#include "core/read/unit_name.h"
#include "core/record/column_course.h"
#include "core/record/column_name.h"
#include "core/units/temperature.h"

namespace soakwright {
namespace {

using Says = ColumnName::Says;

std::optional<ChannelUnit> channel_unit(SaidUnit unit) {
  switch (unit) {
    case SaidUnit::celsius:
      return ChannelUnit::celsius;
    case SaidUnit::fahrenheit:
      return ChannelUnit::fahrenheit;
    case SaidUnit::kelvin:
      return ChannelUnit::kelvin;
    case SaidUnit::millivolt:
      return ChannelUnit::millivolt;
    default:
      return std::nullopt;
  }
}

/// "TC3 (N)", "side (W)", "north (in)": the type of a thermocouple or its place as often as a unit.
bool may_be_no_unit(const LogColumn& column) {
  if (column.unit.size() == 1) return !said_unit(column) && column.unit != "%";
  const std::string unit = lower_case(column.unit);
  return unit == "in" || unit == "mm" || unit == "cm";
}

ColumnCourse in_celsius(ColumnCourse course, ChannelUnit unit) {
  if (unit != ChannelUnit::fahrenheit && unit != ChannelUnit::kelvin) return course;
  const TemperatureUnit scale =
      unit == ChannelUnit::fahrenheit ? TemperatureUnit::fahrenheit : TemperatureUnit::kelvin;
  for (double& value : course.values) value = Temperature::of(value, scale).celsius();
  course.last_digit = TemperatureDifference::of(course.last_digit, scale).kelvin();
  return course;
}

double highest_of(const ColumnCourse& course) {
  double highest = -1e9;
  for (const double value : course.values)
    if (value > highest) highest = value;
  return highest;
}

class KindFinder {
 public:
  KindFinder(const LogTable& table, std::span<const double> times_s,
             std::optional<ChannelUnit> unit_of_unnamed)
      : table_(table), times_s_(times_s), unit_of_unnamed_(unit_of_unnamed) {}

  std::vector<ColumnKind> find() {
    for (const LogColumn& column : table_.columns) names_.push_back(meaning_of_name(column.name));
    kinds_.resize(table_.columns.size());
    std::vector<std::size_t> unclear;
    for (std::size_t i = 0; i < kinds_.size(); ++i)
      if (!settle_at_once(i)) unclear.push_back(i);
    if (unclear.empty()) return std::move(kinds_);
    rows_ = sampled_rows(table_.rows());
    make_group(unclear);
    for (const std::size_t i : unclear) settle_by_readings(i);
    keep_families_together(unclear);
    return std::move(kinds_);
  }

 private:
  [[nodiscard]] ChannelUnit unit_of(std::size_t i) const {
    return said_unit(table_.columns[i]).value_or(unit_of_unnamed_.value_or(ChannelUnit::celsius));
  }
  void evaluate(std::size_t i, bool name_unclear) {
    const LogColumn& column = table_.columns[i];
    ColumnKind& kind = kinds_[i];
    kind.temperature = true;
    kind.unit = unit_of(i);
    kind.unit_assumed = !said_unit(column) && !unit_of_unnamed_;
    kind.is_degrees = kind.unit != ChannelUnit::millivolt;
    kind.name_unclear = name_unclear;
    kind.why = {};
    if (kind.unit == ChannelUnit::kelvin && said_unit(column) && is_type_k(column)) {
      kind.unit = unit_of_unnamed_.value_or(ChannelUnit::celsius);
      kind.unit_assumed = !unit_of_unnamed_;
    }
  }
  void leave_out(std::size_t i, ColumnReason why) {
    ColumnKind& kind = kinds_[i];
    kind = {};
    kind.why = std::move(why);
    kind.unit = unit_of(i);
    kind.is_degrees = kind.unit != ChannelUnit::millivolt &&
                      (said_unit(table_.columns[i]) || names_[i].says == Says::set_point ||
                       names_[i].says == Says::cold_junction);
  }

  /// "(K)" above readings that no kelvin scale has on a shop floor is the type of the thermocouple.
  [[nodiscard]] bool is_type_k(const LogColumn& column) const {
    constexpr double kColdestKelvin = 200.0;
    if (column.numbers == 0 || column.lowest >= kColdestKelvin) return false;
    if (column.highest < kColdestKelvin) return true;
    // One reading of 0 is a fault; a tenth of the record is a course.
    const ColumnCourse course = course_of(table_, column, times_s_, sampled_rows(table_.rows()));
    const auto cold = std::count_if(course.values.begin(), course.values.end(),
                                    [](double value) { return value < kColdestKelvin && value != 0.0; });
    return 10 * static_cast<std::size_t>(cold) >= readings_in(course);
  }

  /// False where the readings have to be looked at.
  bool settle_at_once(std::size_t i) {
    const LogColumn& column = table_.columns[i];
    const ColumnName& name = names_[i];
    if (said_unit(column)) {
      if (name.says == Says::set_point || name.says == Says::cold_junction)
        return column.numbers == 0 && keep_empty(i);
      evaluate(i, name.says == Says::output);
      return true;
    }
    if (!column.unit.empty() &&
        !(may_be_no_unit(column) && name.says == Says::nothing && !is_time_name(column.name))) {
      leave_out(i, {ColumnContent::other_unit, column.unit});
      return true;
    }
    if (column.numbers == 0) return keep_empty(i);
    if (!column.unit.empty() || name.says != Says::nothing) return false;
    evaluate(i, false);
    return true;
  }
  bool keep_empty(std::size_t i) {
    const LogColumn& column = table_.columns[i];
    leave_out(i, {names_[i].says != Says::nothing ? names_[i].why
                  : column.texts.count != 0       ? ColumnContent::text
                                                  : ColumnContent::empty});
    return true;
  }

  [[nodiscard]] ColumnCourse course_in_celsius(std::size_t i) const {
    const LogColumn& column = table_.columns[i];
    return in_celsius(course_of(table_, column, times_s_, rows_), unit_of(i));
  }

  /// The thermocouples that others are compared with: those about which nothing is unclear.
  void make_group(const std::vector<std::size_t>& unclear) {
    constexpr std::size_t kEnough = 15;
    std::vector<std::size_t> members;
    for (std::size_t i = 0; i < kinds_.size(); ++i)
      if (kinds_[i].temperature && kinds_[i].is_degrees && table_.columns[i].numbers != 0)
        members.push_back(i);
    std::vector<ColumnCourse> courses;
    const std::size_t count = std::min(members.size(), kEnough);
    for (std::size_t k = 0; k < count; ++k)
      courses.push_back(course_in_celsius(members[k * members.size() / count]));
    if (courses.empty()) {
      // Every name is unclear: what is clearly no temperature does not count, one column alone proves
      // nothing.
      for (const std::size_t i : unclear) {
        if (names_[i].says == Says::set_point || names_[i].says == Says::cold_junction) continue;
        ColumnCourse course = course_in_celsius(i);
        const bool share = names_[i].says == Says::output && all_within(course, -5.0, 105.0);
        if (!share && !are_states(course) && !counts_rows(course, rows_))
          courses.push_back(std::move(course));
      }
      if (courses.size() < 2) return;
      if (courses.size() > kEnough) courses.resize(kEnough);
    }
    group_ = median_of(courses);
    members_ = std::move(courses);
  }

  void settle_by_readings(std::size_t i) {
    const ColumnCourse course = course_in_celsius(i);
    switch (names_[i].says) {
      case Says::set_point:
        // The number of a programme or of its step.
        if (!said_unit(table_.columns[i]) && are_states(course))
          return leave_out(i, {ColumnContent::set_point});
        // A set point is no input that can fail.
        if (table_.columns[i].texts.count == 0 && runs_as_a_set_point(names_[i], course))
          return leave_out(i, {ColumnContent::set_point});
        break;
      case Says::cold_junction:
        // Near ambient throughout: a cabinet warms up in a day, but by no more than that.
        if (names_[i].plain && all_within(course, -20.0, 70.0) && range_of(course) <= 30.0)
          return leave_out(i, {ColumnContent::cold_junction});
        break;
      case Says::nothing:
      case Says::output:
      case Says::counter:
      case Says::other:
        if (!is_a_thermocouple(i, course))
          return leave_out(i, names_[i].says == Says::nothing
                                  ? ColumnReason{ColumnContent::other_unit, table_.columns[i].unit}
                                  : ColumnReason{names_[i].why});
        break;
    }
    evaluate(i, true);
  }

  /// Straight pieces without scatter, where the thermocouples scatter.
  [[nodiscard]] bool runs_as_a_set_point(const ColumnName& name, const ColumnCourse& course) const {
    constexpr std::size_t kReadingsToAPiece = 25;
    constexpr std::size_t kFewPieces = 3;
    const std::size_t readings = readings_in(course);
    const std::size_t pieces = straight_pieces(course);
    if (pieces > kFewPieces + readings / kReadingsToAPiece) return false;
    if (corners(course) > std::max<std::size_t>(1, readings / 10)) return false;
    constexpr std::size_t kReadingsToATurn = 100;
    if (turns(course) > 2 + readings / kReadingsToATurn) return false;
    const bool straighter = group_ && 4 * pieces <= pieces_of_members(course);
    // "SP-101" is a spool unless it is plainly not measured.
    if (!name.plain && !straighter) return false;
    if (pieces > kFewPieces && group_ && !straighter) return false;
    return !group_ || name.spelled_out || is_as_high_as_the_group(course);
  }
  /// The median of what the thermocouples need, where `course` has readings.
  [[nodiscard]] std::size_t pieces_of_members(const ColumnCourse& course) const {
    std::vector<std::size_t> pieces;
    for (const ColumnCourse& member : members_)
      pieces.push_back(straight_pieces(where_both_read(member, course)));
    std::sort(pieces.begin(), pieces.end());
    return pieces.empty() ? 0 : pieces[pieces.size() / 2];
  }
  /// A programme leads the work to its temperature; a thermocouple that came off may be straight too.
  [[nodiscard]] bool is_as_high_as_the_group(const ColumnCourse& course) const {
    constexpr double kRuns = 100.0;
    constexpr double kShare = 0.75;
    const double group = highest_of(*group_);
    return group < kRuns || highest_of(course) >= kShare * group;
  }

  [[nodiscard]] bool is_a_thermocouple(std::size_t i, const ColumnCourse& course) const {
    if (are_states(course) || counts_rows(course, rows_)) return false;
    const bool share = names_[i].says == Says::output && all_within(course, -5.0, 105.0);
    if (names_[i].names_thermocouple && !share) return true;
    return group_ && runs_as(course, *group_, share);
  }

  /// "SP-101" and "SP-102" are things of one kind: where one is a thermocouple, so is the other, even if it
  /// is stuck.
  void keep_families_together(const std::vector<std::size_t>& unclear) {
    const auto stem = [this](std::size_t i) {
      std::string name = lower_case(table_.columns[i].name);
      name.erase(std::remove_if(name.begin(), name.end(), [](char c) { return c >= '0' && c <= '9'; }),
                 name.end());
      return name;
    };
    std::set<std::string> evaluated;
    for (const std::size_t i : unclear)
      if (kinds_[i].temperature) evaluated.insert(stem(i));
    for (const std::size_t i : unclear)
      if (kinds_[i].why.content == ColumnContent::set_point && !names_[i].spelled_out &&
          table_.columns[i].numbers != 0 && evaluated.count(stem(i)) != 0)
        evaluate(i, true);
  }

  const LogTable& table_;
  std::span<const double> times_s_;
  std::optional<ChannelUnit> unit_of_unnamed_;
  std::vector<ColumnName> names_;
  std::vector<ColumnKind> kinds_;
  std::vector<std::size_t> rows_;
  std::optional<ColumnCourse> group_;
  std::vector<ColumnCourse> members_;
};

}  // namespace

std::optional<ChannelUnit> said_unit(const LogColumn& column) {
  const auto said = unit_of(column.unit);
  return said ? channel_unit(*said) : std::nullopt;
}

std::vector<ColumnKind> kinds_of(const LogTable& table, std::span<const double> times_s,
                                 std::optional<ChannelUnit> unit_of_unnamed) {
  return KindFinder{table, times_s, unit_of_unnamed}.find();
}

}  // namespace soakwright
