// SPDX-License-Identifier: GPL-3.0-or-later
// The words of each kind of requirement: its name, and what there is to explain about such a limit, whatever
// the run. What a standard says is marked with its name; the rest is common practice, no source.
#pragma once

#include <span>
#include <string_view>

#include "core/evaluate/requirement_kinds.h"

namespace soakwright {

/// In place of a source, where no standard states it.
inline constexpr std::string_view kCommonPractice = "common practice, no source";

struct RequirementWords {
  std::string_view label;                         ///< "Heating rate"
  std::string_view requirement;                   ///< "No heating faster than this over the rate window."
  std::string_view why;                           ///< why such a limit exists
  std::string_view why_source = kCommonPractice;  ///< a standard, or kCommonPractice
  std::span<const std::string_view> causes;       ///< what is usually behind a limit that is not met
  std::string_view look_first;
  std::string_view would_help;  ///< what would settle it where the record cannot
};

/// There is one for every kind.
RequirementWords words_of(RequirementKind kind);

}  // namespace soakwright
