// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/uncertainty/budget.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace soakwright {
namespace {

const double kRectangular = std::sqrt(3.0);
const double kStep = std::sqrt(12.0);

HalfWidth fixed(double kelvin) { return {kelvin, 0.0, std::nullopt}; }

bool is_constant(const HalfWidth& size) { return size == fixed(size.fixed_k); }

BudgetPart thermocouple_part(const ThermocoupleEntry& entry) {
  const Tolerance& tolerance = *entry.tolerance;
  if (tolerance.kind == Tolerance::Kind::fixed) {
    const bool calibrated = !entry.correction.empty() || entry.certificate;
    return {{calibrated ? BudgetSource::Kind::calibration : BudgetSource::Kind::thermocouple,
             fixed(tolerance.fixed.kelvin())},
            kRectangular};
  }
  const HalfWidth size = published_tolerance(*entry.type, tolerance.kind).value_or(HalfWidth{});
  return {{BudgetSource::Kind::thermocouple, size, entry.type, tolerance.kind}, kRectangular};
}

}  // namespace

Budget::Budget(std::vector<BudgetPart> parts) : parts_(std::move(parts)) {
  for (const BudgetPart& part : parts_) {
    const HalfWidth& size = part.source.size;
    if (is_constant(size)) {
      variance_ += size.fixed_k * size.fixed_k / (part.divisor * part.divisor);
    } else {
      varying_ = size;
      varying_divisor_ = part.divisor;
      rate_share_ = kCoverage * size.share / part.divisor;
    }
  }
}

double Budget::expanded_k(double celsius) const {
  const auto size = varying_.at(celsius);
  if (!size) return std::numeric_limits<double>::infinity();
  const double u = *size / varying_divisor_;
  return kCoverage * std::sqrt(u * u + variance_);
}

Budget budget_of(const Channel& channel, const Job& job) {
  const ThermocoupleEntry& entry = job.thermocouples[*channel.entry];
  std::vector<BudgetPart> parts{thermocouple_part(entry)};
  if (entry.extension)
    parts.push_back({{BudgetSource::Kind::extension_cable, fixed(entry.extension->kelvin())}, kRectangular});
  if (job.recorder && job.recorder->accuracy)
    parts.push_back({{BudgetSource::Kind::recorder, fixed(job.recorder->accuracy->kelvin())}, kRectangular});
  // A recorder finer than what the log prints of it gains nothing.
  const double printed_k = channel.readings.resolution_k();
  const double asked_k = job.recorder && job.recorder->resolution ? job.recorder->resolution->kelvin() : 0.0;
  BudgetSource resolution{BudgetSource::Kind::resolution, fixed(std::max(printed_k, asked_k))};
  resolution.of_recorder = asked_k > printed_k;
  parts.push_back({std::move(resolution), kStep});
  return Budget(std::move(parts));
}

bool needs_budget(const Channel& channel) {
  return channel.role == ThermocoupleRole::control || channel.role == ThermocoupleRole::monitor ||
         channel.role == ThermocoupleRole::spare;
}

std::vector<Budget> budgets_of(const Record& record, const Job& job) {
  std::vector<Budget> budgets(record.channels.size());
  for (std::size_t i = 0; i < record.channels.size(); ++i)
    if (needs_budget(record.channels[i])) budgets[i] = budget_of(record.channels[i], job);
  return budgets;
}

}  // namespace soakwright
