// SPDX-License-Identifier: GPL-3.0-or-later
// Every requirement with its limit, what was measured, the margin and the verdict.
#include "app/pdf/page_table.h"
#include "app/pdf/pages/page_sections.h"

namespace soakwright::pdf {
namespace {

/// Neighbours that come to the same are said together. What `said` has already is left out.
QString joined(const std::vector<LabelledText>& facts, const std::string& said) {
  QStringList parts;
  for (std::size_t i = 0; i < facts.size();) {
    QString name = text(facts[i].name);
    std::size_t end = i + 1;
    while (end < facts.size() && facts[end].text == facts[i].text) ++end;
    for (std::size_t same = i + 1; same < end; ++same)
      name += (same + 1 == end ? QStringLiteral(" and ") : QStringLiteral(", ")) +
              text(facts[same].name).toLower();
    if (said.find(facts[i].name + ": " + facts[i].text) != std::string::npos) {
      i = end;
      continue;
    }
    parts << name + QStringLiteral(": ") + bound_text(facts[i].text);
    i = end;
  }
  return parts.join(QStringLiteral(";  "));
}

/// The figures stand in the row; below it what they do not say. Of what is not met also its id, by which a
/// review names it.
std::vector<QString> small_print(const RequirementRow& row) {
  std::vector<QString> below;
  if (row.verdict != Verdict::met) {
    below.push_back(text(row.id) + QStringLiteral(": ") + bound_sentence(row.text));
    if (!row.shortfall.empty()) below.push_back(bound_sentence(row.shortfall));
    if (!row.first_deviation.empty())
      below.push_back(QStringLiteral("First deviation: ") + text(row.first_deviation));
  } else if (!row.remarks.empty()) {
    below.push_back(bound_sentence(row.remarks));
  }
  below.push_back(joined(row.alternatives, row.verdict != Verdict::met ? row.text : std::string{}));
  return below;
}

}  // namespace

void put_requirements(PageFlow& flow, const Report& report) {
  if (report.requirements.empty()) return;
  flow.heading(QStringLiteral("Requirements in detail"), flow.mm(20.0));
  std::vector<TableRow> rows;
  const bool several = report.welds.size() > 1;
  const RequirementRow* before = nullptr;
  for (const RequirementRow& row : report.requirements) {
    if (before == nullptr || before->stage != row.stage || (several && before->weld != row.weld)) {
      QString group = text(row.stage);
      if (several && !row.weld.empty()) group = text(row.weld) + QStringLiteral(": ") + group;
      rows.push_back({{}, {}, group});
    }
    before = &row;
    rows.push_back({{{text(row.label), true, std::nullopt},
                     plain_cell(row.limit),
                     plain_cell(row.measured),
                     plain_cell(row.margin),
                     plain_cell(row.uncertainty),
                     plain_cell(row.where),
                     plain_cell(row.brief_when),
                     {text(row.verdict_text), true, sign_of(row.verdict)}},
                    small_print(row),
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
            std::move(rows));
}

}  // namespace soakwright::pdf
