// SPDX-License-Identifier: GPL-3.0-or-later
// Welds, requirements and findings.
#include <algorithm>

#include "app/pdf/page_sections.h"
#include "app/pdf/page_table.h"

namespace soakwright::pdf {
namespace {

TableCell cell(const std::string& words) { return {bound_text(words), false, std::nullopt}; }

/// Sentences in the core begin small, so that they can be part of longer ones.
QString sentence(const std::string& words) {
  QString result = bound_text(words);
  if (!result.isEmpty() && result.at(0).isLower() && !result.startsWith(QLatin1String("stage-")))
    result[0] = result.at(0).toUpper();
  if (!result.isEmpty() && !result.endsWith(QLatin1Char('.'))) result += QLatin1Char('.');
  return result;
}

QString joined(const std::vector<LabelledText>& facts) {
  QStringList parts;
  for (const LabelledText& fact : facts)
    parts << text(fact.name) + QStringLiteral(": ") + bound_text(fact.text);
  return parts.join(QStringLiteral("  ·  "));
}

}  // namespace

void put_welds(PageFlow& flow, const Report& report) {
  if (report.welds.size() < 2)
    return;  // one weld stands among the job's data, and its verdict is the record's
  flow.heading(QStringLiteral("Welds"), flow.mm(14.0));
  std::vector<TableRow> rows;
  for (const WeldRow& weld : report.welds)
    rows.push_back({{cell(weld.number),
                     cell(weld.thickness),
                     cell(weld.material),
                     {text(weld.verdict_text), true, sign_of(weld.verdict)}},
                    {},
                    {}});
  put_table(flow,
            {{QStringLiteral("Weld")},
             {QStringLiteral("Thickness"), true},
             {QStringLiteral("Material")},
             {QStringLiteral("Verdict")}},
            std::move(rows), 8.0);
}

void put_requirements(PageFlow& flow, const Report& report) {
  if (report.requirements.empty()) return;
  flow.heading(QStringLiteral("Requirements"), flow.mm(20.0));
  std::vector<TableRow> rows;
  const bool several = report.welds.size() > 1;
  const RequirementRow* before = nullptr;
  for (const RequirementRow& row : report.requirements) {
    if (before == nullptr || before->stage != row.stage || before->weld != row.weld) {
      QString group = text(row.stage);
      if (several && !row.weld.empty()) group = text(row.weld) + QStringLiteral(": ") + group;
      rows.push_back({{}, {}, group});
    }
    before = &row;
    std::vector<QString> below{text(row.id) + QStringLiteral(": ") + sentence(row.text)};
    if (!row.shortfall.empty()) below.push_back(sentence(row.shortfall));
    if (!row.first_deviation.empty())
      below.push_back(QStringLiteral("First deviation: ") + text(row.first_deviation));
    below.push_back(joined(row.alternatives));
    rows.push_back({{{text(row.label), true, std::nullopt},
                     cell(row.limit),
                     cell(row.measured),
                     cell(row.margin),
                     cell(row.uncertainty),
                     cell(row.where),
                     cell(row.when),
                     {text(row.verdict_text), true, sign_of(row.verdict)}},
                    std::move(below),
                    {}});
  }
  put_table(flow,
            {{QStringLiteral("Requirement")},
             {QStringLiteral("Limit"), true},
             {QStringLiteral("Measured"), true},
             {QStringLiteral("Margin"), true},
             {QStringLiteral("U (k = 2)"), true},
             {QStringLiteral("Thermocouple")},
             {QStringLiteral("When")},
             {QStringLiteral("Verdict")}},
            std::move(rows), 7.4);
}

void put_findings(PageFlow& flow, const Report& report) {
  if (!report.verdict) return;
  flow.heading(QStringLiteral("Findings"), flow.mm(14.0));
  if (report.findings.empty()) {
    flow.paragraph(QStringLiteral("None."), flow.scale().font(8.0), colour::kInk);
    return;
  }
  std::vector<TableRow> rows;
  const bool several = report.welds.size() > 1;
  for (const FindingRow& row : report.findings) {
    QString on = text(row.label);
    if (!row.stage.empty())
      on += (on.isEmpty() ? QString() : QStringLiteral(", ")) + text(row.stage).toLower();
    rows.push_back({{{text(row.tag), true, std::nullopt},
                     {text(row.kind_text), true, sign_of(row.kind)},
                     {on, false, std::nullopt},
                     cell(several ? row.weld : std::string{}),
                     cell(row.where),
                     cell(row.when),
                     cell(row.extreme),
                     cell(row.disposition)},
                    {sentence(row.text)},
                    {}});
  }
  put_table(flow,
            {{QStringLiteral("No."), true},
             {QStringLiteral("Kind")},
             {QStringLiteral("Requirement")},
             {QStringLiteral("Weld")},
             {QStringLiteral("Thermocouple")},
             {QStringLiteral("When")},
             {QStringLiteral("Worst value"), true},
             {QStringLiteral("Review")}},
            std::move(rows), 7.2);
}

}  // namespace soakwright::pdf
