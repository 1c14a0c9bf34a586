// The names of stages, requirements and verdicts in words.
#include <fmt/format.h>

#include "core/report/sections.h"

namespace soakwright {

std::string verdict_text(Verdict verdict) {
  switch (verdict) {
    case Verdict::met:
      return "Met";
    case Verdict::inconclusive:
      return "Inconclusive";
    case Verdict::not_met:
      return "Not met";
  }
  return {};
}

std::string finding_kind_text(Finding::Kind kind) {
  switch (kind) {
    case Finding::Kind::not_met:
      return "Not met";
    case Finding::Kind::inconclusive:
      return "Inconclusive";
    case Finding::Kind::note:
      return "Note";
  }
  return {};
}

std::string weld_text(const std::optional<std::string>& weld) { return weld.value_or(std::string{}); }

std::string stage_title(const Procedure* procedure, std::size_t number) {
  if (number == 0) return "Whole record";
  if (procedure != nullptr) {
    for (const Stage& stage : procedure->stages) {
      if (stage.number != number) continue;
      if (const auto* ramp = std::get_if<RampStage>(&stage.asked))
        return fmt::format("Stage {}, {}", number,
                           ramp->direction == RampStage::Direction::heat ? "heat" : "cool");
      return fmt::format("Stage {}, {}", number,
                         std::holds_alternative<HoldStage>(stage.asked) ? "hold" : "maintain");
    }
  }
  return fmt::format("Stage {}", number);
}

std::string requirement_label(RequirementKind kind) {
  switch (kind) {
    case RequirementKind::temperature_max:
      return "Maximum temperature";
    case RequirementKind::start:
      return "Temperature at loading";
    case RequirementKind::end:
      return "Temperature at opening";
    case RequirementKind::gap:
      return "Longest step between rows";
    case RequirementKind::interval:
      return "Usual step between rows";
    case RequirementKind::thermocouples:
      return "Thermocouples present";
    case RequirementKind::calibration:
      return "Certificates in date";
    case RequirementKind::heating_rate:
      return "Heating rate";
    case RequirementKind::heating_rate_min:
      return "Least heating rate";
    case RequirementKind::cooling_rate:
      return "Cooling rate";
    case RequirementKind::cooling_rate_min:
      return "Least cooling rate";
    case RequirementKind::spread:
      return "Spread";
    case RequirementKind::hold_time:
      return "Hold time";
    case RequirementKind::hold_time_max:
      return "Longest time at temperature";
    case RequirementKind::excursion_time:
      return "Time out of the range";
    case RequirementKind::over:
      return "Highest temperature";
    case RequirementKind::edge:
      return "Edge of the heated band";
    case RequirementKind::tempering_min:
      return "Tempering, least";
    case RequirementKind::tempering_max:
      return "Tempering, most";
    case RequirementKind::maintain:
      return "Time out of the range kept";
  }
  return {};
}

}  // namespace soakwright
