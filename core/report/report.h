// SPDX-License-Identifier: GPL-3.0-or-later
// What is said about one record, in order, with no layout: the pdf prints it, the window lists it.
//
// Every cell is text that a person reads, in one unit and in the record's local time; beside it stands the
// index of the value that it was made from, so that a list can lead back to the evidence. What does not apply
// is empty. Nothing is decided here: verdicts, limits and times are those of the analysis.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/evaluate/analysis.h"
#include "core/report/chart.h"
#include "core/units/temperature.h"
#include "core/wording/explanation.h"
#include "core/wording/labelled_text.h"
#include "core/wording/sections/heat_words.h"
#include "core/wording/stage_words.h"

namespace soakwright {

/// Of the printed pages.
enum class Paper { a4, letter };

struct ReportOptions {
  std::optional<TemperatureUnit> unit;  ///< C or F; none: the procedure's, else the log's
  std::string program_version;          ///< "0.1.0"
  Paper paper = Paper::a4;
  std::string company_picture = {};  ///< path that stands in for the one in the job; empty where none does
  std::vector<std::string> unsaved = {};  ///< what the analysis rests on and no file says, in words
  bool both_units = false;                ///< the certificates' figures in the other unit as well
};

/// Of the company that issues the report, as the job gives it.
struct Letterhead {
  std::string name, address;
  std::string picture;  ///< path of a PNG or JPEG file; empty where there is none
};

/// What is required and what was recorded, for a reader at a glance.
struct SummaryRow {
  std::string label, required, recorded, where;
  std::optional<Verdict> verdict = {};  ///< none where the line carries none of its own
  std::string verdict_text = {};
  /// Required and recorded in the other unit; empty where that is not wanted or says the same.
  std::string required_also = {}, recorded_also = {};
};

/// What a client reads first: of the whole record, or of one of its several welds.
struct Certificate {
  std::string weld;  ///< of several; empty on that of the whole record
  std::string subject;
  Verdict verdict = Verdict::inconclusive;
  std::string verdict_text, verdict_sentence;
  std::vector<LabelledText> work;       ///< what was heated, for whom
  std::vector<LabelledText> treatment;  ///< code, procedure, instruments, record, exclusions, suspicions
  std::vector<SummaryRow> summary;
};

/// One stage of the procedure, or its limits on the whole record.
struct RequiredStage {
  std::size_t stage = 0;  ///< number in the procedure; 0 for the whole record
  std::string title;      ///< "Stage 2, hold"
  std::vector<LabelledText> limits;
  std::string source;  ///< source, edition, clause, seen or from memory; empty where none is given
};

struct ProcedureSection {
  std::vector<LabelledText> facts;  ///< number, revision, title, thickness
  std::string source;
  std::vector<LabelledText> evaluation;
  std::vector<RequiredStage> stages;
};

struct WeldRow {
  std::size_t weld = 0;  ///< index into Verdicts::welds
  std::string number, thickness, material;
  Verdict verdict = Verdict::met;
  std::string verdict_text;
};

struct RequirementRow {
  std::size_t requirement = 0;  ///< index into Verdicts::requirements
  std::string id;
  std::string stage;  ///< "Stage 1, heat"; "Whole record"
  std::string weld;
  std::string label;                                              ///< "Heating rate"
  std::string limit, measured, margin, uncertainty, where, when;  ///< limit: "≤ 144.7 °C/h"
  std::string brief_when;                                         ///< for a narrow column
  Verdict verdict = Verdict::inconclusive;
  std::string verdict_text;
  std::string text;     ///< one plain sentence, and the remarks
  std::string remarks;  ///< what the figures do not say, by itself
  std::vector<LabelledText>
      alternatives;       ///< standard error, certain and possible time, other windows and excursions_allowed
  std::string shortfall;  ///< by how much it is missed; empty where it is met
  std::string
      first_deviation;  ///< where, why, and from when it could no longer be met; empty where it is met
  std::optional<double> first_deviation_s;
  std::vector<std::size_t> budgets;  ///< what its U is made of: indices into Report::budgets
  Evidence evidence;
};

/// One hold: each thermocouple's own course through it.
struct HoldTable {
  struct Row {
    std::string name, in, out, minimum, maximum, mean;
  };
  std::size_t stage = 0;
  std::string weld;
  std::string title;                ///< "Stage 2, hold 590 to 620 °C"
  std::vector<LabelledText> facts;  ///< core, span, time_ranges, disregarded
  std::vector<Row> rows;
};

/// The steepest and the overall rate of each thermocouple through each heat and cool stage.
struct RateTable {
  struct Row {
    std::string name;
    std::vector<std::string> rates;  ///< one per column
  };
  std::string weld;
  std::vector<std::string> columns;  ///< "Stage 1, heat: steepest over 15 min", "Stage 1, heat: overall"
  std::vector<Row> rows;
};

/// What makes the readings of channels with one and the same budget uncertain.
struct BudgetTable {
  struct Row {
    std::string name, source, half_width, divisor;
    std::vector<std::string> standard;  ///< u, one per column
  };
  std::vector<std::string> names;    ///< of the channels that share it
  std::string channels;              ///< "TC1, TC2"
  std::vector<std::string> columns;  ///< "590 °C, stage-2 low"
  std::vector<Row> rows;
  std::vector<std::string> expanded;  ///< U, one per column
  std::string rate;                   ///< U of a rate: "0.46 % of it"
};

/// A channel as it was read and as the job describes it.
struct ChannelRow {
  std::size_t channel = 0;  ///< index into Record::channels
  std::string tag;          ///< of its trace on the chart
  bool used = true;         ///< false: off in the job, or not listed there
  bool evaluated = false;
  std::string name, column, unit, role, weld, place, instrument, samples, missing, minimum, maximum;
};

struct FindingRow {
  std::size_t finding = 0;  ///< index into Verdicts::findings
  std::string tag;          ///< number of its event, as on the chart; "3b" where the event has several
  Finding::Kind kind = Finding::Kind::note;
  std::string kind_text;
  std::optional<std::size_t> requirement;  ///< index into Report::requirements
  std::string id, label, stage, weld, where, when, brief_when, extreme, text;
  std::string disposition;                 ///< by the review
  bool open = false;                       ///< it needs a disposition and has none
  std::optional<Explanation> explanation;  ///< of what is not met or inconclusive
};

/// Findings of one event.
struct EventRow {
  std::string tag;                    ///< "3", as on the chart
  std::vector<std::size_t> findings;  ///< indices into Report::findings
  Finding::Kind kind = Finding::Kind::note;
  std::string kind_text;
  std::vector<std::string> requirements;  ///< "Heating rate, stage 1, heat"; with the weld where several are
  std::vector<std::string> ids;           ///< of the same, in the same order
  std::string where, when, worst;
  std::vector<std::string> texts;         ///< what was found, in sentences
  std::vector<std::string> dispositions;  ///< by the review; empty where there is none
  std::vector<std::string> remarks;       ///< by hand, made within its time
  bool open = false;                      ///< some finding of it needs a disposition and has none
  std::optional<Evidence> evidence;       ///< what can be drawn of it
};

struct NoticeRow {
  std::size_t notice = 0;  ///< index into Record::notices
  std::string code, line, count, channel, text;
};

struct SuspectRow {
  std::size_t suspect = 0;  ///< index into Course::suspects
  std::string channel, code, when, text;
};

struct PhaseRow {
  std::size_t phase = 0;  ///< index into Course::phases
  std::string kind, start, end, duration, rate, level, spread;
};

/// A spare that took over, a time that was excluded, a remark by hand.
struct HandRow {
  std::string channel, when, text;
};

struct Fingerprint {
  std::string what;  ///< "log", "procedure", "job", "review", "result"
  std::string file;
  std::string sha256;
  std::string bytes;  ///< "1 234 567 bytes", where it is known
};

struct SignaturePlace {
  std::string role;  ///< "Performed by"
  std::string name, company, date, remark;
  Person::Role kind = Person::Role::performed;
};

struct Report {
  TemperatureUnit unit = TemperatureUnit::celsius;
  std::string program;               ///< "Soakwright 0.1.0"
  std::vector<std::string> unsaved;  ///< settings that are in no file; printed across the first page
  std::string title, subject, author;
  Paper paper = Paper::a4;
  Letterhead company;
  std::string report_number;
  std::vector<Certificate> certificates;  ///< of the record, then of each weld where there are several
  std::optional<Verdict> verdict;         ///< none where nothing is evaluated
  std::string verdict_text;               ///< "Not met"
  std::string verdict_sentence;
  std::string first_deviation;  ///< the earliest of the requirements': "2031-04-09 09:40: TC2 …"; empty where
                                ///< none is missed
  std::vector<LabelledText> job;
  std::vector<LabelledText> record;  ///< file, start, end, duration, rows, interval
  std::optional<ProcedureSection> procedure;
  std::vector<LabelledText>
      preheat;  ///< carbon equivalents, published minimum; empty where the job asks for none
  std::vector<LabelledText> bands;  ///< of a local heat treatment; empty where the job has none
  std::vector<WeldRow> welds;
  std::vector<RequirementRow> requirements;
  bool guarded = false;  ///< the uncertainty column has something to say
  std::vector<FindingRow> findings;
  std::vector<EventRow> events;
  std::string draft;  ///< why the report is a draft: findings without a disposition; empty if it is none
  Chart chart;
  std::vector<HoldTable> holds;
  std::vector<RateTable> rates;
  std::vector<BudgetTable> budgets;        ///< only where the decision is guarded
  std::vector<FigureTable> heat;           ///< what the heat did: tempering, hydrogen
  std::vector<LabelledText> heat_summary;  ///< the same in one short line each
  std::vector<ChannelRow> channels;
  std::vector<PhaseRow> phases;
  std::vector<SuspectRow> suspects;
  std::vector<HandRow> replaced, exclusion, remarks;
  std::vector<LabelledText> reading;  ///< how the file was read, each setting with who chose it
  std::vector<std::string> heading;   ///< the lines before the table
  std::vector<std::string> other_columns;
  std::vector<NoticeRow> notices;
  std::vector<LabelledText> methods;
  std::vector<std::string> cautions;
  std::vector<Fingerprint> fingerprints;
  std::vector<SignaturePlace> signatures;
  /// The previous records of the same welds, in order: each evaluated by itself and told as a report of its
  /// own, with its own clock, chart, channels, notices and exclusions. `subject` names its cycle and part.
  std::vector<std::shared_ptr<const Report>> previous_records;
};

/// Indices into `findings` in the order of their numbers: event by event.
std::vector<std::size_t> findings_by_number(const Report& report);

/// `analysis.record` must be there; everything else may be null.
Report make_report(const Analysis& analysis, const ReportOptions& options = {});

}  // namespace soakwright
