// SPDX-License-Identifier: GPL-3.0-or-later
// A table over as many pages as it takes: column widths from what stands in them, text wrapped and never cut,
// the header row repeated at the top of each page, a row kept on one page where it fits one.
#pragma once

#include <QColor>
#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "app/pdf/page_flow.h"
#include "app/pdf/pages/sign.h"

namespace soakwright::pdf {

struct TableColumn {
  QString heading;
  bool numbers = false;  ///< set to the right
};

struct TableCell {
  QString text;
  bool bold = false;
  std::optional<Sign> sign;  ///< drawn before the text, which takes its colour
};
/// Words alone, not broken between a number and its unit.
TableCell plain_cell(const std::string& words);

struct TableRow {
  std::vector<TableCell> cells;
  std::vector<QString> below;  ///< small print under the row, over its whole width
  QString group;  ///< where it is not empty, a heading for the rows that follow, and nothing else
};

/// Columns in which no row has anything to say are left out. No row stands alone on a page, and a small table
/// is not broken. `whole_width`: drawn over the width of the page even where it needs less.
void put_table(PageFlow& flow, std::vector<TableColumn> columns, std::vector<TableRow> rows,
               double points = kBodyPoints, bool whole_width = false);

}  // namespace soakwright::pdf
