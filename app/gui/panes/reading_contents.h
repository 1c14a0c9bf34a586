// SPDX-License-Identifier: GPL-3.0-or-later
// What the import settings list: the file's first lines with what each was taken for.
#pragma once

#include "app/gui/open_case.h"
#include "app/gui/panes/report_list.h"

namespace soakwright::gui {

/// `record` may be null: nothing could be made of the lines.
ListContent file_lines(const LogPreview* preview, const Record* record);

}  // namespace soakwright::gui
