// SPDX-License-Identifier: GPL-3.0-or-later
// The manual's page about what has the focus, and the samples of the start page.

#include <QAction>
#include <QApplication>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/detail_panel.h"
#include "app/gui/panes/finding_pane.h"
#include "app/gui/panes/forms/review_form.h"
#include "app/gui/panes/import_settings_pane.h"
#include "app/gui/panes/job_pane.h"
#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/procedure_pane.h"
#include "app/gui/parts/manual_window.h"
#include "app/gui/texts/help_text.h"
#include "app/gui/window_actions.h"

namespace soakwright::gui {

void MainWindow::wireHelp() {
  const std::pair<QWidget*, QString> pages[] = {
      {beside_chart_, QStringLiteral("measurements.md")}, {phases_, QStringLiteral("measurements.md")},
      {suspects_, QStringLiteral("measurements.md")},     {between_, QStringLiteral("measurements.md")},
      {requirements_, QStringLiteral("verdicts.md")},     {finding_pane_, QStringLiteral("verdicts.md")},
      {deviations_, QStringLiteral("verdicts.md")},       {card_, QStringLiteral("verdicts.md")},
      {review_form_, QStringLiteral("verdicts.md")},      {reading_, QStringLiteral("formats.md")},
      {notices_, QStringLiteral("formats.md")},           {job_, QStringLiteral("formats.md")},
      {procedure_, QStringLiteral("formats.md")}};
  for (const auto& [part, page] : pages) set_manual_page(part, page);
  const auto on = [this](QAction* action, auto&& what) { connect(action, &QAction::triggered, this, what); };
  on(actions_->manual, [this] {
    if (!manual_) manual_ = new ManualWindow(folders_.manual, this);
    // Right after the start nothing may have it: then the page that is shown.
    const QWidget* const focus = QApplication::focusWidget();
    const QWidget* const shown = middle_->currentWidget() == start_ ? middle_->currentWidget() : pages_;
    manual_->show(manual_page_of(focus ? focus : shown));
  });
  on(actions_->keys, [this] { show_text(this, tr("Keyboard and mouse"), keys_text()); });
  on(actions_->cautions, [this] { show_text(this, tr("Cautions"), cautions_text(session_.report())); });
  on(actions_->about, [this] { show_text(this, tr("About Soakwright"), about_text()); });
}

}  // namespace soakwright::gui
