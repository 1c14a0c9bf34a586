// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/previous_curves.h"

#include <algorithm>
#include <utility>

#include "core/uncertainty/budget.h"

namespace soakwright {

PreviousCurves::PreviousCurves(const WeldCase& weld) {
  for (const PreviousCycle& previous : weld.previous_records) {
    Curves curves;
    curves.cycle = previous.cycle;
    curves.record = previous.record.get();
    curves.ground = previous.ground.get();
    if (previous.record) {
      curves.file = previous.record->file;
      curves.time = {previous.record->begin_s(), previous.record->end_s()};
      if (weld.guard != nullptr && previous.job)
        curves.guard = std::make_unique<Guard>(budgets_of(*previous.record, *previous.job));
    }
    records_.push_back(std::move(curves));
  }
}

const Trace* PreviousCurves::Curves::trace(const std::string& name) const {
  if (ground == nullptr) return nullptr;
  for (const Trace& trace : ground->set.traces)
    if (trace.name == name) return &trace;
  return nullptr;
}

std::vector<CurvePart> PreviousCurves::of(const std::string& name, bool& all_there) const {
  std::vector<CurvePart> parts;
  for (const Curves& curves : records_) {
    const Trace* const found = curves.trace(name);
    if (found != nullptr)
      parts.push_back({found, curves.time, curves.guard.get()});
    else
      all_there = false;
  }
  return parts;
}

std::vector<std::string> PreviousCurves::not_here(const WeldCase& weld) const {
  std::vector<std::string> known;
  for (const std::size_t index : weld.group) known.push_back(weld.name(index));
  const std::size_t here = known.size();
  const bool one_weld = weld.job == nullptr || weld.job->welds.empty();
  for (const Curves& curves : records_) {
    if (curves.ground == nullptr || curves.record == nullptr) continue;
    for (const Trace& trace : curves.ground->set.traces) {
      const Channel& channel = curves.record->channels[trace.channel];
      const bool of_weld = one_weld || !channel.weld || channel.weld == weld.weld;
      if (!channel.evaluated() || !of_weld) continue;
      if (std::find(known.begin(), known.end(), trace.name) == known.end()) known.push_back(trace.name);
    }
  }
  return {known.begin() + static_cast<std::ptrdiff_t>(here), known.end()};
}

}  // namespace soakwright
