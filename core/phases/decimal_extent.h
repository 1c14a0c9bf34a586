// SPDX-License-Identifier: GPL-3.0-or-later
// Highest and lowest of several channels in each row of a time span, as the whole numbers that the log
// printed.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/record/readings.h"

namespace soakwright {

class DecimalExtent {
 public:
  /// Of `rows` rows, in none of which anything is known yet.
  explicit DecimalExtent(std::size_t rows);
  /// Takes in a channel's units from `row` on; Readings::kMissingUnits are none.
  void take(std::size_t row, const std::int32_t* units, std::size_t count);
  /// Highest less lowest of the row where that is most; 0 where no two channels are known in any.
  [[nodiscard]] std::uint32_t widest() const;

 private:
  std::vector<std::int32_t> high_;
  std::vector<std::int32_t> low_;
};

}  // namespace soakwright
