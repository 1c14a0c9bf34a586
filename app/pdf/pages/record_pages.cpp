// SPDX-License-Identifier: GPL-3.0-or-later
// What is required, what the record shows by itself, and how the file was read.
#include "app/pdf/page_table.h"
#include "app/pdf/pages/page_facts.h"
#include "app/pdf/pages/page_sections.h"

namespace soakwright::pdf {
namespace {

void put_hand_rows(PageFlow& flow, const QString& heading, const std::vector<HandRow>& entries) {
  if (entries.empty()) return;
  flow.subheading(heading, flow.mm(10.0));
  std::vector<TableRow> rows;
  rows.reserve(entries.size());
  for (const HandRow& row : entries)
    rows.push_back(
        {{{text(row.channel), true, std::nullopt}, plain_cell(row.when), plain_cell(row.text)}, {}, {}});
  put_table(flow, {{QStringLiteral("Channel")}, {QStringLiteral("When")}, {QStringLiteral("What")}},
            std::move(rows));
}

void put_published(PageFlow& flow, const char* title, const std::vector<LabelledText>& facts) {
  if (facts.empty()) return;
  flow.subheading(text(title), flow.mm(9.0));
  put_facts(flow, facts);
}

}  // namespace

void put_procedure(PageFlow& flow, const Report& report) {
  if (!report.procedure) return;
  const ProcedureSection& procedure = *report.procedure;
  flow.heading(QStringLiteral("Procedure requirements"), flow.mm(25.0));
  put_fact_columns(flow, {{QStringLiteral("Procedure"), procedure.facts},
                          {QStringLiteral("Evaluation"), procedure.evaluation}});
  if (!procedure.source.empty()) put_facts(flow, {{"Limits from", procedure.source}});
  for (const RequiredStage& stage : procedure.stages) {
    flow.subheading(text(stage.title), flow.mm(9.0));
    put_facts(flow, stage.limits);
    if (!stage.source.empty()) put_facts(flow, {{"Limits from", stage.source}});
  }
  put_published(flow, "Preheat, published figures", report.preheat);
  put_published(flow, "Bands of the local heat treatment", report.bands);
}

void put_course(PageFlow& flow, const Report& report) {
  if (report.phases.empty() && report.suspects.empty() && report.replaced.empty() &&
      report.exclusion.empty() && report.remarks.empty())
    return;
  flow.heading(QStringLiteral("Recorded cycle"), flow.mm(25.0));
  const QString unit =
      report.unit == TemperatureUnit::fahrenheit ? QStringLiteral("°F") : QStringLiteral("°C");
  if (!report.phases.empty()) {
    flow.subheading(QStringLiteral("Phases"), flow.mm(15.0));
    std::vector<TableRow> rows;
    for (const PhaseRow& row : report.phases)
      rows.push_back({{{text(row.kind), true, std::nullopt},
                       plain_cell(row.start),
                       plain_cell(row.end),
                       plain_cell(row.duration),
                       plain_cell(row.rate),
                       plain_cell(row.level),
                       plain_cell(row.spread)},
                      {},
                      {}});
    put_table(flow,
              {{QStringLiteral("Phase")},
               {QStringLiteral("Start")},
               {QStringLiteral("End")},
               {QStringLiteral("Duration"), true},
               {QStringLiteral("Mean rate, ") + unit + QStringLiteral("/h"), true},
               {QStringLiteral("Level, ") + unit, true},
               {QStringLiteral("Largest spread"), true}},
              std::move(rows));
  }
  if (!report.suspects.empty()) {
    flow.subheading(QStringLiteral("Suspect thermocouples"), flow.mm(15.0));
    std::vector<TableRow> rows;
    for (const SuspectRow& row : report.suspects)
      rows.push_back({{{text(row.channel), true, std::nullopt},
                       plain_cell(row.code),
                       plain_cell(row.when),
                       plain_cell(row.text)},
                      {},
                      {}});
    put_table(flow,
              {{QStringLiteral("Channel")},
               {QStringLiteral("Looks")},
               {QStringLiteral("When")},
               {QStringLiteral("Why")}},
              std::move(rows));
  }
  put_hand_rows(flow, QStringLiteral("Spares that took over"), report.replaced);
  put_hand_rows(flow, QStringLiteral("Excluded by a person"), report.exclusion);
  put_hand_rows(flow, QStringLiteral("Remarks"), report.remarks);
}

void put_reading(PageFlow& flow, const Report& report) {
  flow.heading(QStringLiteral("How the log was read"), flow.mm(25.0));
  put_facts(flow, report.reading);
  if (!report.other_columns.empty()) {
    QStringList names;
    for (const std::string& column : report.other_columns) names << text(column);
    put_facts(flow, {{"Columns not evaluated", names.join(QStringLiteral("; ")).toStdString()}});
  }
  if (!report.heading.empty()) {
    flow.subheading(QStringLiteral("Lines before the table"), flow.mm(8.0));
    for (const std::string& line : report.heading)
      flow.paragraph(text(line), flow.scale().font(kBodyPoints), colour::kInk, flow.mm(2.0));
  }
}

void put_file_warnings(PageFlow& flow, const Report& report) {
  flow.subheading(QStringLiteral("File warnings"), flow.mm(12.0));
  if (report.notices.empty()) {
    flow.paragraph(QStringLiteral("None."), flow.scale().font(kBodyPoints), colour::kInk);
    return;
  }
  std::vector<TableRow> rows;
  for (const NoticeRow& row : report.notices)
    rows.push_back({{plain_cell(row.line), plain_cell(row.count), plain_cell(row.channel),
                     plain_cell(row.code), plain_cell(row.text)},
                    {},
                    {}});
  put_table(flow,
            {{QStringLiteral("Line"), true},
             {QStringLiteral("Count"), true},
             {QStringLiteral("Channel")},
             {QStringLiteral("Notice")},
             {QStringLiteral("What")}},
            std::move(rows));
}

}  // namespace soakwright::pdf
