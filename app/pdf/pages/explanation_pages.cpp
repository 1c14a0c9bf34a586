// SPDX-License-Identifier: GPL-3.0-or-later
// What the findings mean, for a reader who is learning: once for each requirement, whatever the number of its
// findings.
#include <QStringList>
#include <algorithm>
#include <utility>
#include <vector>

#include "app/pdf/pages/page_sections.h"

namespace soakwright::pdf {
namespace {

/// The findings of one requirement and kind, explained by the first of them.
struct Explained {
  const FindingRow* first = nullptr;
  QStringList tags;
};

/// Of the event: 12 of "12b".
int number_of(const QString& tag) {
  int number = 0;
  for (const QChar digit : tag) {
    if (!digit.isDigit()) break;
    number = 10 * number + digit.digitValue();
  }
  return number;
}

std::vector<Explained> explained(const Report& report) {
  std::vector<Explained> all;
  for (const FindingRow& row : report.findings) {
    if (!row.explanation) continue;
    auto same = all.begin();
    while (same != all.end() &&
           !(same->first->requirement == row.requirement && same->first->kind == row.kind))
      ++same;
    if (same == all.end()) {
      all.push_back({&row, {}});
      same = all.end() - 1;
    }
    same->tags << text(row.tag);
  }
  // As the events are numbered on the chart.
  std::stable_sort(all.begin(), all.end(), [](const Explained& a, const Explained& b) {
    return number_of(a.tags.front()) < number_of(b.tags.front());
  });
  return all;
}

/// "Finding 3", "Findings 3, 4 and 17 more".
QString which(const QStringList& tags) {
  constexpr int kNamed = 6;
  if (tags.size() == 1) return QStringLiteral("Finding ") + tags.front();
  if (tags.size() <= kNamed) return QStringLiteral("Findings ") + tags.join(QStringLiteral(", "));
  return QStringLiteral("Findings %1 and %2 more")
      .arg(tags.mid(0, kNamed).join(QStringLiteral(", ")))
      .arg(tags.size() - kNamed);
}

constexpr double kUnbrokenExplanation = 0.3;  // of a page: an explanation no higher is not broken

void put_explanation(PageFlow& flow, const QString& title, const Explanation& explanation) {
  flow.subheading(title, flow.mm(14.0));
  const QFont font = flow.scale().font(kBodyPoints);
  const auto put = [&](const char* name, const QString& words) {
    flow.paragraph(QString::fromUtf8(name) + words, font, colour::kInk, flow.mm(2.0));
  };
  // What no standard states is marked once, and the mark explained at the end.
  const QString mark = QStringLiteral("\u00a0*");
  put("Required: ", text(explanation.required));
  put("Why: ", text(explanation.why) +
                   (explanation.why_is_common_practice()
                        ? mark
                        : QStringLiteral(" (") + text(explanation.why_source) + QStringLiteral(")")));
  QStringList causes;
  for (const std::string& cause : explanation.causes) causes << text(cause);
  put("Usual causes: ", causes.join(QStringLiteral("; ")) + QStringLiteral(".") + mark);
  put("Check first: ", text(explanation.look_first) + mark);
  if (!explanation.would_help.empty()) put("What would settle it: ", text(explanation.would_help) + mark);
}

}  // namespace

void put_explanations(PageFlow& flow, const Report& report) {
  const std::vector<Explained> all = explained(report);
  if (all.empty()) return;
  flow.heading(QStringLiteral("The findings explained"), flow.mm(24.0));
  const QFont font = flow.scale().font(kBodyPoints);
  if (!report.first_deviation.empty()) {
    flow.paragraph(QStringLiteral("First deviation: ") + text(report.first_deviation), font, colour::kInk);
    flow.skip(flow.mm(1.5));
  }
  for (const Explained& one : all) {
    const Explanation& explanation = *one.first->explanation;
    QString title = which(one.tags) + QStringLiteral(": ") + text(one.first->label);
    if (!one.first->stage.empty()) title += QStringLiteral(", ") + text(one.first->stage).toLower();
    if (!one.first->weld.empty() && report.welds.size() > 1)
      title += QStringLiteral(", ") + text(one.first->weld);
    flow.keep_together(kUnbrokenExplanation,
                       [&](PageFlow& into) { put_explanation(into, title, explanation); });
    flow.skip(flow.mm(1.5));
  }
  flow.paragraph(QStringLiteral("* ") + text(all.front().first->explanation->mark), font, colour::kFaintInk);
}

}  // namespace soakwright::pdf
