// SPDX-License-Identifier: GPL-3.0-or-later
// A list of the window on the clipboard, to paste into a table or a text elsewhere.
#pragma once

#include <QAbstractItemModel>
#include <QString>
#include <vector>

namespace soakwright::gui {

/// All rows with the headers above them, separated by tabs.
QString table_text(const QAbstractItemModel& list);
/// The rows with the headers above them, as tab-separated text and as an HTML table; no row given: all.
void copy_table(const QAbstractItemModel& list, const std::vector<int>& rows = {});
/// The same of the rows that are chosen, from top to bottom; all where none is.
void copy_chosen_rows(const QAbstractItemModel& list, const QModelIndexList& chosen);

}  // namespace soakwright::gui
