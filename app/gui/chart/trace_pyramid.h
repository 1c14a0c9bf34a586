// SPDX-License-Identifier: GPL-3.0-or-later
// One channel's readings prepared for drawing at any scale: what a pixel column can show of them, and no
// more.
//
// For drawing only. Readings for people come from the record itself.
#pragma once

#include <cstddef>
#include <cstdint>
#include <limits>
#include <span>
#include <vector>

#include "core/record/readings.h"

namespace soakwright::gui {

/// A point of a polyline in seconds and Celsius; a NaN temperature lifts the pen.
struct TracePoint {
  double at_s = 0.0;
  double celsius = 0.0;
};

class TracePyramid {
 public:
  TracePyramid() = default;
  /// `times_s` must outlive the pyramid and be as long as the readings.
  TracePyramid(std::span<const double> times_s, const Readings& readings);

  struct Scale {
    double from_s = 0.0;
    double to_s = 0.0;
    double column_s = 1.0;                ///< width of a pixel column
    double row_c = 0.1;                   ///< height of a pixel
    double interpolate_max_s = 0.0;       ///< readings farther apart are not joined
    std::span<const std::size_t> breaks;  ///< rows r where nothing joins r and r + 1
  };
  /// Appends the polyline for the part in view, one row beyond it on either side: for each pixel column the
  /// first, lowest, highest and last reading, less where they fall together. Cost grows with the columns, not
  /// the rows.
  void append_polyline(const Scale& scale, std::vector<TracePoint>& out) const;

  /// Lowest and highest reading in rows [first, last); NaN where there is none.
  struct Extremes {
    float lowest = std::numeric_limits<float>::quiet_NaN();
    float highest = std::numeric_limits<float>::quiet_NaN();
  };
  [[nodiscard]] Extremes extremes(std::size_t first, std::size_t last) const;

 private:
  /// What some neighbouring rows hold.
  struct Node {
    float lowest = 0.0F;
    float highest = 0.0F;
    float first_c = 0.0F;  ///< the first reading in it: the record itself is far away in memory
    float last_c = 0.0F;
    std::uint32_t first = kNone;  ///< its row
    std::uint32_t last = kNone;
    bool lowest_comes_first = true;
  };
  /// The same of kLeafRows rows, small: most of the memory is in these.
  struct Leaf {
    float lowest = 0.0F;
    float highest = 0.0F;
    float first_c = 0.0F;
    float last_c = 0.0F;
    std::uint8_t first = kNoRow;  ///< counted from the leaf's first row
    std::uint8_t last = kNoRow;
    bool lowest_comes_first = true;
  };
  static constexpr std::uint32_t kNone = UINT32_MAX;
  static constexpr std::uint8_t kNoRow = UINT8_MAX;
  static constexpr std::size_t kLeafRows = 8;
  static constexpr std::size_t kFanOutBits = 2;
  static constexpr std::size_t kFanOut = 1U
                                         << kFanOutBits;  ///< nodes of the level below that one node covers
  class Pen;

  /// Level 0 are the leaves.
  [[nodiscard]] Node node(std::size_t level, std::size_t index) const;
  [[nodiscard]] std::size_t nodes(std::size_t level) const {
    return level == 0 ? leaves_.size() : levels_[level - 1].size();
  }
  /// Calls take(row, celsius) for each reading in these rows.
  template <typename Take>
  void visit(std::size_t first, std::size_t last, const Take& take) const;
  [[nodiscard]] bool missing(std::size_t row) const { return !readings_.celsius(row); }
  static void take_in(Node& sum, const Node& next);
  static void take_in(Node& sum, std::size_t row, float celsius);
  void descend(std::size_t level, std::size_t index, std::size_t first, std::size_t last, double column_s,
               Pen& pen) const;
  void gather(std::size_t level, std::size_t index, std::size_t first, std::size_t last, Node& sum) const;
  static constexpr std::size_t rows_per_node(std::size_t level) { return kLeafRows << (kFanOutBits * level); }

  std::span<const double> times_s_;
  Readings readings_;  ///< shares the record's storage
  std::vector<Leaf> leaves_;
  std::vector<std::vector<Node>> levels_;  ///< above the leaves; the last has one node
};

}  // namespace soakwright::gui
