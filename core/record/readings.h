// SPDX-License-Identifier: GPL-3.0-or-later
// The readings of one channel, kept as the decimals that the log printed.
//
// Plain decimals are stored as 32-bit integers in units of the channel's last digit; what does not fit
// (exponents, more digits, converted emf, corrected channels) is stored as double. Nobody outside sees
// which. Celsius values are the nearest double to the exact decimal, whatever the log's unit.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "core/units/temperature.h"

namespace soakwright {

/// How a decimal in the log's unit becomes degrees Celsius: celsius = (units * factor + offset) / divisor,
/// all integers, so that the division is the only rounding.
struct DecimalScale {
  std::int64_t factor = 1;
  std::int64_t offset = 0;
  std::int64_t divisor = 1;
  static DecimalScale of(TemperatureUnit unit, int decimal_places);
  [[nodiscard]] double celsius(std::int64_t units) const {
    return static_cast<double>(units * factor + offset) / static_cast<double>(divisor);
  }
  /// A step of one unit, in kelvin.
  [[nodiscard]] double kelvin_per_unit() const {
    return static_cast<double>(factor) / static_cast<double>(divisor);
  }
  bool operator==(const DecimalScale&) const = default;
};

/// Where row r of a column lies: units[(r >> row_shift) * tile_stride + (r & row_mask)]. The plain column is
/// one tile.
struct TileLayout {
  unsigned row_shift = 63;
  std::size_t row_mask = ~std::size_t{0};
  std::size_t tile_stride = 0;
};

class Readings {
 public:
  /// Stored value of a missing decimal; only visit_units() shows it.
  static constexpr std::int32_t kMissingUnits = INT32_MIN;

  Readings() = default;
  /// Decimals: `units` must outlive nothing; the readings own or share it. `missing` counts kMissingUnits in
  /// it.
  static Readings of_decimals(std::shared_ptr<const std::int32_t[]> units, std::size_t rows,
                              std::size_t missing, DecimalScale scale, TileLayout layout = {});
  /// Doubles in Celsius; NaN is missing in storage. `resolution_k` is the last digit of the log.
  static Readings of_celsius(std::vector<double> celsius, double resolution_k);

  [[nodiscard]] std::size_t rows() const { return rows_; }
  [[nodiscard]] std::size_t missing() const { return missing_; }
  [[nodiscard]] bool complete() const { return missing_ == 0; }
  /// The last digit of the log in this column, in kelvin.
  [[nodiscard]] double resolution_k() const { return resolution_k_; }

  [[nodiscard]] std::optional<double> celsius(std::size_t row) const;
  /// Celsius values of these rows; NaN where there is no reading.
  void celsius_at(std::span<const std::size_t> rows, double* out) const;
  /// What the decimals mean; nullptr where doubles are stored.
  [[nodiscard]] const DecimalScale* decimals() const { return celsius_ ? nullptr : &scale_; }
  /// Of decimals(): calls piece(first_row, units, count) for each unbroken piece of rows [first, last), with
  /// kMissingUnits where there is no reading.
  template <typename Visit>
  void visit_units(std::size_t first, std::size_t last, Visit&& piece) const {
    while (first < last) {
      const std::size_t left_in_tile = layout_.row_mask - (first & layout_.row_mask);
      const std::size_t count = left_in_tile < last - first ? left_in_tile + 1 : last - first;
      piece(first, &units_at(first), count);
      first += count;
    }
  }
  /// Exact difference of two readings in kelvin, decimals as decimals. Both must be there.
  static double difference_k(const Readings& a, std::size_t row_a, const Readings& b, std::size_t row_b);

  /// Appends what is there in rows [first, last): the row numbers and the Celsius values.
  void collect(std::size_t first, std::size_t last, std::vector<std::uint32_t>& rows,
               std::vector<double>& celsius) const;
  /// Celsius values of rows [first, last) of complete readings, into as much room.
  void fill_celsius(std::size_t first, std::size_t last, double* out) const;
  /// The same values as integers: celsius differences are units * kelvin_per_unit(). For exact sums. Doubles
  /// are rounded to 2^-32 K for this.
  void collect_units(std::size_t first, std::size_t last, std::vector<std::int64_t>& units) const;
  [[nodiscard]] double kelvin_per_unit() const;

  /// The readings with a calibration correction added; lines between the points, level outside them.
  [[nodiscard]] Readings corrected(
      std::span<const std::pair<Temperature, TemperatureDifference>> correction) const;

 private:
  [[nodiscard]] const std::int32_t& units_at(std::size_t row) const {
    return units_[static_cast<std::ptrdiff_t>((row >> layout_.row_shift) * layout_.tile_stride +
                                              (row & layout_.row_mask))];
  }

  std::shared_ptr<const std::int32_t[]> units_;
  std::shared_ptr<const std::vector<double>> celsius_;
  DecimalScale scale_;
  TileLayout layout_;
  std::size_t rows_ = 0;
  std::size_t missing_ = 0;
  double resolution_k_ = 0.0;
};

}  // namespace soakwright
