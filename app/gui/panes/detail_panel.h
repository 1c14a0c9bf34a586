// SPDX-License-Identifier: GPL-3.0-or-later
// The card beside the lists: everything that is said about the chosen line, plain sentence first, then the
// alternatives.
#pragma once

#include <QTextBrowser>
#include <memory>

#include "app/gui/chart/chart_colours.h"
#include "app/gui/session.h"
#include "app/gui/verdict_sign.h"

namespace soakwright::gui {

class DetailPanel : public QTextBrowser {
  Q_OBJECT

 public:
  explicit DetailPanel(QWidget* parent = nullptr);

  void show(std::shared_ptr<const Report> report, const Selection& selection);
  void setColours(const ChartColours& colours);

 private:
  [[nodiscard]] QString requirementText(const Report& report, const RequirementRow& row) const;
  [[nodiscard]] QString findingText(const Report& report, const FindingRow& row) const;
  [[nodiscard]] QString overview(const Report& report) const;
  [[nodiscard]] QString heading(const QString& text, std::optional<Sign> sign, const QString& word) const;

  [[nodiscard]] QString unfolding(const QString& title, std::size_t count, const QString& html) const;

  ChartColours colours_;
  bool unfolded_ = true;  ///< of every requirement, as the reader left it
  std::shared_ptr<const Report> report_;
  Selection selection_;
};

}  // namespace soakwright::gui
