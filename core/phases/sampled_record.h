// A record thinned out for looking at its course: a few thousand even cells of time instead of every row.
//
// A cell holds, for each judged channel, the median of at most three of its rows, spread over the cell; a
// reading that is missing there or was put aside by a person is unknown. Reading a sample only keeps the
// cost of phases apart from the length of the record. What is sampled is never judged.
#pragma once

#include <cstddef>
#include <vector>

#include "core/record/record.h"

namespace soakwright {

/// Values over the cells of a SampledRecord; where not known the value means nothing.
struct SampledTrace {
  std::vector<double> celsius;
  std::vector<char> known;
};

struct SampledRecord {
  double begin_s = 0.0;
  double end_s = 0.0;
  double step_s = 0.0;          ///< width of a cell
  double interval_s = 0.0;      ///< of the record
  double resolution_k = 0.0;    ///< the coarsest last digit among the traces
  std::vector<double> times_s;  ///< middle of the rows taken in each cell; the cell's own middle where none
  std::vector<char> rowless;    ///< cells in which the record has no row: a gap
  std::vector<std::size_t> channels;  ///< of each trace, as an index into Record::channels
  std::vector<SampledTrace> traces;
  [[nodiscard]] std::size_t cells() const { return times_s.size(); }
  [[nodiscard]] double duration_s() const { return end_s - begin_s; }
};

/// The rows of the record that are to be judged, in at most `cells` cells. `channels` names those to take.
SampledRecord sample_record(const Record& record, const std::vector<std::size_t>& channels,
                            std::size_t cells);

/// Channels that make up the judged group.
std::vector<std::size_t> judged_channels(const Record& record);

}  // namespace soakwright
