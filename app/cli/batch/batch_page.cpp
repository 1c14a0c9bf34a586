// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/batch/batch_page.h"

#include <filesystem>

#include "app/cli/printing/page_text.h"

namespace soakwright::cli {
namespace {

/// A record with its job where that has another name.
std::string name_of(const BatchRow& row) {
  if (row.log.empty()) return row.job;
  const std::filesystem::path job(row.job);
  if (row.job.empty() || job.stem() == std::filesystem::path(row.log).stem()) return row.log;
  return row.log + " (" + job.filename().string() + ")";
}

Cell verdict_cell(const BatchRow& row) {
  if (!row.verdict) return {"not evaluated", Tint::bad};
  switch (*row.verdict) {
    case Verdict::met:
      return {"met", tint_of(Verdict::met)};
    case Verdict::inconclusive:
      return {"inconclusive", tint_of(Verdict::inconclusive)};
    case Verdict::not_met:
      return {"not met", tint_of(Verdict::not_met)};
  }
  return {""};
}

bool is_plainly_met(const BatchRow& row) { return row.verdict == Verdict::met && row.problems.empty(); }

}  // namespace

void BatchSummary::add(const BatchRow& row) {
  if (all_ || !is_plainly_met(row)) rows_.push_back(row);
}

std::string BatchSummary::page(const BatchProgress& progress, const PageStyle& style) const {
  PageText page(style);
  std::vector<Row> rows;
  bool any_open = false;
  for (const BatchRow& row : rows_) {
    const std::string counts =
        row.verdict ? std::to_string(row.met) + " of " + std::to_string(row.requirements) : std::string{};
    rows.push_back({name_of(row), verdict_cell(row), counts, row.worst});
    any_open = any_open || !is_plainly_met(row);
  }
  if (!rows.empty()) {
    page.heading("Records");
    page.table({"Log", "Verdict", "Met", "Requirement"}, rows);
  }
  if (any_open) {
    page.heading("What is not met, inconclusive or not evaluated");
    for (const BatchRow& row : rows_) {
      if (is_plainly_met(row)) continue;
      page.line("  " + name_of(row), Tint::strong);
      if (!row.worst_text.empty()) page.paragraph({" "}, row.worst_text);
      for (const std::string& problem : row.problems) page.paragraph({" "}, problem);
    }
  }
  page.heading("Summary");
  const auto line = [&](std::size_t count, const char* what, Tint tint) {
    const std::string number = std::to_string(count);
    const std::string most = std::to_string(progress.records);
    page.line("  " + std::string(most.size() - number.size(), ' ') + number + "  " + what,
              count == 0 ? Tint::none : tint);
  };
  line(progress.records, progress.records == 1 ? "record" : "records", Tint::none);
  line(progress.met, "met", tint_of(Verdict::met));
  line(progress.not_met, "not met", tint_of(Verdict::not_met));
  line(progress.inconclusive, "inconclusive", tint_of(Verdict::inconclusive));
  line(progress.failed, "not evaluated, or without the report", Tint::bad);
  return page.str();
}

}  // namespace soakwright::cli
