// SPDX-License-Identifier: GPL-3.0-or-later
// A report opened as a case: the files inside it are taken out and evaluated again, as they were when it was
// written. What comes of it can be read and not changed.
#pragma once

#include "app/gui/open_case.h"

namespace soakwright::gui {

/// `kept` says in which units it is shown. Refused: a PDF that is no report of Soakwright with its source
/// files, one that is damaged, and files that cannot be evaluated. Long: not for the GUI thread.
Result<OpenCase> read_report(const QString& path, const OpenFiles& kept, const Watch& watch = {});

}  // namespace soakwright::gui
