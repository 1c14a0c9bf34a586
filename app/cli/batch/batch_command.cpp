// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/batch/batch_command.h"

#include <csignal>
#include <optional>
#include <string>
#include <variant>

#ifdef __GLIBC__
#include <malloc.h>
#endif

#include "app/cli/batch/batch_page.h"
#include "app/cli/batch/batch_progress.h"
#include "app/cli/modules/pdf_loader.h"
#include "app/cli/modules/report_child.h"
#include "app/cli/printing/page_text.h"
#include "app/cli/printing/standard_output.h"

namespace soakwright::cli {
namespace {

/// Set by the first signal: the records being evaluated are finished, and no other is begun. A second one
/// ends the program.
std::atomic<bool> stopped{false};
std::atomic<int> stopped_by{0};

void stop_by_signal(int signal) {
  stopped = true;
  stopped_by = signal;
  std::signal(signal, SIG_DFL);
}

void stop_at_signals() {
  std::signal(SIGINT, stop_by_signal);
  std::signal(SIGTERM, stop_by_signal);
}

/// Memory that one record gives back is used for the next one: to get it from the system anew for each takes
/// a tenth of the time of a day's record.
void keep_freed_memory() {
#ifdef __GLIBC__
  constexpr int kLargestPiece = 32 << 20;  // the most that glibc takes
  constexpr int kKept = 64 << 20;
  mallopt(M_MMAP_THRESHOLD, kLargestPiece);
  mallopt(M_TRIM_THRESHOLD, kKept);
  mallopt(M_TOP_PAD, 1 << 20);
#endif
}

}  // namespace

int run_batch_command(const BatchRequest& request) {
  auto plan = plan_batch(request);
  if (!plan) return say(plan.problems());
  if (!request.reports.empty()) {
    auto opened = PdfModule::open();
    if (const auto* missing = std::get_if<Problem>(&opened)) return say(*missing);
  }
  if (!request.quiet)
    for (const Problem& note : plan.value().notes) static_cast<void>(say(note));

  BatchProgressLine line;
  BatchSummary summary(plan.value().entries.size());
  BatchWatch watch;
  watch.cancelled = &stopped;
  if (!request.quiet) watch.progress = [&](const BatchProgress& progress) { line.show(progress); };
  watch.row = [&](const BatchRow& row) {
    summary.add(row);
    for (const std::string& problem : row.problems) line.say_between("soakwright: " + problem);
  };
  watch.json = watch.csv = [](std::string_view text) { return write_standard_output(text); };
  if (!request.quiet)
    watch.note = [&](const Problem& note) { line.say_between("soakwright: " + note.text()); };
  watch.write_report = [&](const BatchEntry& entry, const std::string& result, const std::string& path) {
    return write_report_in_child(request, entry, result, path);
  };
  stop_at_signals();
  keep_freed_memory();
  const auto run = run_batch(plan.value(), request, watch);
  if (!run) {
    line.clear();
    return say(run.problems());
  }
  const BatchProgress& progress = run.value();
  if (!request.quiet) line.end(progress);
  if (progress.finished < progress.records) {
    line.say_between(stopped_text(progress, request));
    std::raise(stopped_by != 0 ? stopped_by.load() : SIGTERM);
  }
  if (request.quiet || request.json_to_caller || request.csv_to_caller) return progress.exit_code;
  if (const auto problem = write_standard_output(summary.page(progress, page_style()))) return say(*problem);
  return progress.exit_code;
}

}  // namespace soakwright::cli
