// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/work_words.h"

#include <fmt/format.h>

#include "core/wording/stage_words.h"

namespace soakwright::work_words {

const char* report_number() { return "Report number"; }

LabelledText cycle(int number) { return {"Cycle", fmt::format("{} of this weld", number)}; }

LabelledText previous_record(const PreviousRecord& one, TemperatureUnit unit) {
  const PrintedNumbers say{unit, *one.record};  // each record has a clock of its own
  std::string text = one.record->file;
  if (one.record->rows() > 0) text += fmt::format(", {}", say.moment(0.0));
  text += fmt::format(", {} long", say.duration(one.record->duration_s()));
  for (const Requirement& requirement : one.verdicts->requirements)
    if (requirement.kind == RequirementKind::hold_time)
      text += fmt::format(", held for {}", say.duration(requirement.certain_s.value_or(0.0)));
  text += fmt::format("; by itself {}", verdict_text(one.verdicts->verdict));
  return {fmt::format("Cycle {}, earlier", one.cycle), std::move(text)};
}

std::string log_of_cycle(int number) { return fmt::format("Log of cycle {}", number); }

std::string recorder(const RecorderEntry& recorder, const PrintedNumbers& say) {
  std::vector<std::string> parts;
  if (recorder.accuracy) parts.push_back(fmt::format("accuracy ±{}", say.limit(*recorder.accuracy)));
  if (recorder.resolution) parts.push_back(fmt::format("resolution {}", say.limit(*recorder.resolution)));
  if (recorder.certificate) parts.push_back(fmt::format("certificate {}", *recorder.certificate));
  if (recorder.valid_until) parts.push_back(fmt::format("valid until {}", date_text(*recorder.valid_until)));
  return fmt::format("{}", fmt::join(parts, ", "));
}

}  // namespace soakwright::work_words
