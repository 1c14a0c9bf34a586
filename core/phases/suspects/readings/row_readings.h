// SPDX-License-Identifier: GPL-3.0-or-later
// The readings of one channel row by row, as whole numbers that can be compared exactly.
//
// Cells of a SampledRecord show a course; whether a reading is repeated or copied to the digit, or jumps from
// one row to the next, only the rows show.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/phases/suspects/readings/examined_channel.h"
#include "core/read/fast/page_arena.h"
#include "core/record/record.h"

namespace soakwright {

struct RowReadings {
  std::size_t channel = 0;  ///< index into Record::channels
  bool evaluated = false;
  /// Rows [first_row, end_row); Readings::kMissingUnits where none or excluded. Not its own storage.
  std::span<const std::int32_t> units;
  std::int32_t digit = 1;  ///< units in the last digit of the log
  double kelvin_per_unit = 1.0;
  [[nodiscard]] std::size_t rows() const { return units.size(); }
  [[nodiscard]] bool known(std::size_t row) const { return units[row] != Readings::kMissingUnits; }
  [[nodiscard]] double kelvin(std::int64_t difference) const {
    return static_cast<double>(difference) * kelvin_per_unit;
  }
};

/// A bend or step of so many last digits is no rounding.
inline constexpr std::int64_t kStrongDigits = 3;

/// A run of rows, both ends known and included.
struct RowRun {
  std::size_t first = 0;
  std::size_t last = 0;
  std::size_t count = 0;  ///< readings in it
};

/// Everything that the searches by rows look at; rows count from Record::first_row.
struct RowTable {
  const Record* record = nullptr;
  std::vector<RowReadings> channels;  ///< those of the SampledRecord, in its order
  PageArena storage;                  ///< behind their units
  std::vector<char> joined;           ///< whether row r + 1 follows row r without a gap
  [[nodiscard]] std::size_t rows() const { return joined.size(); }
  [[nodiscard]] double time_s(std::size_t row) const { return record->times_s[record->first_row + row]; }
  [[nodiscard]] double celsius(std::size_t place, std::size_t row) const;
};

/// `room` is for as many numbers as there are evaluated rows, and outlives what is returned.
RowReadings row_readings(const Record& record, const Readings& readings, std::span<std::int32_t> room);
RowTable row_table(const Record& record, const SampledRecord& sampled);

/// Runs of at least `least` equal readings one after the other; missing readings between them do not count.
std::vector<RowRun> equal_runs(const RowReadings& channel, std::size_t least);

}  // namespace soakwright
