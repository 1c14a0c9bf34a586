// What the record shows by itself, and what people did to it by hand: phases, suspects, spares, asides,
// remarks.
#include <fmt/format.h>

#include "core/report/sections.h"

namespace soakwright {
namespace {

const char* suspect_text(Suspect::Code code) {
  switch (code) {
    case Suspect::Code::open:
      return "open circuit";
    case Suspect::Code::stuck:
      return "stuck";
    case Suspect::Code::reversed:
      return "reversed";
    case Suspect::Code::off_work:
      return "off the work";
    case Suspect::Code::noisy:
      return "noisy";
    case Suspect::Code::lag:
      return "lags or leads";
  }
  return "";
}

}  // namespace

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

std::vector<PhaseRow> phase_rows(const Telling& telling) {
  std::vector<PhaseRow> rows;
  if (!telling.analysis.course) return rows;
  const PrintedNumbers& say = telling.say;
  const std::vector<Phase>& phases = telling.analysis.course->phases;
  for (std::size_t i = 0; i < phases.size(); ++i) {
    const Phase& phase = phases[i];
    rows.push_back({i, phase_kind_text(phase.kind), say.moment(phase.start_s), say.moment(phase.end_s),
                    rounded_duration(phase.end_s - phase.start_s), say.bare_rate(phase.rate_c_per_h),
                    say.bare_temperature(phase.level_c, 0), say.difference(phase.spread_max_k)});
  }
  return rows;
}

std::vector<SuspectRow> suspect_rows(const Telling& telling) {
  std::vector<SuspectRow> rows;
  if (!telling.analysis.course) return rows;
  const std::vector<Suspect>& suspects = telling.analysis.course->suspects;
  for (std::size_t i = 0; i < suspects.size(); ++i) {
    const Suspect& suspect = suspects[i];
    rows.push_back({i, telling.analysis.record->channels[suspect.channel].name, suspect_text(suspect.code),
                    telling.say.span(suspect.from_s, suspect.to_s), suspect.text});
  }
  return rows;
}

std::vector<HandRow> replaced_rows(const Telling& telling) {
  std::vector<HandRow> rows;
  if (!telling.analysis.verdicts) return rows;
  for (const Replacement& replacement : telling.analysis.verdicts->replaced) {
    std::string step = "the step between them is not known";
    if (replacement.step_k)
      step = "the spare stood " + telling.say.difference(*replacement.step_k) + " from it then";
    rows.push_back(
        {replacement.channel, telling.say.moment(replacement.from_s),
         fmt::format("{} took over from here to the end of the record; {}.", replacement.by, step)});
  }
  return rows;
}

std::vector<HandRow> aside_rows(const Telling& telling) {
  std::vector<HandRow> rows;
  const Record& record = *telling.analysis.record;
  for (const Aside& aside : record.asides)
    rows.push_back(
        {record.channels[aside.channel].name, telling.say.span(aside.from_s, aside.to_s), aside.reason});
  return rows;
}

std::vector<HandRow> remark_rows(const Telling& telling) {
  std::vector<HandRow> rows;
  for (const Remark& remark : telling.analysis.record->remarks)
    rows.push_back({{}, telling.say.moment(remark.at_s), remark.text});
  return rows;
}

}  // namespace soakwright
