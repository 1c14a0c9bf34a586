// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/procedure_file.h"

#include <string>
#include <variant>

#include "core/procedure/heat/heat_tables.h"
#include "core/procedure/procedure_problems.h"
#include "core/procedure/procedure_tables.h"
#include "core/procedure/procedure_words.h"
#include "core/procedure/toml/limit_readers.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/text_file.h"
#include "core/procedure/toml/value_readers.h"
#include "core/units/sha256.h"

namespace soakwright {
namespace {

enum class StageKind { heat, hold, cool, maintain };

void read_evaluation(TableReader& in, InUnit unit, Evaluation& evaluation) {
  in.may("rate_window", duration_above_0, evaluation.rate_window_s);
  in.may("decision_rule", one_of<Decision>({{"simple", Decision::simple}, {"guarded", Decision::guarded}}),
         evaluation.decision);
  in.may("interpolate_max", duration_above_0, evaluation.interpolate_max_s);
  in.may("excursion_allowed", ExcursionAllowedIn{unit}, evaluation.excursion_allowed);
  in.may("in_range_min", duration, evaluation.in_range_min_s);
  in.may("tempering_constant", tempering_constant, evaluation.tempering_constant);
  in.may("tempering_reference", TemperatureIn{unit}, evaluation.tempering_reference);
  check_tempering_reference(in, evaluation.tempering_reference);
}

void read_ramp(TableReader& in, InUnit unit, RampStage& ramp) {
  in.may("above", TemperatureIn{unit}, ramp.above);
  in.may("below", TemperatureIn{unit}, ramp.below);
  in.limit("rate_max", RateLimitIn{unit}, ramp.rate_max);
  in.limit("rate_min", RateIn{unit}, ramp.rate_min);
  in.limit("spread_max", DifferenceIn{unit}, ramp.spread_max);
  in.may("spread_within", distance_m, ramp.spread_within_m);
  in.must_have_a_limit();
  in.must_rise("above", ramp.above, "below", ramp.below);
  if (ramp.rate_min && ramp.rate_max && std::holds_alternative<HeatingRate>(*ramp.rate_max))
    in.must_not_fall("rate_min", *ramp.rate_min, "rate_max", std::get<HeatingRate>(*ramp.rate_max));
  check_spread_within(in);
}

/// A share of a `low` that is not above 0 in the file's unit has no meaning.
void check_edge(TableReader& in, InUnit unit, const HoldStage& hold) {
  if (!hold.edge_fraction_min) return;
  const std::size_t line = in.line_of("edge_fraction_min");
  if (*hold.edge_fraction_min > 1.0) in.complain(line, procedure_problems::edge_fraction_above_1());
  if (in.sound("low") && !(hold.low.in(unit.unit) > 0.0))
    in.complain(line, procedure_problems::edge_fraction_of_low_not_above_0());
}

void read_hold(TableReader& in, InUnit unit, HoldStage& hold) {
  using Count = HoldStage::Count;
  in.must("low", TemperatureIn{unit}, hold.low);
  in.limit("high", TemperatureIn{unit}, hold.high);
  in.limit("time_min", time_limit, hold.time_min);
  in.limit("time_max", duration, hold.time_max_s);
  in.may("count", one_of<Count>({{"continuous", Count::continuous}, {"accumulated", Count::accumulated}}),
         hold.count);
  in.limit("excursion_time_max", duration, hold.excursion_time_max_s);
  in.limit("spread_max", DifferenceIn{unit}, hold.spread_max);
  in.may("spread_within", distance_m, hold.spread_within_m);
  check_spread_within(in);
  in.limit("edge_fraction_min", number_above_0, hold.edge_fraction_min);
  in.limit("tempering_min", tempering_parameter, hold.tempering_min);
  in.limit("tempering_max", tempering_parameter, hold.tempering_max);
  in.must_have_a_limit();
  if (hold.high) in.must_rise("low", hold.low, "high", *hold.high);
  if (hold.time_min && hold.time_max_s && std::holds_alternative<double>(*hold.time_min))
    in.must_not_fall("time_min", std::get<double>(*hold.time_min), "time_max", *hold.time_max_s);
  in.must_not_fall("tempering_min", hold.tempering_min, "tempering_max", hold.tempering_max);
  check_edge(in, unit, hold);
}

void read_maintain(TableReader& in, InUnit unit, MaintainStage& maintain) {
  in.must("low", TemperatureIn{unit}, maintain.low);
  in.may("high", TemperatureIn{unit}, maintain.high);
  in.must("during", name_text, maintain.during);
  if (maintain.high) in.must_rise("low", maintain.low, "high", *maintain.high);
}

}  // namespace

void check_spread_within(TableReader& in) {
  if (in.entry("spread_within") && !in.entry("spread_max"))
    in.complain(in.line_of("spread_within"), procedure_problems::spread_within_without_spread_max());
}

void read_provenance(TableReader& in, Provenance& provenance) {
  in.may("source", text, provenance.source);
  in.may("edition", text, provenance.edition);
  in.may("clause", text, provenance.clause);
  in.may("flag", one_of(kProvenanceFlagWords), provenance.flag);
}

void read_record_limits(TableReader& in, InUnit unit, RecordLimits& limits) {
  in.may("temperature_max", TemperatureIn{unit}, limits.temperature_max);
  in.may("start_temperature_max", TemperatureIn{unit}, limits.start_temperature_max);
  in.may("end_temperature_max", TemperatureIn{unit}, limits.end_temperature_max);
  in.may("gap_max", duration_above_0, limits.gap_max_s);
  in.may("sampling_interval_max", duration_above_0, limits.sampling_interval_max_s);
  in.may("thermocouples_min", count_from_1, limits.thermocouples_min);
}

void read_stage(TableReader& in, InUnit unit, Stage& stage) {
  stage.line = in.line();
  const auto kinds = one_of<StageKind>({{"heat", StageKind::heat},
                                        {"hold", StageKind::hold},
                                        {"cool", StageKind::cool},
                                        {"maintain", StageKind::maintain}});
  StageKind kind = StageKind::heat;
  if (!in.must("kind", kinds, kind)) return in.skip_the_rest();
  read_provenance(in, stage.provenance);
  switch (kind) {
    case StageKind::heat:
    case StageKind::cool: {
      const bool heat = kind == StageKind::heat;
      in.call(heat ? TableName::Kind::heat_stage : TableName::Kind::cool_stage);
      RampStage ramp;
      ramp.direction = heat ? RampStage::Direction::heat : RampStage::Direction::cool;
      read_ramp(in, unit, ramp);
      stage.specified = ramp;
      return;
    }
    case StageKind::hold: {
      in.call(TableName::Kind::hold_stage);
      HoldStage hold;
      read_hold(in, unit, hold);
      stage.specified = hold;
      return;
    }
    case StageKind::maintain: {
      in.call(TableName::Kind::maintain_stage);
      MaintainStage maintain;
      read_maintain(in, unit, maintain);
      stage.specified = maintain;
      return;
    }
  }
}

namespace {

void read_procedure_keys(TableReader& in, Procedure& procedure) {
  in.must("number", name_text, procedure.number);
  in.may("revision", text, procedure.revision);
  in.may("title", text, procedure.title);
  in.must("unit",
          unit_word<TemperatureUnit>({{"C", TemperatureUnit::celsius}, {"F", TemperatureUnit::fahrenheit}}),
          procedure.unit);
  in.may("thickness", thickness, procedure.thickness);
  read_provenance(in, procedure.provenance);
  const InUnit unit{procedure.unit};
  in.table("evaluation", "[evaluation]",
           [&](TableReader& inner) { read_evaluation(inner, unit, procedure.evaluation); });
  in.table("record", "[record]",
           [&](TableReader& inner) { read_record_limits(inner, unit, procedure.record_limits); });
  // Far more than any heat treatment has; with thousands the evaluation would take its time.
  constexpr std::size_t kMostStages = 200;
  const TomlEntry* const stages = in.entry("stage");
  const auto* const list = stages ? stages->value.as<TomlArray>() : nullptr;
  if (list && list->values.size() > kMostStages) {
    in.complain(list->values[kMostStages].line,
                procedure_problems::too_many_stages(list->values.size(), kMostStages));
    return in.skip_the_rest();
  }
  in.each("stage", TableName::Kind::stage, [&](TableReader& inner) {
    Stage& stage = procedure.stages.emplace_back();
    stage.number = procedure.stages.size();
    read_stage(inner, unit, stage);
  });
  if (!stages || (list && list->values.empty()))
    in.complain(in.line_of("stage"), procedure_problems::no_stage());
}

}  // namespace

Result<Procedure> parse_procedure(std::string_view source, const std::string& file) {
  auto procedure = read_document<Procedure>(source, file, TomlFileKind::procedure, read_procedure_keys);
  if (!procedure) return procedure;
  procedure.value().file = file;
  procedure.value().sha256 = sha256_hex(source);
  return procedure;
}

Result<Procedure> read_procedure(const std::string& path) {
  const auto bytes = read_text_file(path);
  if (!bytes) return bytes.problems();
  return parse_procedure(bytes.value(), path);
}

}  // namespace soakwright
