// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/exclusion_words.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/procedure/job/job_words.h"

namespace soakwright {
namespace {

constexpr const char* kWhole = "whole record";

bool is_whole(const Record& record, const Exclusion& exclusion) {
  if (record.end_row <= record.first_row) return true;
  return exclusion.from_s <= record.begin_s() && exclusion.to_s >= record.end_s();
}

/// The job's entry of a thermocouple that it keeps out of the evaluation: not used, or used for something
/// else with a reason.
const ThermocoupleEntry* kept_out(const Record& record, const Job* job, std::size_t channel) {
  const Channel& one = record.channels[channel];
  if (job == nullptr || !one.entry || *one.entry >= job->thermocouples.size()) return nullptr;
  const ThermocoupleEntry& entry = job->thermocouples[*one.entry];
  const bool used_otherwise = !one.evaluated() && entry.reason.has_value();
  return one.role == ThermocoupleRole::off || used_otherwise ? &entry : nullptr;
}

}  // namespace

bool is_taken_out(const Record& record, const Job* job, std::size_t channel) {
  return kept_out(record, job, channel) != nullptr ||
         std::any_of(record.exclusions.begin(), record.exclusions.end(),
                     [&](const Exclusion& one) { return one.channel == channel && is_whole(record, one); });
}

std::vector<ExcludedText> excluded_texts(const WordingContext& context) {
  const Record& record = *context.analysis.record;
  std::vector<ExcludedText> texts;
  for (std::size_t channel = 0; channel < record.channels.size(); ++channel) {
    const std::string& name = record.channels[channel].name;
    if (const ThermocoupleEntry* entry = kept_out(record, context.analysis.job.get(), channel)) {
      const ThermocoupleRole role = record.channels[channel].role;
      const std::string use = role == ThermocoupleRole::off
                                  ? std::string{kWhole}
                                  : fmt::format("{}, used as {}", kWhole, kRoleWords.of(role));
      texts.push_back({channel, name, use, entry->reason.value_or("the job gives no reason"), true});
    }
    for (const Exclusion& exclusion : record.exclusions) {
      if (exclusion.channel != channel) continue;
      const bool whole = is_whole(record, exclusion);
      texts.push_back({channel, name, whole ? kWhole : context.say.span(exclusion.from_s, exclusion.to_s),
                       exclusion.reason, whole});
    }
  }
  return texts;
}

std::string excluded_sentence(const WordingContext& context) {
  std::string list;
  for (const ExcludedText& text : excluded_texts(context)) {
    list += list.empty() ? "" : "; ";
    list += fmt::format("{}, {} ({})", text.name, text.when, text.reason);
  }
  return list.empty() ? list : fmt::format(" Excluded by a person: {}.", list);
}

std::string excluded_legend(const Record& record, const Job* job, std::size_t channel) {
  if (is_taken_out(record, job, channel)) return " (excluded)";
  const bool partly = std::any_of(record.exclusions.begin(), record.exclusions.end(),
                                  [&](const Exclusion& one) { return one.channel == channel; });
  return partly ? " (partly excluded)" : "";
}

}  // namespace soakwright
