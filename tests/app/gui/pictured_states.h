// SPDX-License-Identifier: GPL-3.0-or-later
// States of the window that are pictured, by theme, and what they are made of.
#pragma once

#include <QDir>
#include <QString>
#include <functional>

#include "tests/app/gui/real_window.h"

namespace soakwright::gui::pictured {

/// Where the pictures go, and a part of the names of the states that are wanted; empty: all.
void take_into(const QDir& folder, const std::string& wanted);
[[nodiscard]] bool is_wanted(const QString& name);
/// Of any widget, without the screen.
void keep(QWidget& widget, const QString& name);
/// A picture of the whole window once `lead` has brought it there.
void state(const QString& name, const std::function<void(RealWindow&)>& lead);
/// Chooses the requirement with that id.
bool choose(RealWindow& real, const std::string& id);

struct Files {
  QString clean, dip, many, large, cut, fast, either, emf, lost;  ///< logs
  QString procedure, strict, bad, job, heated, placed, welds;
  QString report;  ///< of the job, exported by a window
};
Files make_files(const QString& folder);

void change_by_hand(RealWindow& real, const Files& files);
void show_columns(RealWindow& real, const Files& files);
void show_procedure(RealWindow& real, const Files& files);
void show_heat(RealWindow& real, const Files& files);
void lay_over(RealWindow& real, const Files& files);

// Each theme: `dark` is put into the names of those that are pictured in both palettes.
void verdict_states(const Files& files);
void chart_states(const Files& files);
void import_states(const Files& files);
void editor_states(const Files& files);
void comparing_states(const Files& files);
void weld_states(const Files& files);
void place_states(const Files& files, const QString& dark);
void report_states(const Files& files, const QString& dark);
void channel_states(const Files& files, const QString& dark);
void dark_states(const Files& files);

}  // namespace soakwright::gui::pictured
