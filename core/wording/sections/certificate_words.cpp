// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/certificate_words.h"

#include <string_view>

#include <fmt/format.h>

namespace soakwright::certificate_words {

std::string holding_temperature() { return "Holding temperature"; }

std::string spread() { return "Spread"; }

std::string lowest_to_highest(const std::optional<double>& low_c, const std::optional<double>& high_c,
                              const PrintedNumbers& say) {
  if (!low_c || !high_c) return "no hold was found";
  return fmt::format("{} to {}", say.bare_temperature(*low_c, 0), say.temperature(*high_c));
}

std::string highest_temperature() { return "Highest temperature"; }

std::string not_specified() { return "not specified"; }

LabelledText other_requirements(std::size_t met, std::size_t all) {
  return {"Other requirements", fmt::format("{} of {} met", met, all)};
}

std::string counted(std::size_t met, std::size_t not_met, std::size_t inconclusive) {
  const std::size_t all = met + not_met + inconclusive;
  std::string text = fmt::format("{} of {} {}", met, all, all == 1 ? "requirement met" : "requirements met");
  if (not_met > 0) text += fmt::format(", {} not met", not_met);
  if (inconclusive > 0) text += fmt::format(", {} inconclusive", inconclusive);
  return text + ".";
}

std::string procedure_line(const Procedure& procedure) {
  std::string text = procedure.number;
  if (procedure.revision) text += ", revision " + *procedure.revision;
  if (procedure.title) text += ", " + *procedure.title;
  return text;
}

LabelledText recorded(const std::string& span, const std::string& duration, const std::string& readings,
                      const std::string& interval) {
  return {"Recorded", fmt::format("{}: {}, {} readings at {}", span, duration, readings, interval)};
}

LabelledText no_calibration() { return {"Calibration", "of the thermocouples: not given in the job"}; }

std::string exclusion_line(const std::string& channel, const std::string& when, const std::string& reason) {
  return fmt::format("{}, {}: {}", channel, when, reason);
}

std::string more_in_record(std::size_t count) {
  return fmt::format("and {} more, listed under Recorded cycle", count);
}

std::string overall_column(const std::string& stage) { return stage + ": overall"; }

std::string steepest_column(const std::string& stage, const std::string& window) {
  return fmt::format("{}: steepest over {}", stage, window);
}

std::string same_for(const std::vector<std::string>& channels) {
  return fmt::format("The same for {}.", listing(channels));
}

std::string at_edge(const std::string& channel) { return channel + " (edge)"; }

std::string budget_point(const std::string& what) {
  constexpr std::string_view kStage = "stage-";
  if (what.starts_with(kStage)) {
    const std::size_t space = what.find(' ');
    return fmt::format("stage {},{}", what.substr(kStage.size(), space - kStage.size()), what.substr(space));
  }
  if (what == "temperature_max") return "maximum temperature";
  return what == "start" || what == "end" ? "at " + what : what;
}

std::string run_of_columns(const std::string& first, const std::string& last, std::size_t first_column,
                           std::size_t last_column) {
  return fmt::format("{} to {} (columns {} to {})", first, last, first_column, last_column);
}

}  // namespace soakwright::certificate_words
