// SPDX-License-Identifier: GPL-3.0-or-later
// Takes finished records in any order and gives them out in the order of the plan: the journal first, then
// the outputs as far as no record before is missing. Called by one thread at a time.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/batch/batch_journal.h"
#include "core/batch/batch_row.h"
#include "core/problems/problem.h"
#include "core/system/growing_file.h"

namespace soakwright {

/// One output: a file, the caller, or nobody.
struct ResultSink {
  std::optional<GrowingFile> file;
  std::function<std::optional<Problem>(std::string_view)> caller;
  std::optional<Problem> write(std::string_view text) {
    if (file) return file->append(text);
    return caller ? caller(text) : std::nullopt;
  }
};

class BatchResults {
 public:
  BatchResults(BatchJournal journal, ResultSink json, ResultSink csv, std::size_t records)
      : journal_(std::move(journal)), json_(std::move(json)), csv_(std::move(csv)), places_(records) {}

  /// The record is in the journal already.
  void keep(std::size_t record, const BatchJournal::Place& place) { places_[record] = place; }
  /// It goes into the journal.
  std::optional<Problem> add(std::size_t record, const JournalEntry& entry);
  /// Gives out what can be given out.
  std::optional<Problem> give_out(const std::function<void(const BatchRow&)>& row);
  /// All records are out: the outputs take their names, and the journal is gone.
  std::optional<Problem> finish();

  [[nodiscard]] const BatchJournal& journal() const { return journal_; }

 private:
  BatchJournal journal_;
  ResultSink json_, csv_;
  std::vector<std::optional<BatchJournal::Place>> places_;
  std::size_t given_out_ = 0;
};

}  // namespace soakwright
