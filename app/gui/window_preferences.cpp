// SPDX-License-Identifier: GPL-3.0-or-later
// What a person set for every record, taken at the start and whenever it is changed.

#include <QAction>

#include "app/gui/looks.h"
#include "app/gui/main_window.h"
#include "app/gui/parts/preferences_dialog.h"
#include "app/gui/window_actions.h"

namespace soakwright::gui {

void MainWindow::wirePreferences() {
  connect(actions_->preferences, &QAction::triggered, this, [this] {
    const Preferences before = memory_.preferences();
    PreferencesDialog dialog(before, this);
    if (dialog.exec() != QDialog::Accepted || dialog.preferences() == before) return;
    memory_.keepPreferences(dialog.preferences());
    applyPreferences(before);
  });
  applyPreferences({});
}

/// What differs from `before`: a choice of the View menu stays where nothing else is preferred now.
void MainWindow::applyPreferences(const Preferences& before) {
  const Preferences preferences = memory_.preferences();
  const WindowActions& a = *actions_;
  apply_looks(preferences);
  QAction* unit = !preferences.unit                                  ? a.unit_as_specified
                  : *preferences.unit == TemperatureUnit::fahrenheit ? a.unit_fahrenheit
                                                                     : a.unit_celsius;
  QAction* time = preferences.time == TimeOrigin::recorder ? a.time_of_recorder
                  : preferences.time == TimeOrigin::record ? a.time_of_record
                                                           : a.time_of_hold;
  if (preferences.unit != before.unit) unit->trigger();
  if (preferences.time != before.time) time->trigger();
}

}  // namespace soakwright::gui
