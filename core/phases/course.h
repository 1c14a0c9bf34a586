// SPDX-License-Identifier: GPL-3.0-or-later
// The door of this room: the course of a record. It never changes the record and acts on nothing.
#pragma once

#include "core/phases/phase.h"
#include "core/record/record.h"

namespace soakwright {

/// Phases of the evaluated group and channels that look wrong.
Course course_of(const Record& record);

}  // namespace soakwright
