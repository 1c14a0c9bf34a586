// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/batch_results.h"

namespace soakwright {

std::optional<Problem> BatchResults::add(std::size_t record, const JournalEntry& entry) {
  auto place = journal_.append(entry);
  if (!place) return place.problems().front();
  places_[record] = place.value();
  return std::nullopt;
}

std::optional<Problem> BatchResults::give_out(const std::function<void(const BatchRow&)>& row) {
  for (; given_out_ < places_.size() && places_[given_out_]; ++given_out_) {
    const auto entry = journal_.read(*places_[given_out_]);
    if (!entry) return entry.problems().front();
    if (auto problem = json_.write(entry.value().json)) return problem;
    if (auto problem = csv_.write(entry.value().csv)) return problem;
    if (row) row(entry.value().row);
  }
  return std::nullopt;
}

std::optional<Problem> BatchResults::finish() {
  for (ResultSink* const sink : {&json_, &csv_})
    if (sink->file)
      if (auto problem = sink->file->finish()) return problem;
  journal_.remove();
  return std::nullopt;
}

}  // namespace soakwright
