// SPDX-License-Identifier: GPL-3.0-or-later
// Problems as the window words them: what was found as everywhere, what helps as it is done here.
#pragma once

#include <QString>
#include <QStringList>

#include "core/problems/problem.h"

namespace soakwright::gui {

QString problem_text(const Problem& problem);
QStringList problem_texts(const Problems& problems);
/// Of a draft made in the dialog New procedure, whose fields are the options of the command `draft`.
QString drafting_text(const Problem& problem);

}  // namespace soakwright::gui
