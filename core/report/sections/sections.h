// SPDX-License-Identifier: GPL-3.0-or-later
// The sections of a report, each written in a file of its own and each from the same two things: the
// analysis, and how this report prints numbers. make_report() (report.cpp) puts them in order.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "core/explain/first_deviation.h"
#include "core/report/report.h"
#include "core/wording/stage_words.h"
#include "core/wording/wording_context.h"

namespace soakwright {

struct ReportContext : WordingContext {
  std::vector<FirstDeviation> deviations;
};

// job_section.cpp
std::vector<LabelledText> job_facts(const ReportContext& context);
/// The same in two parts: what was heated, for whom (`weld`: one of several, null for all); with what.
std::vector<LabelledText> work_facts(const ReportContext& context, const WeldRow* weld);
std::vector<LabelledText> equipment_facts(const ReportContext& context);
std::vector<WeldRow> weld_rows(const ReportContext& context);

// record_section.cpp
/// `brief`: first and last reading, duration and number of readings in one line, without the tempering.
std::vector<LabelledText> record_facts(const ReportContext& context, bool brief = false);
std::vector<LabelledText> reading_facts(const ReportContext& context);
std::vector<ChannelRow> channel_rows(const ReportContext& context, const Chart& chart);
std::vector<NoticeRow> notice_rows(const ReportContext& context);
std::vector<std::string> other_column_texts(const Record& record);

// procedure_section.cpp
ProcedureSection procedure_section(const ReportContext& context);

// preheat_section.cpp
std::vector<LabelledText> preheat_section(const ReportContext& context);
std::vector<LabelledText> band_section(const ReportContext& context);

// requirement_section.cpp, evidence_section.cpp
/// "2031-04-09 09:40:12: TC2 had risen …"
std::string deviation_text(const ReportContext& context, const FirstDeviation& deviation);
std::vector<RequirementRow> requirement_rows(const ReportContext& context, const Chart& chart);
Evidence evidence_of(const Requirement& requirement, const ReportContext& context, const Chart& chart);

// thermocouple_section.cpp
std::vector<HoldTable> hold_tables(const ReportContext& context);
std::vector<RateTable> rate_tables(const ReportContext& context);

// budget_section.cpp
std::vector<BudgetTable> budget_tables(const ReportContext& context);
/// Those that the U of a requirement comes from: of its channels, or of all where no one channel decides it.
std::vector<std::size_t> budgets_behind(const Requirement& requirement,
                                        const std::vector<BudgetTable>& budgets);

// finding_section.cpp
std::vector<FindingRow> finding_rows(const ReportContext& context,
                                     const std::vector<RequirementRow>& requirements);

const Requirement* requirement_of(const Finding& finding, const Verdicts& verdicts);
/// The finding's extreme where it is a temperature; a rate, a spread or a time is not.
std::optional<double> extreme_temperature(const Finding& finding);

// certificate_section.cpp; the sections that a certificate is drawn from must be in `report`
std::vector<Certificate> certificates(const ReportContext& context, const Report& report, bool both_units);
Letterhead letterhead(const Analysis& analysis);

// event_section.cpp; gives findings and the chart's marks the numbers of their events
void add_events(const ReportContext& context, Report& report);

// course_section.cpp
std::vector<PhaseRow> phase_rows(const ReportContext& context);
std::vector<SuspectRow> suspect_rows(const ReportContext& context);
/// For the first page: the suspicions that overlap an evaluated stage, and what the job confirms.
std::vector<LabelledText> suspect_facts(const ReportContext& context);
std::vector<HandRow> replaced_rows(const ReportContext& context);
std::vector<HandRow> exclusion_rows(const ReportContext& context);
std::vector<HandRow> remark_rows(const ReportContext& context);

// chart_section.cpp, chart_required_section.cpp
Chart chart_section(const ReportContext& context);
std::vector<ChartRange> chart_ranges(const ReportContext& context);
std::vector<ChartLevel> chart_levels(const ReportContext& context);
std::vector<ChartSegment> chart_stages(const ReportContext& context);

// previous_section.cpp
/// "Cycle 1", "Cycle 2, part 1": the last where several records are parts of one cycle.
std::string previous_title(const Analysis& analysis, std::size_t index);
/// Each in the unit of this report.
std::vector<std::shared_ptr<const Report>> previous_reports(const ReportContext& context,
                                                            const ReportOptions& options);

// signature_section.cpp
std::vector<Fingerprint> fingerprint_rows(const ReportContext& context);
std::vector<SignaturePlace> signature_places(const ReportContext& context);

}  // namespace soakwright
