// A record in words and numbers, as a case's expectation has it.
#pragma once

#include <string>

#include "core/problems/problem.h"
#include "core/record/record.h"

namespace soakwright {

/// What was read: settings, time, columns, every row of short records, first and last of long ones, notices.
std::string text_of(const Record& record);
/// Kind, file name without its folder, line, words.
std::string text_of(const Problems& problems);

}  // namespace soakwright
