// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/budget_words.h"

#include <cmath>

#include <fmt/format.h>

#include "core/procedure/job/job_words.h"
#include "core/units/number_text.h"

namespace soakwright::budget_words {
namespace {

constexpr int kDigits = 2;

std::string size_text(const HalfWidth& size) {
  const std::string percent = number_text(std::round(size.share * 1e6) / 1e4);
  if (size.line_from_c)
    return fmt::format("{} °C, beyond {} °C and {} % of what is above it", number_text(size.fixed_k),
                       number_text(*size.line_from_c), percent);
  if (size.share == 0.0) return fmt::format("{} °C", number_text(size.fixed_k));
  if (size.fixed_k == 0.0) return fmt::format("{} %", percent);
  return fmt::format("{} °C or {} %", number_text(size.fixed_k), percent);
}

}  // namespace

std::string name(BudgetSource::Kind kind) {
  switch (kind) {
    case BudgetSource::Kind::thermocouple:
      return "thermocouple";
    case BudgetSource::Kind::calibration:
      return "calibration";
    case BudgetSource::Kind::extension_cable:
      return "extension cable";
    case BudgetSource::Kind::recorder:
      return "recorder";
    case BudgetSource::Kind::resolution:
      return "resolution";
  }
  return {};
}

std::string source(const BudgetSource& source) {
  const double fixed_k = source.size.fixed_k;
  if (source.kind == BudgetSource::Kind::resolution)
    return fmt::format("{} °C, {}", fixed_text(fixed_k, fixed_k < 0.1 ? 3 : 1),
                       source.of_recorder ? "of the recorder" : "of the log");
  if (!source.type) return fmt::format("{} °C", number_text(fixed_k));
  const bool iec =
      source.class_of_type == Tolerance::Kind::class_1 || source.class_of_type == Tolerance::Kind::class_2;
  return fmt::format("type {}, {} {}: {}", kThermocoupleTypeWords.of(*source.type),
                     iec ? "IEC 60584-1" : "ASTM E230", kToleranceWords.of(source.class_of_type),
                     size_text(source.size));
}

std::string contribution(const std::optional<double>& kelvin, const PrintedNumbers& say) {
  if (!kelvin) return "not known";
  return decimal_text(TemperatureDifference::of_kelvin(*kelvin).in(say.unit()), kDigits);
}

std::string of_rate(double share) {
  return share == 0.0 ? "none: a constant error cancels in a rate"
                      : fmt::format("{} % of the rate", decimal_text(share * 100.0, kDigits));
}

}  // namespace soakwright::budget_words
