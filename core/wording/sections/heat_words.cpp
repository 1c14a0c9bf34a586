// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/heat_words.h"

#include <iterator>

namespace soakwright {
namespace {

template <typename Item>
std::vector<Item> joined(std::vector<Item> first, std::vector<Item> second) {
  first.insert(first.end(), std::make_move_iterator(second.begin()), std::make_move_iterator(second.end()));
  return first;
}

}  // namespace

std::vector<FigureTable> heat_tables(const WordingContext& context) {
  if (!context.analysis.verdicts) return {};
  const Heat& heat = context.analysis.verdicts->heat;
  return joined(tempering_tables(heat, context.say),
                hydrogen_tables(heat, context.analysis.previous_records.size(), context.say));
}

std::vector<LabelledText> heat_summary(const WordingContext& context) {
  if (!context.analysis.verdicts) return {};
  const Heat& heat = context.analysis.verdicts->heat;
  return joined(tempering_summary(heat), hydrogen_summary(heat));
}

}  // namespace soakwright
