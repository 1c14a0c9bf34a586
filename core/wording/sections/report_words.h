// SPDX-License-Identifier: GPL-3.0-or-later
// The words of a report as a whole: what it is, and what it says where nothing was evaluated or measured.
#pragma once

#include <string>

#include "core/procedure/procedure.h"

namespace soakwright::report_words {

/// The title; `procedure` may be null.
std::string title(const Procedure* procedure);
std::string nothing_evaluated();
/// Of a requirement.
std::string not_measured();

}  // namespace soakwright::report_words
