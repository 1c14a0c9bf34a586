// The card beside the lists: everything that is said about the chosen line, plain sentence first, then the
// basis.
#pragma once

#include <QTextBrowser>
#include <memory>

#include "app/desk/chart/chart_colours.h"
#include "app/desk/session.h"
#include "app/desk/verdict_sign.h"

namespace soakwright::desk {

class EvidenceCard : public QTextBrowser {
  Q_OBJECT

 public:
  explicit EvidenceCard(QWidget* parent = nullptr);

  void show(std::shared_ptr<const Report> report, const Selection& selection);
  void setColours(const ChartColours& colours);

 private:
  [[nodiscard]] QString requirementText(const Report& report, const RequirementRow& row) const;
  [[nodiscard]] QString findingText(const Report& report, const FindingRow& row) const;
  [[nodiscard]] QString overview(const Report& report) const;
  [[nodiscard]] QString heading(const QString& text, std::optional<Sign> sign, const QString& word) const;

  ChartColours colours_;
  std::shared_ptr<const Report> report_;
  Selection selection_;
};

}  // namespace soakwright::desk
