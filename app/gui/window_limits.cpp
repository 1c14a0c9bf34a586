// SPDX-License-Identifier: GPL-3.0-or-later
// Limits dragged on the chart: an edit of the procedure like one in its form.

#include <cmath>

#include "app/gui/chart/chart_pane.h"
#include "app/gui/main_window.h"
#include "app/gui/panes/procedure_pane.h"

namespace soakwright::gui {
namespace {

std::vector<TomlTableName> tables_of(const LimitLine& limit) {
  std::vector<TomlTableName> tables;
  for (const std::size_t stage : limit.stages) tables.push_back({"stage", stage - 1});
  if (tables.empty()) tables.push_back({"record", std::nullopt});
  return tables;
}

/// Whether the text gives the limit as this number, in each of its tables.
bool is_written_so(const LimitLine& limit, const std::vector<TomlShownTable>& text) {
  constexpr double kSame = 1e-6;
  const double shown = Temperature::of_celsius(limit.level_c).in(limit.unit);
  for (const TomlTableName& name : tables_of(limit)) {
    const TomlShownKey* written = nullptr;
    for (const TomlShownTable& table : text)
      if (table.table == name) written = table.find(key_word(limit.key));
    bool number = false;
    const double value = written ? QString::fromStdString(written->value).toDouble(&number) : 0.0;
    if (!number || std::abs(value - shown) > kSame) return false;
  }
  return true;
}

std::vector<LimitLine> movable_limits(const Session& session) {
  const auto& procedure = session.open().analysis.procedure;
  const bool settled = !session.busy() && session.problems().empty() && !session.refusedLog();
  if (!session.report() || !procedure || !settled || session.open().read_only()) return {};
  const auto text = shown_toml_tables(session.procedureText(), procedure->file);
  if (!text) return {};
  std::vector<LimitLine> limits = limit_lines(session.report()->chart, procedure->unit);
  std::erase_if(limits, [&](const LimitLine& limit) { return !is_written_so(limit, text.value()); });
  return limits;
}

}  // namespace

void MainWindow::wireLimits() {
  connect(chart_, &ChartPane::limitMoved, this, &MainWindow::moveLimit);
  connect(&session_, &Session::busyChanged, this, [this](bool busy) {
    if (!busy) chart_->letGoOfLimit();
    showMovableLimits();
  });
}

void MainWindow::showMovableLimits() { chart_->setMovableLimits(movable_limits(session_)); }

void MainWindow::moveLimit(const LimitLine& limit, double level_c) {
  const double degrees = std::round(Temperature::of_celsius(level_c).in(limit.unit));
  procedure_->change(tables_of(limit), key_word(limit.key), QString::number(degrees, 'f', 0).toStdString());
  if (!session_.busy()) chart_->letGoOfLimit();
}

}  // namespace soakwright::gui
