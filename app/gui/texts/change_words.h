// SPDX-License-Identifier: GPL-3.0-or-later
// An edit of the job in a few words, for the screen, for the undo menu and for a report that rests on it.
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/procedure/job/job_changes.h"

namespace soakwright::gui {

/// "TC2: role off", "date order: dmy", "TC1 excluded from 13:10 to 14:00: junction came off the work".
QString change_words(const JobChange& change);
QStringList change_words(const std::vector<JobChange>& changes);

}  // namespace soakwright::gui
