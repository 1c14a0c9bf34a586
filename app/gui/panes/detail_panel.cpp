// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/detail_panel.h"

#include <algorithm>
#include <utility>

#include "app/gui/texts/budget_text.h"
#include "app/gui/texts/explanation_text.h"
#include "app/gui/texts/heat_text.h"
#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

QString paragraph(const QString& text) {
  return text.isEmpty() ? QString() : QStringLiteral("<p style='margin:4px 0'>%1</p>").arg(text);
}

/// Name and value, side by side; what is empty is left out.
class LabelTable {
 public:
  void add(const QString& name, const QString& value) {
    if (!value.isEmpty())
      rows_ += QStringLiteral("<tr><td style='padding-right:12px'>%1</td><td>%2</td></tr>").arg(name, value);
  }
  void add(const std::vector<LabelledText>& facts) {
    for (const LabelledText& fact : facts) add(html_text(fact.name), html_text(fact.text));
  }
  [[nodiscard]] QString html(const QString& title = {}) const {
    if (rows_.isEmpty()) return {};
    const QString head = title.isEmpty()
                             ? QString()
                             : QStringLiteral("<p style='margin:8px 0 2px 0'><b>%1</b></p>").arg(title);
    return head + QStringLiteral("<table cellspacing='0' cellpadding='1'>%1</table>").arg(rows_);
  }

 private:
  QString rows_;
};

/// What the procedure asks in the stage of that title.
QString asked_of(const Report& report, const std::string& title) {
  if (!report.procedure) return {};
  const auto& stages = report.procedure->stages;
  const auto stage = std::find_if(stages.begin(), stages.end(),
                                  [&title](const RequiredStage& one) { return one.title == title; });
  if (stage == stages.end()) return {};
  LabelTable facts;
  facts.add(stage->limits);
  facts.add(DetailPanel::tr("Source"),
            html_text(stage->source.empty() ? report.procedure->source : stage->source));
  return facts.html(DetailPanel::tr("Required: %1").arg(html_text(stage->title)));
}

}  // namespace

DetailPanel::DetailPanel(QWidget* parent) : QTextBrowser(parent) {
  setAccessibleName(tr("Details of the chosen row"));
  setFrameShape(QFrame::NoFrame);
  setOpenLinks(false);
  setTabChangesFocus(true);
  document()->setDocumentMargin(10);
  setTextInteractionFlags(Qt::TextBrowserInteraction);
  connect(this, &QTextBrowser::anchorClicked, this, [this] {
    unfolded_ = !unfolded_;
    show(report_, selection_);
  });
}

void DetailPanel::setColours(const ChartColours& colours) {
  colours_ = colours;
  show(report_, selection_);
}

QString DetailPanel::heading(const QString& text, std::optional<Sign> sign, const QString& word) const {
  QString html = QStringLiteral("<p style='margin:0; font-size:large'><b>%1</b></p>").arg(text);
  if (sign)
    html += QStringLiteral("<p style='margin:2px 0; color:%1'><b>%2</b></p>")
                .arg(colour_of(*sign, colours_).name(), word);
  return html;
}

QString DetailPanel::requirementText(const Report& report, const RequirementRow& row) const {
  QString title = html_text(row.label);
  if (!row.stage.empty()) title += QStringLiteral(" · ") + html_text(row.stage);
  if (!row.weld.empty()) title += QStringLiteral(" · ") + html_text(row.weld);
  LabelTable facts;
  facts.add(tr("Limit"), html_text(row.limit));
  facts.add(tr("Measured"), html_text(row.measured));
  facts.add(tr("Margin"), html_text(row.margin));
  facts.add(tr("Uncertainty (k = 2)"), html_text(row.uncertainty));
  facts.add(tr("Thermocouple"), html_text(row.where));
  facts.add(tr("When"), html_text(row.when));
  LabelTable alternatives;
  alternatives.add(row.alternatives);
  QString budgets;
  for (const std::size_t index : row.budgets) budgets += budgetText(report.budgets[index], report.unit);
  return heading(title, sign_of(row.verdict), html_text(row.verdict_text)) + paragraph(html_text(row.text)) +
         facts.html() +
         (row.shortfall.empty() ? QString() : paragraph(tr("Shortfall: %1").arg(html_text(row.shortfall)))) +
         (row.first_deviation.empty()
              ? QString()
              : paragraph(tr("First deviation: %1").arg(html_text(row.first_deviation)))) +
         unfolding(tr("Other evaluations, for comparison"), row.alternatives.size(), alternatives.html()) +
         budgets + asked_of(report, row.stage);
}

/// A heading that a click, or Enter on it, unfolds and folds.
QString DetailPanel::unfolding(const QString& title, std::size_t count, const QString& html) const {
  if (html.isEmpty()) return {};
  const QString head =
      QStringLiteral("<p style='margin:8px 0 2px 0'><a href='unfold'><b>%1 %2 (%3)</b></a></p>")
          .arg(unfolded_ ? QStringLiteral("▾") : QStringLiteral("▸"), title)
          .arg(count);
  return unfolded_ ? head + html : head;
}

QString DetailPanel::findingText(const Report& report, const FindingRow& row) const {
  const QString title = tr("Finding %1: %2").arg(html_text(row.tag), html_text(row.label));
  LabelTable facts;
  facts.add(tr("Stage"), html_text(row.stage));
  facts.add(tr("Weld"), html_text(row.weld));
  facts.add(tr("Thermocouple"), html_text(row.where));
  facts.add(tr("When"), html_text(row.when));
  facts.add(tr("Worst value"), html_text(row.extreme));
  facts.add(tr("Review"), html_text(row.disposition));
  QString held_against;
  if (row.requirement && *row.requirement < report.requirements.size()) {
    const RequirementRow& requirement = report.requirements[*row.requirement];
    LabelTable against;
    against.add(tr("Limit"), html_text(requirement.limit));
    against.add(tr("Measured"), html_text(requirement.measured));
    against.add(tr("Margin"), html_text(requirement.margin));
    held_against = paragraph(html_text(requirement.text)) + against.html(tr("The requirement"));
  }
  const QString explained = row.explanation ? explanationText(*row.explanation) : QString();
  return heading(title, sign_of(row.kind), html_text(row.kind_text)) + paragraph(html_text(row.text)) +
         facts.html() + held_against + explained;
}

QString DetailPanel::overview(const Report& report) const {
  LabelTable record;
  record.add(report.record);
  LabelTable job;
  job.add(report.job);
  LabelTable procedure;
  if (report.procedure) procedure.add(report.procedure->facts);
  QString heat;
  for (const FigureTable& table : report.heat) heat += figuresText(table);
  return heading(report.verdict ? tr("Choose a row to see its evidence") : tr("The record"), {}, {}) +
         record.html() + job.html(tr("Job")) + procedure.html(tr("Procedure")) + heat;
}

void DetailPanel::show(std::shared_ptr<const Report> shown, const Selection& selection) {
  report_ = std::move(shown);
  selection_ = selection;
  const Report* report = report_.get();
  if (!report) {
    clear();
    return;
  }
  switch (selection.kind) {
    case Selection::Kind::requirement:
      setHtml(requirementText(*report, report->requirements[selection.index]));
      return;
    case Selection::Kind::finding:
      setHtml(findingText(*report, report->findings[selection.index]));
      return;
    case Selection::Kind::phase: {
      const PhaseRow& row = report->phases[selection.index];
      LabelTable facts;
      facts.add(tr("From"), html_text(row.start));
      facts.add(tr("To"), html_text(row.end));
      facts.add(tr("Duration"), html_text(row.duration));
      facts.add(tr("Mean rate"), html_text(row.rate));
      facts.add(tr("Level"), html_text(row.level));
      facts.add(tr("Largest spread"), html_text(row.spread));
      setHtml(heading(tr("The record shows: %1").arg(html_text(row.kind)), {}, {}) +
              paragraph(tr("Found from the record alone, independent of the procedure.")) + facts.html());
      return;
    }
    case Selection::Kind::suspect: {
      const SuspectRow& row = report->suspects[selection.index];
      LabelTable facts;
      facts.add(tr("When"), html_text(row.when));
      setHtml(heading(tr("%1 looks %2").arg(html_text(row.channel), html_text(row.code)), {}, {}) +
              paragraph(html_text(row.text)) + facts.html() +
              paragraph(tr(
                  "The readings of a thermocouple that is open, stuck, copied or clipped are not counted: "
                  "what rests on them is inconclusive until a person excludes them, or confirms them in the "
                  "job. All other suspects are warnings only, and their readings are counted. Exclude the "
                  "thermocouple with Edit, Exclude… and a reason, in whole or for this time.")));
      return;
    }
    case Selection::Kind::notice: {
      const NoticeRow& row = report->notices[selection.index];
      LabelTable facts;
      facts.add(tr("First at line"), html_text(row.line));
      facts.add(tr("Count"), html_text(row.count));
      facts.add(tr("Channel"), html_text(row.channel));
      setHtml(heading(html_text(row.code), {}, {}) + paragraph(html_text(row.text)) + facts.html());
      return;
    }
    case Selection::Kind::none:
      break;
  }
  setHtml(overview(*report));
}

}  // namespace soakwright::gui
