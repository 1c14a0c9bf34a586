// SPDX-License-Identifier: GPL-3.0-or-later
// What a batch has finished, record by record, in the order of finishing: written before anything else is
// done with it, so that a batch that was ended by force goes on where it was.
//
// A line says how long an entry is and carries its hash; what is cut short or damaged at the end is dropped.
// One run at a time writes to a journal.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/batch/batch_row.h"
#include "core/problems/problem.h"
#include "core/system/file_descriptor.h"

namespace soakwright {

struct JournalEntry {
  std::string key;     ///< of the record: one for each entry of the plan
  std::string stamp;   ///< of the files it was made from (file_stamp.h)
  bool again = false;  ///< failed for a reason that may be gone when the batch goes on
  BatchRow row;
  std::string json, csv;  ///< its text in the outputs
};

class BatchJournal {
 public:
  struct Place {
    std::uint64_t offset = 0;
    std::size_t bytes = 0;
  };
  /// An entry of an earlier run, without what it carries.
  struct Kept {
    std::string key, stamp;
    bool again = false;
    Place place;
  };
  /// What opening found.
  enum class Found { nothing, other_batch, damaged_end, whole };

  /// Opens the journal at `path`; where it is empty, one without a name that is gone with the program. Kept
  /// is what stands there with the same `settings` if `resume`; all else is dropped.
  static Result<BatchJournal> open(const std::string& path, const std::string& settings, bool resume);

  [[nodiscard]] Found found() const { return found_; }
  [[nodiscard]] const std::vector<Kept>& kept() const { return kept_; }

  Result<Place> append(const JournalEntry& entry);
  [[nodiscard]] Result<JournalEntry> read(const Place& place) const;
  /// The batch is done: the journal is gone.
  void remove();

 private:
  BatchJournal(std::string path, Descriptor file) : path_(std::move(path)), file_(std::move(file)) {}
  /// Reads what an earlier run left; the place behind the last whole entry.
  std::uint64_t load(const std::string& settings);

  std::string path_;
  Descriptor file_;
  std::uint64_t end_ = 0;
  Found found_ = Found::nothing;
  std::vector<Kept> kept_;
};

}  // namespace soakwright
