// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/uncertainty/budget.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include <fmt/format.h>

#include "core/units/number_text.h"

namespace soakwright {
namespace {

const double kRectangular = std::sqrt(3.0);
const double kStep = std::sqrt(12.0);

HalfWidth fixed(double kelvin) { return {kelvin, 0.0, std::nullopt}; }

bool is_constant(const HalfWidth& size) { return size == fixed(size.fixed_k); }

std::string say_size(const HalfWidth& size) {
  const std::string percent = number_text(std::round(size.share * 1e6) / 1e4);
  if (size.line_from_c)
    return fmt::format("{} °C, beyond {} °C and {} % of what is above it", number_text(size.fixed_k),
                       number_text(*size.line_from_c), percent);
  if (size.share == 0.0) return fmt::format("{} °C", number_text(size.fixed_k));
  if (size.fixed_k == 0.0) return fmt::format("{} %", percent);
  return fmt::format("{} °C or {} %", number_text(size.fixed_k), percent);
}

BudgetPart thermocouple_part(const ThermocoupleEntry& entry) {
  const Tolerance& tolerance = *entry.tolerance;
  if (tolerance.kind == Tolerance::Kind::fixed) {
    const bool calibrated = !entry.correction.empty() || entry.certificate;
    const double half_width = tolerance.fixed.kelvin();
    return {calibrated ? "calibration" : "thermocouple", fmt::format("{} °C", number_text(half_width)),
            fixed(half_width), kRectangular};
  }
  const HalfWidth size = published_tolerance(*entry.type, tolerance.kind).value_or(HalfWidth{});
  const bool iec = tolerance.kind == Tolerance::Kind::class_1 || tolerance.kind == Tolerance::Kind::class_2;
  return {"thermocouple",
          fmt::format("type {}, {} {}: {}", type_name(*entry.type), iec ? "IEC 60584-1" : "ASTM E230",
                      class_name(tolerance.kind), say_size(size)),
          size, kRectangular};
}

}  // namespace

Budget::Budget(std::vector<BudgetPart> parts) : parts_(std::move(parts)) {
  for (const BudgetPart& part : parts_) {
    if (is_constant(part.size)) {
      variance_ += part.size.fixed_k * part.size.fixed_k / (part.divisor * part.divisor);
    } else {
      varying_ = part.size;
      varying_divisor_ = part.divisor;
      rate_share_ = kCoverage * part.size.share / part.divisor;
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
    parts.push_back({"extension cable", fmt::format("{} °C", number_text(entry.extension->kelvin())),
                     fixed(entry.extension->kelvin()), kRectangular});
  if (job.recorder && job.recorder->accuracy)
    parts.push_back({"recorder", fmt::format("{} °C", number_text(job.recorder->accuracy->kelvin())),
                     fixed(job.recorder->accuracy->kelvin()), kRectangular});
  // A recorder finer than what the log prints of it gains nothing.
  const double printed_k = channel.readings.resolution_k();
  const double asked_k = job.recorder && job.recorder->resolution ? job.recorder->resolution->kelvin() : 0.0;
  const double step_k = std::max(printed_k, asked_k);
  parts.push_back({"resolution",
                   fmt::format("{} °C, {}", fixed_text(step_k, step_k < 0.1 ? 3 : 1),
                               asked_k > printed_k ? "of the recorder" : "of the log"),
                   fixed(step_k), kStep});
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
