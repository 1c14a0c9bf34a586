// SPDX-License-Identifier: GPL-3.0-or-later
// The suspects of a record as text, and the check that there is none.
#pragma once

#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/phases/course.h"
#include "core/wording/result_words.h"
#include "core/wording/suspect_words.h"

namespace soakwright {

inline constexpr double kHour = 3600.0;

/// A line for each: channel, code, times in seconds, and the sentence of the report.
inline std::string told(const Record& record, const std::vector<Suspect>& suspects) {
  std::string text;
  for (const Suspect& suspect : suspects) {
    text.append(record.channels[suspect.channel].name).append(" ").append(result_word(suspect.code));
    text.append(" from ").append(std::to_string(suspect.from_s)).append(" to ");
    text.append(std::to_string(suspect.to_s))
        .append(" ")
        .append(suspect_sentence(suspect, record))
        .append("\n");
  }
  return text;
}

inline void check_nobody(const Record& record) {
  const std::vector<Suspect> suspects = course_of(record).suspects;
  INFO(told(record, suspects));
  CHECK(suspects.empty());
}

}  // namespace soakwright
