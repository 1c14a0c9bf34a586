// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/batch/batch_lines.h"

#include <algorithm>

#include "core/batch/path_text.h"
#include "core/report/csv_writer.h"
#include "core/report/json/json_writer.h"
#include "core/wording/requirement_text.h"
#include "core/wording/result_words.h"

namespace soakwright {
namespace {

constexpr std::string_view kCsvHeader =
    "log,job,work,weld,verdict,record_verdict,requirements,met,not_met,inconclusive,worst,worst_text,start,"
    "duration_s,procedure,revision,log_sha256,report,exit_code,error\n";
constexpr std::string_view kJsonHead = "{\"log\": ";

/// The text without its line ends and the spaces behind them: within strings JSON writes them otherwise.
std::string on_one_line(std::string_view json) {
  std::string out;
  out.reserve(json.size());
  while (!json.empty()) {
    const std::size_t end = std::min(json.find('\n'), json.size());
    const bool after_comma = !out.empty() && out.back() == ',';
    if (after_comma && end > 0) out += ' ';
    out += json.substr(0, end);
    json.remove_prefix(std::min(json.size(), end + 1));
    json.remove_prefix(std::min(json.size(), json.find_first_not_of(' ')));
  }
  return out;
}

void text_or_null(JsonWriter& json, std::string_view key, const std::string& text) {
  json.key(key);
  text.empty() ? json.null() : json.text(text);
}

int exit_code_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::met:
      return 0;
    case Verdict::not_met:
      return 1;
    case Verdict::inconclusive:
      return 2;
  }
  return 0;
}

/// A record that is not met is that, whatever became of its report.
int exit_code_of(const RecordOutcome& outcome) {
  const Verdicts* verdicts = outcome.analysis != nullptr ? outcome.analysis->verdicts.get() : nullptr;
  if (verdicts != nullptr && verdicts->verdict == Verdict::not_met) return 1;
  if (!outcome.problems.empty()) return static_cast<int>(outcome.problems.front().kind);
  return verdicts != nullptr ? exit_code_of(verdicts->verdict) : static_cast<int>(ProblemKind::fault);
}

/// Whether a requirement counts for the weld: its own, and those of the whole record.
bool counts_for(const Requirement& requirement, const std::optional<std::string>& weld) {
  return !requirement.weld || requirement.weld == weld;
}

struct Counts {
  std::size_t all = 0, met = 0, not_met = 0, inconclusive = 0;
  const Requirement* worst = nullptr;  ///< the first of the worst verdict, where not all are met
};

template <typename Counted>
Counts counts_of(const std::vector<Requirement>& requirements, const Counted& counted) {
  Counts counts;
  for (const Requirement& requirement : requirements) {
    if (!counted(requirement)) continue;
    ++counts.all;
    counts.met += requirement.verdict == Verdict::met ? 1 : 0;
    counts.not_met += requirement.verdict == Verdict::not_met ? 1 : 0;
    counts.inconclusive += requirement.verdict == Verdict::inconclusive ? 1 : 0;
    const Verdict worst = counts.worst != nullptr ? counts.worst->verdict : Verdict::met;
    if (requirement.verdict > worst) counts.worst = &requirement;
  }
  return counts;
}

std::string all_texts(const Problems& problems) {
  std::string texts;
  for (const Problem& problem : problems) {
    if (!texts.empty()) texts += " | ";
    texts += problem.text();
  }
  return texts;
}

std::string report_of(const RecordOutcome& outcome) {
  return outcome.report_written ? path_text(outcome.entry.report) : std::string{};
}

void write_problems(JsonWriter& json, const Problems& problems) {
  json.key("errors");
  json.begin_array();
  for (const Problem& problem : problems) {
    json.begin_object();
    json.key("code");
    json.integer(static_cast<std::uint64_t>(problem.kind));
    text_or_null(json, "file", path_text(problem.file));
    json.key("line");
    problem.line != 0 ? json.integer(problem.line) : json.null();
    json.key("what");
    json.text(problem.what);
    json.key("help");
    json.text(problem.help);
    json.end_object();
  }
  json.end_array();
}

void csv_line(CsvWriter& csv, const RecordOutcome& outcome, const WeldVerdict* weld) {
  const Analysis* analysis = outcome.analysis;
  csv.text(path_text(outcome.entry.log));
  csv.text(path_text(outcome.entry.job));
  csv.text(analysis != nullptr && analysis->job && analysis->job->work ? *analysis->job->work : "");
  csv.text(weld != nullptr && weld->number ? *weld->number : "");
  if (analysis == nullptr || !analysis->verdicts) {
    for (int column = 0; column < 13; ++column) csv.nothing();
  } else {
    const Verdicts& verdicts = *analysis->verdicts;
    const Record& record = *analysis->record;
    const PrintedNumbers say{TemperatureUnit::celsius, record};
    const Counts counts = counts_of(verdicts.requirements, [&](const Requirement& requirement) {
      return weld == nullptr || counts_for(requirement, weld->number);
    });
    csv.text(result_word(weld != nullptr ? weld->verdict : verdicts.verdict));
    csv.text(result_word(verdicts.verdict));
    for (const std::size_t count : {counts.all, counts.met, counts.not_met, counts.inconclusive})
      csv.integer(count);
    csv.text(counts.worst != nullptr ? counts.worst->id : "");
    csv.text(counts.worst != nullptr ? requirement_text(*counts.worst, *analysis->procedure, say) : "");
    csv.text(record.clock.iso(record.times_s.front()));
    csv.number(record.duration_s());
    csv.text(analysis->procedure->number);
    csv.text(analysis->procedure->revision.value_or(""));
    csv.text(record.sha256);
  }
  csv.text(report_of(outcome));
  csv.integer(static_cast<std::uint64_t>(exit_code_of(outcome)));
  csv.text(all_texts(outcome.problems));
  csv.end_line();
}

}  // namespace

std::string line_head(const BatchEntry& entry) {
  JsonWriter json;
  json.begin_object();
  text_or_null(json, "log", path_text(entry.log));
  text_or_null(json, "job", path_text(entry.job));
  return json.str();
}

BatchRow row_of(const RecordOutcome& outcome, TemperatureUnit unit) {
  BatchRow row;
  row.log = path_text(outcome.entry.log);
  row.job = path_text(outcome.entry.job);
  row.exit_code = exit_code_of(outcome);
  for (const Problem& problem : outcome.problems) row.problems.push_back(problem.text());
  if (outcome.analysis == nullptr || !outcome.analysis->verdicts) return row;
  const Verdicts& verdicts = *outcome.analysis->verdicts;
  row.verdict = verdicts.verdict;
  const Counts counts = counts_of(verdicts.requirements, [](const Requirement&) { return true; });
  row.requirements = counts.all;
  row.met = counts.met;
  row.not_met = counts.not_met;
  row.inconclusive = counts.inconclusive;
  if (counts.worst == nullptr) return row;
  row.worst = counts.worst->weld ? *counts.worst->weld + ' ' + counts.worst->id : counts.worst->id;
  row.worst_text = requirement_text(*counts.worst, *outcome.analysis->procedure,
                                    PrintedNumbers{unit, *outcome.analysis->record});
  return row;
}

std::string json_line(const RecordOutcome& outcome) {
  JsonWriter json;
  json.begin_object();
  text_or_null(json, "log", path_text(outcome.entry.log));
  text_or_null(json, "job", path_text(outcome.entry.job));
  json.key("soakwright");
  json.text("batch 1");
  json.key("exit_code");
  json.integer(static_cast<std::uint64_t>(exit_code_of(outcome)));
  json.key("verdict");
  const bool evaluated = outcome.analysis != nullptr && outcome.analysis->verdicts;
  evaluated ? json.text(result_word(outcome.analysis->verdicts->verdict)) : json.null();
  text_or_null(json, "report", report_of(outcome));
  write_problems(json, outcome.problems);
  std::string line = json.str() + ", \"result\": ";
  line += outcome.result != nullptr ? on_one_line(*outcome.result) : std::string("null");
  return line + "}\n";
}

std::string csv_header() { return std::string(kCsvHeader); }

std::string csv_lines(const RecordOutcome& outcome) {
  CsvWriter csv;
  const bool evaluated = outcome.analysis != nullptr && outcome.analysis->verdicts;
  if (!evaluated || outcome.analysis->verdicts->welds.empty()) {
    csv_line(csv, outcome, nullptr);
    return csv.str();
  }
  for (const WeldVerdict& weld : outcome.analysis->verdicts->welds) csv_line(csv, outcome, &weld);
  return csv.str();
}

bool begins_like_output(std::string_view first_bytes) {
  return first_bytes.starts_with(kCsvHeader) || first_bytes.starts_with(kJsonHead);
}

}  // namespace soakwright
