// SPDX-License-Identifier: GPL-3.0-or-later
// A record thinned out for looking at its course: a few thousand even cells of time instead of every row.
//
// A cell holds, for each thermocouple on the work, the median of at most three of its rows, spread over the
// cell; a reading that is missing there or was excluded by a person is unknown, but for a cell or two
// between known ones, which lie on the line between them. Reading a sample only keeps the cost of phases
// apart from the length of the record. What is sampled is never evaluated.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "core/record/record.h"

namespace soakwright {

/// Values over the cells of a SampledRecord; where not known the value means nothing.
struct SampledTrace {
  std::vector<double> celsius;
  std::vector<char> known;
  std::vector<char> exclusion;  ///< excluded by a person; never known
};

/// The middle of the evaluated traces that are known in a cell, and what it would be without one of them.
struct CellMiddle {
  std::size_t count = 0;  ///< traces known
  std::array<double, 3>
      celsius{};  ///< of their sorted temperatures the places (count - 2) / 2 and the next two
  /// Median of all; there is one at least.
  [[nodiscard]] double median() const;
  /// Median of the others, where `own` is one of them; there are two at least.
  [[nodiscard]] double median_without(double own) const;
};

struct SampledRecord {
  double begin_s = 0.0;
  double end_s = 0.0;
  double step_s = 0.0;          ///< width of a cell
  double interval_s = 0.0;      ///< of the record
  std::vector<double> times_s;  ///< middle of the rows taken in each cell; the cell's own middle where none
  std::vector<char> rowless;    ///< cells in which the record has no row: a gap
  std::size_t evaluated =
      0;  ///< that many of the traces, the first, are the evaluated group; then spares and edge
  std::vector<std::size_t> channels;  ///< of each trace, as an index into Record::channels
  std::vector<SampledTrace> traces;
  std::vector<CellMiddle> middles;  ///< of each cell
  [[nodiscard]] std::size_t cells() const { return times_s.size(); }
  [[nodiscard]] double duration_s() const { return end_s - begin_s; }
};

/// The rows of the record that are to be evaluated, in at most `cells` cells.
SampledRecord sample_record(const Record& record, std::size_t cells);

/// Finds the middles anew, after traces have been changed.
void find_middles(SampledRecord& sampled);

}  // namespace soakwright
