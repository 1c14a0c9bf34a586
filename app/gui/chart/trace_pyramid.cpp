// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/chart/trace_pyramid.h"

#include <algorithm>
#include <cmath>

namespace soakwright::gui {

template <typename Take>
void TracePyramid::visit(std::size_t first, std::size_t last, const Take& take) const {
  const DecimalScale* const scale = readings_.decimals();
  if (scale == nullptr) {
    for (std::size_t row = first; row < last; ++row)
      if (const auto celsius = readings_.celsius(row)) take(row, *celsius);
    return;
  }
  readings_.visit_units(first, last, [&](std::size_t row, const std::int32_t* units, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i)
      if (units[i] != Readings::kMissingUnits) take(row + i, scale->celsius(units[i]));
  });
}

/// Collects readings until a pixel column is full, then puts down its points.
class TracePyramid::Pen {
 public:
  Pen(const TracePyramid& pyramid, const Scale& scale, std::vector<TracePoint>& out)
      : pyramid_(pyramid), scale_(scale), out_(out) {}

  void take(const Node& node) {
    if (begins_column(node.first)) {
      put_down();
      column_ = node;
      column_from_s_ = pyramid_.times_s_[node.first];
    } else {
      take_in(column_, node);
    }
  }

  void take(std::size_t row, double celsius) {
    const auto number = static_cast<std::uint32_t>(row);
    const auto c = static_cast<float>(celsius);
    take(Node{c, c, c, c, number, number, true});
  }

  /// Decimals of rows one after the other: those of one column are compared as they are stored, and only what
  /// is drawn of them is turned into temperatures.
  void take(std::size_t row, const std::int32_t* units, std::size_t count, const DecimalScale& decimals) {
    const double* at_s = pyramid_.times_s_.data() + row;
    for (std::size_t i = 0; i < count;) {
      if (units[i] == Readings::kMissingUnits) {
        ++i;
        continue;
      }
      const std::size_t begin = i;
      const double from_s = begins_column(row + i) ? at_s[i] : column_from_s_;
      std::size_t lowest = i;
      std::size_t highest = i;
      for (++i; i < count && units[i] != Readings::kMissingUnits && at_s[i] - from_s < scale_.column_s &&
                joined(static_cast<std::uint32_t>(row + i - 1), static_cast<std::uint32_t>(row + i));
           ++i) {
        if (units[i] < units[lowest]) lowest = i;
        if (units[i] > units[highest]) highest = i;
      }
      const auto celsius = [&](std::size_t at) { return static_cast<float>(decimals.celsius(units[at])); };
      const float low = celsius(lowest);
      const float high = units[highest] == units[lowest] ? low : celsius(highest);
      const auto known = [&](std::size_t at) {
        return units[at] == units[lowest] ? low : units[at] == units[highest] ? high : celsius(at);
      };
      take(Node{low, high, known(begin), known(i - 1), static_cast<std::uint32_t>(row + begin),
                static_cast<std::uint32_t>(row + i - 1), lowest <= highest});
    }
  }

  void put_down() {
    if (column_.first == kNone) return;
    if (last_row_ != kNone && !joined(last_row_, column_.first))
      out_.push_back({pyramid_.times_s_[column_.first], std::nan("")});
    const double first_s = pyramid_.times_s_[column_.first];
    const double last_s = pyramid_.times_s_[column_.last];
    out_.push_back({first_s, column_.first_c});
    if (static_cast<double>(column_.highest - column_.lowest) > scale_.row_c) {
      const double middle_s = 0.5 * (first_s + last_s);
      const double a = column_.lowest_comes_first ? column_.lowest : column_.highest;
      const double b = column_.lowest_comes_first ? column_.highest : column_.lowest;
      out_.push_back({middle_s, a});
      out_.push_back({middle_s, b});
      out_.push_back({last_s, column_.last_c});
    } else if (last_s - first_s >= scale_.column_s) {
      out_.push_back({last_s, column_.last_c});
    }
    last_row_ = column_.last;
    column_ = Node{};
  }

 private:
  [[nodiscard]] bool begins_column(std::size_t row) const {
    return column_.first == kNone || pyramid_.times_s_[row] - column_from_s_ >= scale_.column_s ||
           !joined(column_.last, static_cast<std::uint32_t>(row));
  }
  [[nodiscard]] bool joined(std::uint32_t earlier, std::uint32_t later) const {
    if (pyramid_.times_s_[later] - pyramid_.times_s_[earlier] > scale_.interpolate_max_s) return false;
    if (scale_.breaks.empty()) return true;
    const auto cut = std::lower_bound(scale_.breaks.begin(), scale_.breaks.end(), std::size_t{earlier});
    return cut == scale_.breaks.end() || *cut >= later;
  }

  const TracePyramid& pyramid_;
  const Scale& scale_;
  std::vector<TracePoint>& out_;
  Node column_;
  double column_from_s_ = 0.0;
  std::uint32_t last_row_ = kNone;
};

TracePyramid::TracePyramid(std::span<const double> times_s, const Readings& readings)
    : times_s_(times_s), readings_(readings) {
  const auto nodes_over = [](std::size_t below, std::size_t each) { return (below + each - 1) / each; };
  leaves_.resize(nodes_over(times_s.size(), kLeafRows));
  for (std::size_t i = 0; i < leaves_.size(); ++i) {
    Node sum;
    const std::size_t begin = i * kLeafRows;
    visit(begin, std::min(begin + kLeafRows, times_s.size()),
          [&sum](std::size_t row, double celsius) { take_in(sum, row, static_cast<float>(celsius)); });
    if (sum.first == kNone) continue;
    leaves_[i] = {sum.lowest,
                  sum.highest,
                  sum.first_c,
                  sum.last_c,
                  static_cast<std::uint8_t>(sum.first - begin),
                  static_cast<std::uint8_t>(sum.last - begin),
                  sum.lowest_comes_first};
  }
  for (std::size_t below = 0; nodes(below) > 1; ++below) {
    std::vector<Node> level(nodes_over(nodes(below), kFanOut));
    for (std::size_t i = 0; i < nodes(below); ++i) take_in(level[i / kFanOut], node(below, i));
    levels_.push_back(std::move(level));
  }
}

TracePyramid::Node TracePyramid::node(std::size_t level, std::size_t index) const {
  if (level > 0) return levels_[level - 1][index];
  const Leaf& leaf = leaves_[index];
  if (leaf.first == kNoRow) return {};
  const auto begin = static_cast<std::uint32_t>(index * kLeafRows);
  return {leaf.lowest,        leaf.highest,      leaf.first_c,           leaf.last_c,
          begin + leaf.first, begin + leaf.last, leaf.lowest_comes_first};
}

void TracePyramid::take_in(Node& sum, std::size_t row, float celsius) {
  const auto number = static_cast<std::uint32_t>(row);
  if (sum.first == kNone) {
    sum = {celsius, celsius, celsius, celsius, number, number, true};
    return;
  }
  if (celsius < sum.lowest) {
    sum.lowest = celsius;
    sum.lowest_comes_first = false;
  } else if (celsius > sum.highest) {
    sum.highest = celsius;
    sum.lowest_comes_first = true;
  }
  sum.last_c = celsius;
  sum.last = number;
}

void TracePyramid::take_in(Node& sum, const Node& next) {
  if (next.first == kNone) return;
  if (sum.first == kNone) {
    sum = next;
    return;
  }
  const bool lower = next.lowest < sum.lowest;
  const bool higher = next.highest > sum.highest;
  if (lower && higher)
    sum.lowest_comes_first = next.lowest_comes_first;
  else if (lower)
    sum.lowest_comes_first = false;
  else if (higher)
    sum.lowest_comes_first = true;
  sum.lowest = std::min(sum.lowest, next.lowest);
  sum.highest = std::max(sum.highest, next.highest);
  sum.last_c = next.last_c;
  sum.last = next.last;
}

void TracePyramid::append_polyline(const Scale& scale, std::vector<TracePoint>& out) const {
  if (times_s_.empty()) return;
  auto first = static_cast<std::size_t>(std::lower_bound(times_s_.begin(), times_s_.end(), scale.from_s) -
                                        times_s_.begin());
  auto last = static_cast<std::size_t>(std::upper_bound(times_s_.begin(), times_s_.end(), scale.to_s) -
                                       times_s_.begin());
  // One reading beyond either edge, past missing ones, so that lines leave the picture.
  while (first > 0 && missing(--first)) {
  }
  while (last < times_s_.size() && missing(last++)) {
  }
  Pen pen(*this, scale, out);
  descend(levels_.size(), 0, first, last, scale.column_s, pen);
  pen.put_down();
}

void TracePyramid::descend(std::size_t level, std::size_t index, std::size_t first, std::size_t last,
                           double column_s, Pen& pen) const {
  const std::size_t width = rows_per_node(level);
  const std::size_t begin = index * width;
  const std::size_t end = std::min(begin + width, times_s_.size());
  if (end <= first || begin >= last) return;
  if (first <= begin && end <= last && times_s_[end - 1] - times_s_[begin] <= column_s) {
    if (const Node whole = node(level, index); whole.first != kNone) pen.take(whole);
    return;
  }
  if (level == 0) {
    const std::size_t from = std::max(begin, first);
    const std::size_t to = std::min(end, last);
    if (const DecimalScale* const decimals = readings_.decimals())
      readings_.visit_units(from, to, [&](std::size_t row, const std::int32_t* units, std::size_t count) {
        pen.take(row, units, count, *decimals);
      });
    else
      visit(from, to, [&pen](std::size_t row, double celsius) { pen.take(row, celsius); });
    return;
  }
  const std::size_t children = nodes(level - 1);
  for (std::size_t child = index * kFanOut; child < std::min((index + 1) * kFanOut, children); ++child)
    descend(level - 1, child, first, last, column_s, pen);
}

TracePyramid::Extremes TracePyramid::extremes(std::size_t first, std::size_t last) const {
  if (times_s_.empty()) return {};
  Node sum;
  gather(levels_.size(), 0, first, std::min(last, times_s_.size()), sum);
  if (sum.first == kNone) return {};
  return {sum.lowest, sum.highest};
}

void TracePyramid::gather(std::size_t level, std::size_t index, std::size_t first, std::size_t last,
                          Node& sum) const {
  const std::size_t width = rows_per_node(level);
  const std::size_t begin = index * width;
  const std::size_t end = std::min(begin + width, times_s_.size());
  if (end <= first || begin >= last) return;
  if (first <= begin && end <= last) {
    take_in(sum, node(level, index));
    return;
  }
  if (level == 0) {
    visit(std::max(begin, first), std::min(end, last),
          [&sum](std::size_t row, double celsius) { take_in(sum, row, static_cast<float>(celsius)); });
    return;
  }
  const std::size_t children = nodes(level - 1);
  for (std::size_t child = index * kFanOut; child < std::min((index + 1) * kFanOut, children); ++child)
    gather(level - 1, child, first, last, sum);
}

}  // namespace soakwright::gui
