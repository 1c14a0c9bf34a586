// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/budget_tables.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace soakwright {
namespace {

using Named = std::pair<std::string, double>;

/// Every temperature that a limit is at, the first name of equals.
std::vector<Named> limit_temperatures(const Procedure& procedure) {
  std::vector<Named> all;
  const auto add = [&](std::string what, const std::optional<Temperature>& point) {
    if (!point) return;
    const double celsius = point->celsius();
    if (std::any_of(all.begin(), all.end(), [&](const Named& other) { return other.second == celsius; }))
      return;
    all.emplace_back(std::move(what), celsius);
  };
  for (const Stage& stage : procedure.stages) {
    const std::string at = "stage-" + std::to_string(stage.number);
    if (const auto* ramp = std::get_if<RampStage>(&stage.specified)) {
      add(at + " above", ramp->above);
      add(at + " below", ramp->below);
    } else if (const auto* hold = std::get_if<HoldStage>(&stage.specified)) {
      add(at + " low", hold->low);
      add(at + " high", hold->high);
    } else if (const auto* maintain = std::get_if<MaintainStage>(&stage.specified)) {
      add(at + " low", maintain->low);
      add(at + " high", maintain->high);
    }
  }
  add("temperature_max", procedure.record_limits.temperature_max);
  add("start", procedure.record_limits.start_temperature_max);
  add("end", procedure.record_limits.end_temperature_max);
  return all;
}

BudgetPoint point_at(const Budget& budget, const Named& named) {
  BudgetPoint point{named.first, named.second, {}, std::nullopt};
  for (const BudgetPart& part : budget.parts()) {
    BudgetLine line{part.source, part.is_step(), part.source.size.at(named.second), part.divisor,
                    std::nullopt};
    if (line.half_width_k) line.standard_k = *line.half_width_k / line.divisor;
    point.lines.push_back(std::move(line));
  }
  const double expanded = budget.expanded_k(named.second);
  if (std::isfinite(expanded)) point.expanded_k = expanded;
  return point;
}

}  // namespace

std::vector<ChannelBudget> budget_tables(const Record& record, const Procedure& procedure,
                                         const Guard& guard) {
  const std::vector<Named> temperatures = limit_temperatures(procedure);
  std::vector<ChannelBudget> tables;
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    if (!needs_budget(record.channels[i])) continue;
    const Budget& budget = guard.of_channel(i);
    ChannelBudget table{record.channels[i].name, {}, budget.rate_share()};
    for (const Named& named : temperatures) table.points.push_back(point_at(budget, named));
    tables.push_back(std::move(table));
  }
  return tables;
}

}  // namespace soakwright
