// SPDX-License-Identifier: GPL-3.0-or-later
// The words in which entries of a review file are refused.
#pragma once

#include <optional>

#include "core/procedure/toml/table_reader.h"

namespace soakwright {

std::nullopt_t refuse_as_digest(const FoundValue& found);
void complain_that_it_names_no_finding(TableReader& finding);
void complain_of_second_disposition(TableReader& finding);

}  // namespace soakwright
