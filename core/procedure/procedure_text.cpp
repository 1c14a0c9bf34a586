// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/procedure_text.h"

#include <cmath>
#include <string_view>
#include <utility>
#include <variant>

#include <fmt/format.h>

#include "core/procedure/procedure_words.h"
#include "core/units/duration_text.h"
#include "core/units/number_text.h"
#include "core/units/quantity_text.h"

namespace soakwright {
namespace {

/// The text of `value`, or of a decimal near it that `reads_back` takes for the same thing.
template <typename ReadsBack>
std::string decimal_or_exact(double value, const ReadsBack& reads_back) {
  constexpr double kMostPlaces = 1e6;
  for (double places = 1.0; places <= kMostPlaces; places *= 10.0) {
    const double rounded = std::round(value * places) / places;
    if (reads_back(rounded)) return number_text(rounded);
  }
  return number_text(value);
}

/// TOML's basic string: quotes, backslashes and control characters are escaped.
std::string in_quotes(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\')
      out += std::string{"\\"} + c;
    else if (byte < 0x20U || byte == 0x7FU)
      out += fmt::format("\\u{:04X}", byte);
    else
      out += c;
  }
  return out + '"';
}

std::string duration_words(double seconds) {
  constexpr std::pair<const char*, double> kUnits[] = {{"h", 3600.0}, {"min", 60.0}};
  for (const auto& [unit, length] : kUnits) {
    const double count = std::round(seconds / length * 1e3) / 1e3;
    const bool whole = count == std::round(count) || length == 60.0;
    std::string text = number_text(count) + " " + unit;
    if (whole && count >= 1.0 && parse_duration(text) == seconds) return text;
  }
  return number_text(seconds) + " s";
}

class Writer {
 public:
  explicit Writer(const Procedure& procedure) : procedure_(procedure), unit_(procedure.unit) {}

  std::string text(const ProcedureComments& comments) {
    write_comments(comments.head);
    pair("soakwright", in_quotes("procedure 1"));
    pair("number", in_quotes(procedure_.number));
    text_if("revision", procedure_.revision);
    text_if("title", procedure_.title);
    pair("unit", in_quotes(unit_ == TemperatureUnit::fahrenheit ? "F" : "C"));
    if (procedure_.thickness) pair("thickness", in_quotes(length(*procedure_.thickness)));
    provenance(procedure_.provenance);
    evaluation();
    record(comments.record);
    for (std::size_t i = 0; i < procedure_.stages.size(); ++i) {
      out_ += '\n';
      if (i < comments.stages.size()) write_comments(comments.stages[i]);
      stage(procedure_.stages[i]);
    }
    return std::move(out_);
  }

 private:
  void write_comments(const std::vector<std::string>& lines) {
    for (const std::string& line : lines) out_ += "# " + line + "\n";
  }
  void pair(std::string_view key, const std::string& value) {
    ((out_ += key) += " = ").append(value) += '\n';
  }
  void text_if(std::string_view key, const std::optional<std::string>& value) {
    if (value) pair(key, in_quotes(*value));
  }
  template <typename Value, typename Print>
  void pair_if(std::string_view key, const std::optional<Value>& value, const Print& print) {
    if (value) pair(key, print(*value));
  }
  void duration_if(std::string_view key, std::optional<double> seconds) {
    if (seconds) pair(key, in_quotes(duration_words(*seconds)));
  }
  void number_if(std::string_view key, std::optional<double> value) {
    if (value) pair(key, number_text(*value));
  }

  /// Temperature, difference and rate alike: `Value::of()` reads what `in()` gives.
  template <typename Value>
  [[nodiscard]] std::string in_unit(Value value) const {
    return decimal_or_exact(value.in(unit_),
                            [&](double rounded) { return Value::of(rounded, unit_) == value; });
  }
  template <typename Value>
  void limit_if(std::string_view key, const std::optional<Value>& value) {
    if (value) pair(key, in_unit(*value));
  }

  [[nodiscard]] std::string length(Thickness thickness) const {
    const auto in = [&](LengthUnit unit) {
      return decimal_or_exact(thickness.in(unit),
                              [&](double rounded) { return Thickness::of(rounded, unit) == thickness; });
    };
    constexpr std::size_t kDecimal = 8;  // with more letters it is no decimal that a person writes
    const std::string inches = in(LengthUnit::inch);
    if (unit_ == TemperatureUnit::fahrenheit && inches.size() <= kDecimal &&
        parse_thickness(inches + " in") == thickness)
      return inches + " in";
    return in(LengthUnit::millimetre) + " mm";
  }
  [[nodiscard]] std::string distance(double metres) const {
    constexpr double kFoot = 0.3048;
    const std::string feet = number_text(std::round(metres / kFoot * 1e3) / 1e3) + " ft";
    if (unit_ == TemperatureUnit::fahrenheit && parse_length_m(feet) == metres) return feet;
    return number_text(metres) + " m";
  }

  [[nodiscard]] std::string rate_limit(const RateLimit& limit) const {
    if (const auto* plain = std::get_if<HeatingRate>(&limit)) return in_unit(*plain);
    const auto& rule = std::get<RateRule>(limit);
    std::string text = fmt::format("{{ over = {}, per = \"{}\"", in_unit(rule.over),
                                   rule.per == LengthUnit::inch ? "in" : "mm");
    if (rule.at_least) text += ", at_least = " + in_unit(*rule.at_least);
    if (rule.at_most) text += ", at_most = " + in_unit(*rule.at_most);
    return text + " }";
  }
  [[nodiscard]] std::string time_limit(const TimeLimit& limit) const {
    if (const auto* plain = std::get_if<double>(&limit)) return in_quotes(duration_words(*plain));
    const auto& rule = std::get<TimeRule>(limit);
    std::string text = "{ points = [";
    for (const auto& [thickness, seconds] : rule.points)
      text += fmt::format("{}[{}, {}]", text.ends_with('[') ? "" : ", ", in_quotes(length(thickness)),
                          in_quotes(duration_words(seconds)));
    text += "]";
    if (rule.beyond)
      text += ", beyond = " +
              in_quotes(duration_words(rule.beyond->seconds) + " per " + length(rule.beyond->per));
    if (rule.step) text += ", step = " + in_quotes(length(*rule.step));
    return text + " }";
  }

  void provenance(const Provenance& provenance) {
    text_if("source", provenance.source);
    text_if("edition", provenance.edition);
    text_if("clause", provenance.clause);
    if (provenance.flag) pair("flag", in_quotes(kProvenanceFlagWords.of(*provenance.flag)));
  }

  void evaluation() {
    const Evaluation& found = procedure_.evaluation;
    const Evaluation usual;
    if (found == usual) return;
    out_ += "\n[evaluation]\n";
    if (found.rate_window_s != usual.rate_window_s) duration_if("rate_window", found.rate_window_s);
    if (found.decision == Decision::guarded) pair("decision_rule", in_quotes("guarded"));
    duration_if("interpolate_max", found.interpolate_max_s);
    if (found.excursion_allowed.depth)
      pair("excursion_allowed", fmt::format("{{ time = {}, depth = {} }}",
                                            in_quotes(duration_words(found.excursion_allowed.time_s)),
                                            in_unit(*found.excursion_allowed.depth)));
    else if (found.excursion_allowed.time_s > 0.0)
      duration_if("excursion_allowed", found.excursion_allowed.time_s);
    if (found.in_range_min_s != usual.in_range_min_s) duration_if("in_range_min", found.in_range_min_s);
  }

  void record(const std::vector<std::string>& comments) {
    const RecordLimits& limits = procedure_.record_limits;
    if (limits == RecordLimits{}) return;
    out_ += '\n';
    write_comments(comments);
    out_ += "[record]\n";
    limit_if("temperature_max", limits.temperature_max);
    limit_if("start_temperature_max", limits.start_temperature_max);
    limit_if("end_temperature_max", limits.end_temperature_max);
    duration_if("gap_max", limits.gap_max_s);
    duration_if("sampling_interval_max", limits.sampling_interval_max_s);
    if (limits.thermocouples_min) pair("thermocouples_min", std::to_string(*limits.thermocouples_min));
  }

  void spread(const std::optional<TemperatureDifference>& most, const std::optional<double>& within_m) {
    limit_if("spread_max", most);
    pair_if("spread_within", within_m, [&](double metres) { return in_quotes(distance(metres)); });
  }

  void ramp(const RampStage& ramp) {
    pair("kind", in_quotes(ramp.direction == RampStage::Direction::heat ? "heat" : "cool"));
    limit_if("above", ramp.above);
    limit_if("below", ramp.below);
    pair_if("rate_max", ramp.rate_max, [&](const RateLimit& limit) { return rate_limit(limit); });
    limit_if("rate_min", ramp.rate_min);
    spread(ramp.spread_max, ramp.spread_within_m);
  }
  void hold(const HoldStage& hold) {
    pair("kind", in_quotes("hold"));
    pair("low", in_unit(hold.low));
    limit_if("high", hold.high);
    pair_if("time_min", hold.time_min, [&](const TimeLimit& limit) { return time_limit(limit); });
    duration_if("time_max", hold.time_max_s);
    if (hold.count == HoldStage::Count::accumulated) pair("count", in_quotes("accumulated"));
    duration_if("excursion_time_max", hold.excursion_time_max_s);
    spread(hold.spread_max, hold.spread_within_m);
    number_if("edge_fraction_min", hold.edge_fraction_min);
    number_if("tempering_min", hold.tempering_min);
    number_if("tempering_max", hold.tempering_max);
  }
  void maintain(const MaintainStage& maintain) {
    pair("kind", in_quotes("maintain"));
    pair("low", in_unit(maintain.low));
    limit_if("high", maintain.high);
    pair("during", in_quotes(maintain.during));
  }
  void stage(const Stage& stage) {
    out_ += "[[stage]]\n";
    if (const auto* one = std::get_if<RampStage>(&stage.specified)) ramp(*one);
    if (const auto* one = std::get_if<HoldStage>(&stage.specified)) hold(*one);
    if (const auto* one = std::get_if<MaintainStage>(&stage.specified)) maintain(*one);
    provenance(stage.provenance);
  }

  const Procedure& procedure_;
  TemperatureUnit unit_;
  std::string out_;
};

}  // namespace

std::string procedure_text(const Procedure& procedure, const ProcedureComments& comments) {
  return Writer{procedure}.text(comments);
}

}  // namespace soakwright
