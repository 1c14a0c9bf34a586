// SPDX-License-Identifier: GPL-3.0-or-later
// One channel beside the middle of the others: what every search for a suspect looks at.
#pragma once

#include <cstddef>
#include <vector>

#include "core/phases/group_course.h"
#include "core/phases/sampled_record.h"
#include "core/record/record.h"

namespace soakwright {

struct ExaminedChannel {
  const Record* record = nullptr;
  const SampledRecord* sampled = nullptr;
  const GroupCourse* course = nullptr;
  std::size_t trace = 0;
  std::vector<double>
      others_c;  ///< median of the evaluated channels without this one, by cell; of three, of all
  std::vector<char> others_known;
  double noise_k = 0.0;   ///< standard deviation of a cell
  double lowest_c = 0.0;  ///< of the cells known
  double highest_c = 0.0;
  double digit_k = 0.0;         ///< the log's last digit
  std::vector<char> explained;  ///< cells of which it is already said what is wrong there

  [[nodiscard]] std::size_t index() const { return sampled->channels[trace]; }
  [[nodiscard]] const Channel& channel() const { return record->channels[index()]; }
  [[nodiscard]] std::size_t cells() const { return sampled->cells(); }
  [[nodiscard]] double time_s(std::size_t cell) const { return sampled->times_s[cell]; }
  [[nodiscard]] double celsius(std::size_t cell) const { return sampled->traces[trace].celsius[cell]; }
  [[nodiscard]] bool known(std::size_t cell) const { return sampled->traces[trace].known[cell] != 0; }
  /// Whether the channel and the others are known, and nothing has been found wrong there yet.
  [[nodiscard]] bool comparable(std::size_t cell) const {
    return known(cell) && others_known[cell] != 0 && explained[cell] == 0;
  }
  [[nodiscard]] double apart_k(std::size_t cell) const { return celsius(cell) - others_c[cell]; }
  /// Cells that `seconds` make, at least `least`.
  [[nodiscard]] std::size_t cells_in(double seconds, std::size_t least) const;
  /// First cell not before `time_s`.
  [[nodiscard]] std::size_t cell_at(double time_s) const;
  /// Marks the cells that touch a time span.
  void explain(double from_s, double to_s);
  /// Median of apart_k over the comparable cells of [first, last); `count` becomes their number.
  [[nodiscard]] double median_apart(std::size_t first, std::size_t last, std::size_t& count) const;
};

/// Every channel of the sample beside the others.
std::vector<ExaminedChannel> examine_channels(const Record& record, const SampledRecord& sampled,
                                              const GroupCourse& course);

/// No work or air is at such a temperature: it is a recorder's value for an open circuit.
constexpr bool no_work(double celsius) { return celsius >= 1200.0 || celsius <= -60.0; }

/// Whether the evaluated channels run together, so that "the others" means something.
bool run_together(const SampledRecord& sampled, const GroupCourse& course);

/// The rows of a channel in a time span, where it has a reading.
struct RowsNear {
  std::vector<double> times_s;
  std::vector<double> celsius;
  std::vector<double> apart_k;  ///< from the others, on straight lines between cells; empty without others
  [[nodiscard]] std::size_t size() const { return times_s.size(); }
};
RowsNear rows_near(const ExaminedChannel& examined, double from_s, double to_s);

}  // namespace soakwright
