// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/report_words.h"

#include <fmt/format.h>

namespace soakwright::report_words {

std::string title(const Procedure* procedure) {
  if (procedure == nullptr) return "Temperature record";
  return procedure->title && !procedure->title->empty()
             ? *procedure->title
             : fmt::format("Heat treatment to procedure {}", procedure->number);
}

std::string nothing_evaluated() { return "No procedure was given, so nothing was evaluated."; }

std::string not_measured() { return "not measured"; }

}  // namespace soakwright::report_words
