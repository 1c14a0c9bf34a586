// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/stage_words.h"

#include <fmt/format.h>

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
      if (const auto* ramp = std::get_if<RampStage>(&stage.specified))
        return fmt::format("Stage {}, {}", number,
                           ramp->direction == RampStage::Direction::heat ? "heat" : "cool");
      return fmt::format("Stage {}, {}", number,
                         std::holds_alternative<HoldStage>(stage.specified) ? "hold" : "maintain");
    }
  }
  return fmt::format("Stage {}", number);
}

std::string phase_kind_text(Phase::Kind kind) {
  switch (kind) {
    case Phase::Kind::heat:
      return "heat";
    case Phase::Kind::hold:
      return "hold";
    case Phase::Kind::cool:
      return "cool";
    case Phase::Kind::idle:
      return "idle";
  }
  return {};
}

std::string suspect_text(Suspect::Code code) {
  switch (code) {
    case Suspect::Code::open:
      return "open circuit";
    case Suspect::Code::stuck:
      return "stuck";
    case Suspect::Code::copied:
      return "copied";
    case Suspect::Code::clipped:
      return "clipped";
    case Suspect::Code::reversed:
      return "reversed polarity";
    case Suspect::Code::detached:
      return "detached";
    case Suspect::Code::noisy:
      return "noisy";
    case Suspect::Code::spike:
      return "spike";
    case Suspect::Code::lag:
      return "lagging or leading";
  }
  return {};
}

}  // namespace soakwright
