// PRIVATE minimal copy, not committed
#include "core/record/readings.h"
#include <cmath>
#include <limits>
namespace soakwright {
DecimalScale DecimalScale::of(TemperatureUnit unit, int places) {
  std::int64_t p = 1;
  for (int i = 0; i < places; ++i) p *= 10;
  switch (unit) {
    case TemperatureUnit::celsius: return {1, 0, p};
    case TemperatureUnit::kelvin: return {100, -27315 * p, 100 * p};
    case TemperatureUnit::fahrenheit: return {5, -160 * p, 9 * p};
  }
  return {};
}
Readings Readings::of_decimals(std::shared_ptr<const std::int32_t[]> units, std::size_t rows, std::size_t missing, DecimalScale scale) {
  Readings r; r.units_ = std::move(units); r.rows_ = rows; r.missing_ = missing; r.scale_ = scale; r.resolution_k_ = scale.kelvin_per_unit(); return r;
}
Readings Readings::of_celsius(std::vector<double> c, double res) {
  Readings r; r.rows_ = c.size(); for (double x : c) if (std::isnan(x)) ++r.missing_;
  r.celsius_ = std::make_shared<const std::vector<double>>(std::move(c)); r.resolution_k_ = res; return r;
}
std::optional<double> Readings::celsius(std::size_t row) const {
  if (units_) { if (units_[row] == kMissingUnits) return std::nullopt; return scale_.celsius(units_[row]); }
  double v = (*celsius_)[row]; if (std::isnan(v)) return std::nullopt; return v;
}
void Readings::collect(std::size_t first, std::size_t last, std::vector<std::uint32_t>& rows, std::vector<double>& celsius) const {
  const std::size_t base = rows.size();
  rows.resize(base + (last - first)); celsius.resize(base + (last - first));
  std::size_t n = base;
  if (units_) { const double d = static_cast<double>(scale_.divisor);
    for (std::size_t r = first; r < last; ++r) { if (units_[r] == kMissingUnits) continue; rows[n] = static_cast<std::uint32_t>(r); celsius[n++] = static_cast<double>(units_[r] * scale_.factor + scale_.offset) / d; } }
  else for (std::size_t r = first; r < last; ++r) { double v = (*celsius_)[r]; if (std::isnan(v)) continue; rows[n] = static_cast<std::uint32_t>(r); celsius[n++] = v; }
  rows.resize(n); celsius.resize(n);
}
double Readings::kelvin_per_unit() const { return scale_.kelvin_per_unit(); }
}
