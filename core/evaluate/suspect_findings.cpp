// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/evaluate/suspect_findings.h"

#include <algorithm>
#include <string>

#include "core/phases/suspects/suspect_word.h"

namespace soakwright {

namespace {

constexpr double kSameTimeShare = 0.9;  // of either time lies in the other

/// Where there is no reading there is none to leave out: `interpolate_max` decides.
bool without_readings(const Suspect& suspect) {
  return suspect.evidence.kind == SuspectEvidence::Kind::no_reading;
}

bool overlaps_a_stage(const Record& record, const Suspect& suspect, const Verdicts& verdicts) {
  const Channel& channel = record.channels[suspect.channel];
  const bool several = verdicts.welds.size() > 1;
  return std::any_of(verdicts.stages.begin(), verdicts.stages.end(), [&](const StageCourse& stage) {
    if (several && channel.weld && stage.weld && *channel.weld != *stage.weld) return false;
    return suspect.from_s <= stage.end_s.value_or(record.end_s()) &&
           suspect.to_s >= stage.start_s.value_or(record.begin_s());
  });
}

bool same_time(const Suspect& a, const Suspect& b) {
  const double both = std::min(a.to_s, b.to_s) - std::max(a.from_s, b.from_s);
  const double longer = std::max(a.to_s - a.from_s, b.to_s - b.from_s);
  return both >= kSameTimeShare * longer;
}

bool said_together(const Suspect& a, const Suspect& b) {
  const bool of_all = a.evidence.kind == SuspectEvidence::Kind::all_repeat_row ||
                      a.evidence.kind == SuspectEvidence::Kind::held_over_rows ||
                      a.evidence.kind == SuspectEvidence::Kind::equals_earlier_rows ||
                      a.evidence.kind == SuspectEvidence::Kind::equals_set_point ||
                      a.evidence.kind == SuspectEvidence::Kind::equals_channel;
  return of_all && a.code == b.code && a.evidence.kind == b.evidence.kind &&
         a.evidence.other == b.evidence.other && same_time(a, b);
}

/// Who is suspect and what follows; what it rests on is said between the two, from the suspicion itself.
Statements note_of(const Record& record, const std::vector<const Suspect*>& group) {
  const Suspect& first = *group.front();
  const bool one = group.size() == 1;
  std::vector<std::string> names;
  for (const Suspect* suspect : group) names.push_back(record.channels[suspect->channel].name);
  const std::string code{suspect_word(first.code)};
  Statements note{one ? state(Sentence::suspect_thermocouple, names.front(), code)
                      : state(Sentence::suspect_thermocouples, names, code)};
  if (without_readings(first)) return note;
  if (!first.no_measurement())
    note.push_back(state(one ? Sentence::suspect_still_evaluated : Sentence::suspects_still_evaluated));
  else if (const Confirmation* const confirmed = confirmation_of(record, first))
    note.push_back(state(Sentence::suspect_confirmed, confirmed->reason));
  else
    note.push_back(state(Sentence::suspect_no_measurement));
  return note;
}

}  // namespace

const Confirmation* confirmation_of(const Record& record, const Suspect& suspect) {
  const auto found = std::find_if(
      record.confirmations.begin(), record.confirmations.end(), [&](const Confirmation& confirmation) {
        return confirmation.channel == suspect.channel && confirmation.suspect == suspect_word(suspect.code);
      });
  return found == record.confirmations.end() ? nullptr : &*found;
}

std::vector<UnmeasuredTime> unmeasured_times(const Record& record, const Course& course) {
  std::vector<UnmeasuredTime> times;
  for (const Suspect& suspect : course.suspects)
    if (suspect.no_measurement() && !without_readings(suspect) && confirmation_of(record, suspect) == nullptr)
      times.push_back({suspect.channel, suspect.from_s, suspect.to_s});
  return times;
}

std::vector<Notice> unused_confirmations(const Record& record, const Course& course) {
  std::vector<Notice> notices;
  for (const Confirmation& confirmation : record.confirmations) {
    const bool used =
        std::any_of(course.suspects.begin(), course.suspects.end(), [&](const Suspect& suspect) {
          return suspect.channel == confirmation.channel &&
                 suspect_word(suspect.code) == confirmation.suspect;
        });
    if (used) continue;
    const std::string& name = record.channels[confirmation.channel].name;
    notices.push_back({"confirm-without-suspect", record.reading.header_line.value, 1, name,
                       state(Sentence::confirmed_without_suspect, name, AsWritten{confirmation.suspect})});
  }
  return notices;
}

void note_suspects(const Record& record, const Course& course, Verdicts& verdicts) {
  std::vector<char> said(course.suspects.size());
  for (std::size_t i = 0; i < course.suspects.size(); ++i) {
    const Suspect& first = course.suspects[i];
    if (said[i] != 0 || !overlaps_a_stage(record, first, verdicts)) continue;
    std::vector<const Suspect*> group;
    Finding note;
    note.from_s = first.from_s;
    note.to_s = first.to_s;
    for (std::size_t j = i; j < course.suspects.size(); ++j) {
      const Suspect& other = course.suspects[j];
      const bool confirmed_alike =
          (confirmation_of(record, first) == nullptr) == (confirmation_of(record, other) == nullptr);
      if (j != i && (said[j] != 0 || !confirmed_alike || !said_together(first, other))) continue;
      said[j] = 1;
      group.push_back(&other);
      note.suspects.push_back(j);
      note.from_s = std::min(*note.from_s, other.from_s);
      note.to_s = std::max(*note.to_s, other.to_s);
    }
    if (group.size() == 1) {
      note.channel = record.channels[first.channel].name;
      if (verdicts.welds.size() > 1) note.weld = record.channels[first.channel].weld;
    }
    note.what = note_of(record, group);
    verdicts.findings.push_back(std::move(note));
  }
}

}  // namespace soakwright
