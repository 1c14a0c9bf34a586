// SPDX-License-Identifier: GPL-3.0-or-later
// Looking up parts of a report, for its tests.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/report/report.h"

namespace soakwright {

inline bool says(const std::vector<LabelledText>& facts, const std::string& name) {
  return std::any_of(facts.begin(), facts.end(), [&](const LabelledText& fact) { return fact.name == name; });
}

inline std::string text_of(const std::vector<LabelledText>& facts, const std::string& name) {
  const auto found =
      std::find_if(facts.begin(), facts.end(), [&](const LabelledText& fact) { return fact.name == name; });
  return found == facts.end() ? std::string{} : found->text;
}

inline bool any_holds(const std::vector<std::string>& texts, const std::string& part) {
  return std::any_of(texts.begin(), texts.end(),
                     [&](const std::string& text) { return text.find(part) != std::string::npos; });
}

inline const RequirementRow& row_of(const Report& report, const std::string& id) {
  const auto found = std::find_if(report.requirements.begin(), report.requirements.end(),
                                  [&](const RequirementRow& row) { return row.id == id; });
  REQUIRE(found != report.requirements.end());
  return *found;
}

}  // namespace soakwright
