// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/chart_words.h"

#include <cmath>

#include <fmt/format.h>

#include "core/wording/stage_words.h"

namespace soakwright::chart_words {

std::string legend(const Channel& channel, const Record& record) {
  switch (channel.role) {
    case ThermocoupleRole::control:
    case ThermocoupleRole::monitor:
      if (channel.zone == Zone::edge) return fmt::format("{} (edge)", channel.name);
      return channel.role == ThermocoupleRole::control ? fmt::format("{} (control)", channel.name)
                                                       : channel.name;
    case ThermocoupleRole::spare:
      return channel.spare_for
                 ? fmt::format("{} (spare for {})", channel.name, record.channels[*channel.spare_for].name)
                 : fmt::format("{} (spare)", channel.name);
    case ThermocoupleRole::air:
      return fmt::format("{} (air)", channel.name);
    case ThermocoupleRole::set_point:
      return fmt::format("{} (set point)", channel.name);
    case ThermocoupleRole::off:
      break;
  }
  return channel.name;
}

std::string phase(const Phase& phase, const PrintedNumbers& say) {
  if (phase.kind == Phase::Kind::hold)
    return fmt::format("hold {}", say.limit(Temperature::of_celsius(std::round(phase.level_c))));
  if (phase.kind == Phase::Kind::idle) return "idle";
  return fmt::format("{} {}", phase_kind_text(phase.kind), say.rate(phase.rate_c_per_h));
}

std::string title(const Job* job, const Record& record) {
  std::vector<std::string> parts;
  if (job != nullptr && job->work) parts.push_back(*job->work);
  if (job != nullptr && job->weld) parts.push_back(fmt::format("weld {}", *job->weld));
  if (job != nullptr && job->cycle && *job->cycle > 1) parts.push_back(fmt::format("cycle {}", *job->cycle));
  return parts.empty() ? record.file : fmt::format("{}", fmt::join(parts, ", "));
}

std::string time_axis(RecorderClock::Kind kind) {
  switch (kind) {
    case RecorderClock::Kind::dated:
      return "Local time, as on the recorder";
    case RecorderClock::Kind::time_of_day:
      return "Time of day, as on the recorder";
    case RecorderClock::Kind::elapsed:
      break;
  }
  return "Elapsed time, as in the log, h:mm";
}

std::string temperature_axis(const PrintedNumbers& say) {
  return fmt::format("Temperature, {}", say.degree());
}

std::string takeover(const std::string& by, const std::string& channel) {
  return fmt::format("{} for {}", by, channel);
}

std::string first_deviation() { return "first deviation"; }

std::string maximum(const std::string& limit) { return fmt::format("maximum {}", limit); }

std::string start_at_most(const std::string& limit) {
  return fmt::format("start (loading) at most {}", limit);
}

std::string end_at_most(const std::string& limit) { return fmt::format("end (unloading) at most {}", limit); }

std::string rates_above(const std::string& limit) { return fmt::format("rates evaluated above {}", limit); }

std::string rates_below(const std::string& limit) { return fmt::format("rates evaluated below {}", limit); }

}  // namespace soakwright::chart_words
