// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/batch/batch_progress.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "app/cli/printing/terminal.h"

namespace soakwright::cli {
namespace {

constexpr std::chrono::milliseconds kOnTerminal{100};
constexpr std::chrono::seconds kElsewhere{10};

std::string rate_text(double per_second) {
  char text[32];
  std::snprintf(text, sizeof text, per_second < 9.95 ? "%.1f" : "%.0f", per_second);
  std::replace(text, text + sizeof text, ',', '.');  // whatever the locale
  return text;
}

/// "45 s", "3 min", "2 h 5 min": rounded up to what is worth waiting for.
std::string time_left_text(double seconds) {
  const auto whole = static_cast<long>(std::ceil(seconds));
  if (whole < 60) return std::to_string(whole) + " s";
  const long minutes = (whole + 59) / 60;
  if (minutes < 60) return std::to_string(minutes) + " min";
  return std::to_string(minutes / 60) + " h " + std::to_string(minutes % 60) + " min";
}

}  // namespace

std::string progress_text(const BatchProgress& progress, double elapsed_s) {
  std::string text = std::to_string(progress.finished) + " of " + std::to_string(progress.records) +
                     (progress.records == 1 ? " log" : " logs");
  const auto own = static_cast<double>(progress.finished - progress.from_journal);
  if (progress.from_journal > 0) text += " (" + std::to_string(progress.from_journal) + " from the journal)";
  if (own > 0 && elapsed_s > 0) text += ", " + rate_text(own / elapsed_s) + " logs/s";
  const auto own_bytes = static_cast<double>(progress.bytes_finished - progress.bytes_from_journal);
  if (own_bytes > 0 && progress.finished < progress.records) {
    const double left_s =
        elapsed_s * static_cast<double>(progress.bytes - progress.bytes_finished) / own_bytes;
    text += ", " + time_left_text(left_s) + " left";
  }
  std::string kinds;
  const auto add = [&](std::size_t count, const char* what) {
    if (count == 0) return;
    kinds += (kinds.empty() ? "; " : ", ") + std::to_string(count) + ' ' + what;
  };
  add(progress.not_met, "not met");
  add(progress.inconclusive, "inconclusive");
  add(progress.failed, "not evaluated");
  return text + kinds;
}

std::string stopped_text(const BatchProgress& progress, const BatchRequest& request) {
  const bool files = (!request.json.empty() && !request.json_to_caller) ||
                     (!request.csv.empty() && !request.csv_to_caller) || !request.reports.empty();
  return "soakwright: stopped after " + std::to_string(progress.finished) + " of " +
         std::to_string(progress.records) + " logs" +
         (files ? "; the same command with --resume goes on from here"
                : "; nothing is kept without an output file");
}

BatchProgressLine::BatchProgressLine()
    : terminal_(error_is_terminal()), begin_(Clock::now()), last_(begin_) {}

double BatchProgressLine::elapsed_s() const {
  return std::chrono::duration<double>(Clock::now() - begin_).count();
}

void BatchProgressLine::show(const BatchProgress& progress) {
  const Clock::time_point now = Clock::now();
  if (terminal_ ? now - last_ < kOnTerminal : now - last_ < kElsewhere) return;
  last_ = now;
  std::string text = progress_text(progress, elapsed_s());
  if (terminal_) {
    text = text.substr(0, terminal_width() - 1);
    std::fprintf(stderr, "\r\x1b[K%s", text.c_str());
    shown_ = true;
  } else {
    std::fprintf(stderr, "soakwright: %s\n", text.c_str());
  }
}

void BatchProgressLine::say_between(const std::string& text) {
  clear();
  std::fprintf(stderr, "%s\n", text.c_str());
}

void BatchProgressLine::clear() {
  if (shown_) std::fputs("\r\x1b[K", stderr);
  shown_ = false;
}

void BatchProgressLine::end(const BatchProgress& progress) {
  say_between("soakwright: " + progress_text(progress, elapsed_s()));
}

}  // namespace soakwright::cli
