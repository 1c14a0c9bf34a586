// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/course_words.h"

#include <fmt/format.h>

namespace soakwright::course_words {
namespace {

std::string with_length(const TimeSpan& time, const PrintedNumbers& say) {
  return fmt::format("{} ({})", say.span(time.first, time.second), say.duration(time.second - time.first));
}

std::string times_text(const std::vector<TimeSpan>& times, const PrintedNumbers& say) {
  constexpr std::size_t kMost = 6;
  std::string text;
  for (std::size_t i = 0; i < times.size() && i < kMost; ++i)
    text.append(i == 0 ? "" : "; ").append(with_length(times[i], say));
  if (times.size() > kMost) text.append(fmt::format("; and {} more", times.size() - kMost));
  return text;
}

}  // namespace

std::string took_over(const Replacement& replacement, const PrintedNumbers& say) {
  if (!replacement.step_k)
    return fmt::format(
        "{} took over from here to the end of the record; the step between the two is not known.",
        replacement.by);
  return fmt::format("{0} took over from here to the end of the record; at that moment {0} less {1} was {2}.",
                     replacement.by, replacement.channel, say.difference(*replacement.step_k));
}

LabelledText continuous_hold(const std::optional<TimeSpan>& hold, const PrintedNumbers& say) {
  return {"Continuous hold",
          hold ? with_length(*hold, say) : "none: the thermocouples were never all in range together"};
}

LabelledText hold_period(double from_s, double to_s, const PrintedNumbers& say) {
  return {"Hold period", say.span(from_s, to_s)};
}

LabelledText times_in_range(const std::vector<TimeSpan>& times, const PrintedNumbers& say) {
  return {"Times in range", times_text(times, say)};
}

LabelledText edges_crossed(const std::vector<TimeSpan>& times, const PrintedNumbers& say) {
  return {"Edges of the range crossed", times_text(times, say)};
}

}  // namespace soakwright::course_words
