// SPDX-License-Identifier: GPL-3.0-or-later
// Many records at once: folders of logs in, one result for each out.
//
// 1. plan_batch()  which logs there are, and with which job each is evaluated     -> BatchPlan
// 2. run_batch()   each through check(), on all cores; results in one order, the same bytes whatever the
//                  number of workers; what is finished is in the journal and is not done again
//
// Prints nothing. A record that cannot be evaluated is a result with its problems and never stops the others.
#pragma once

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/batch/batch_entry.h"
#include "core/batch/batch_outputs.h"
#include "core/batch/batch_row.h"
#include "core/problems/problem.h"
#include "core/procedure/job/import_texts.h"
#include "core/procedure/job/job.h"
#include "core/units/temperature.h"

namespace soakwright {

struct BatchRequest {
  std::vector<std::string> folders;
  std::string procedure;  ///< wins over those of the jobs; empty: each job names its own
  std::optional<DateOrder> dates;
  ImportTexts import;                   ///< settings of every log; each wins over the job's
  std::optional<TemperatureUnit> unit;  ///< of texts for people; JSON and CSV are in °C
  std::string json;                     ///< the file of JSON lines; empty where none is wanted
  std::string csv;                      ///< the table; empty where none is wanted
  bool json_to_caller = false;          ///< to BatchWatch::json in place of a file
  bool csv_to_caller = false;
  std::string reports;      ///< folder; empty where no reports are wanted
  bool quiet = false;       ///< for the caller: nothing but errors is printed
  bool resume = false;      ///< go on with what the journal beside the outputs has
  std::size_t workers = 0;  ///< records evaluated at once; 0: as many as the machine has cores
  BatchPart part;
};

struct BatchPlan {
  std::vector<BatchEntry> entries;  ///< of this part, in the order of the results
  std::size_t entries_of_all_parts = 0;
  OutputPaths outputs;
  Problems notes;  ///< what was left out and why; `kind` means nothing
};

/// Looks into the folders and reads the jobs. Refused: a folder that is not there, folders without any log,
/// and an output that would be written over a file that is to be read.
Result<BatchPlan> plan_batch(const BatchRequest& request);

/// The entry of one log alone, with the job beside it.
BatchEntry batch_entry_of(const std::string& log, const std::string& procedure, Problems& notes);

/// The exit code of several records from those of each: 1 if a record is not met; else that of the first that
/// could not be evaluated; else 2 if one is inconclusive; else 0.
int batch_exit_code(const std::vector<int>& codes);

struct BatchProgress {
  std::size_t records = 0, finished = 0;
  std::size_t from_journal = 0;  ///< of those finished
  std::uint64_t bytes = 0, bytes_finished = 0, bytes_from_journal = 0;
  std::size_t met = 0, not_met = 0, inconclusive = 0, failed = 0;
  int exit_code = 0;  ///< batch_exit_code() of all
};

/// Adds a record to the numbers of each verdict.
void count_row(const BatchRow& row, BatchProgress& progress);

/// The caller's side. Each is called on any thread, but never two at once.
struct BatchWatch {
  std::function<void(const BatchProgress&)> progress;  ///< after each record, in the order of finishing
  std::function<void(const BatchRow&)> row;            ///< of each record, in the order of the results
  /// Pieces of the outputs that go to the caller, in order; returns the problem that ends the batch.
  std::function<std::optional<Problem>(std::string_view)> json, csv;
  /// Writes the report of an entry to `path`, which is a file of an existing folder. `result` is what
  /// result_json() gave. Called on several threads at once.
  std::function<std::optional<Problem>(const BatchEntry& entry, const std::string& result,
                                       const std::string& path)>
      write_report;
  std::function<void(const Problem&)> note;
  const std::atomic<bool>* cancelled = nullptr;  ///< once true, no further record is begun
};

/// Stopped by the watch, it gives what was finished, and `finished` is less than `records`. The problems are
/// those of outputs that cannot be written; what was finished until then is in the journal.
Result<BatchProgress> run_batch(const BatchPlan& plan, const BatchRequest& request, const BatchWatch& watch);

}  // namespace soakwright
