// SPDX-License-Identifier: GPL-3.0-or-later
// Import settings as options of the command line give them: the keys of [import], each with its value as
// text.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/job/job.h"

namespace soakwright {

/// Key of [import] and value, both as text: {"header_line", "5"}.
using ImportTexts = std::vector<std::pair<std::string, std::string>>;

/// "--header-line" for "header_line"; "--log-unit" for "unit", since `--unit` is another matter.
std::string option_of_import_key(std::string key);

/// All problems are of kind usage; their place is the option, `--header-line` for `header_line`.
Result<ImportChoices> import_choices_of(const ImportTexts& texts);

/// `job`, or an empty one if it is null, with these settings in place of its own.
Job with_import_choices(const Job* job, const ImportChoices& choices);

}  // namespace soakwright
