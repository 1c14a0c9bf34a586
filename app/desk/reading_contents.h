// What the reading sheet lists: the file's first lines with what each was taken for, the settings, the columns.
#pragma once

#include "app/desk/open_case.h"
#include "app/desk/report_list.h"

namespace soakwright::desk {

ListContent file_lines(const LogPreview* preview, const Record* record);
ListContent setting_lines(const Report* report);
/// Every column of the file in its order, thermocouples and others.
ListContent column_lines(const Report* report);

}  // namespace soakwright::desk
