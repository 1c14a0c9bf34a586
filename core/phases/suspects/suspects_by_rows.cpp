// SPDX-License-Identifier: GPL-3.0-or-later
// 1. find_held_over(): all channels, throughout; then nothing else is said of repeated readings
// 2. find_repeated(): a reading or a row, longer than its own scatter allows
// 3. tell_clipped(): which of those are the end of the recorder's range
// 4. find_copied_channels(), find_copied_set_point(), find_replayed_rows()
// 5. find_spikes_and_jumps()
#include "core/phases/suspects/suspects_by_rows.h"

#include <algorithm>

#include "core/phases/suspects/readings/row_readings.h"
#include "core/phases/suspects/suspect_clipped.h"
#include "core/phases/suspects/suspect_copied.h"
#include "core/phases/suspects/suspect_held_over.h"
#include "core/phases/suspects/suspect_repeated.h"
#include "core/phases/suspects/suspect_spike.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

bool touch(const Suspect& a, const Suspect& b, double slack_s) {
  return a.from_s <= b.to_s + slack_s && b.from_s <= a.to_s + slack_s;
}

bool covers(const Suspect& outer, const Suspect& inner, double slack_s) {
  return outer.from_s <= inner.from_s + slack_s && outer.to_s >= inner.to_s - slack_s;
}

using Code = Suspect::Code;

/// Readings that do not change: one time has one suspect.
void add_repeated(std::vector<Suspect>& found, Suspect suspect, double interval_s) {
  if (no_work(suspect.evidence.value_c)) {
    suspect.code = Code::open;
    suspect.evidence.kind = SuspectEvidence::Kind::value_of_no_work;
    suspect.evidence.alone = true;
  }
  for (Suspect& other : found) {
    if (!touch(other, suspect, 0.0)) continue;
    if (other.code == Code::open) return;
    if (other.code == Code::detached && covers(other, suspect, interval_s))
      return;  // it cooled to ambient there
    if (other.code != Code::stuck) continue;
    if (suspect.code != Code::stuck || covers(suspect, other, interval_s)) other = suspect;
    return;
  }
  found.push_back(suspect);
}

void add_wild(std::vector<Suspect>& found, const Suspect& suspect, double interval_s) {
  const bool known = std::any_of(found.begin(), found.end(), [&](const Suspect& other) {
    if (other.code == suspect.code) return touch(other, suspect, interval_s);
    if (suspect.code == Code::noisy) return false;
    return touch(other, suspect, 2.0 * interval_s) &&
           (other.code == Code::open || other.code == Code::noisy || other.code == Code::reversed ||
            suspect.code == Code::detached);
  });
  if (!known) found.push_back(suspect);
}

}  // namespace

void add_suspects_by_rows(const Record& record, const SampledRecord& sampled, const GroupCourse& course,
                          std::vector<std::vector<Suspect>>& found) {
  const RowTable table = row_table(record, sampled);
  std::vector<std::size_t> place_of(record.channels.size());
  for (std::size_t i = 0; i < table.channels.size(); ++i) place_of[table.channels[i].channel] = i;
  const std::vector<Suspect> held = find_held_over(table);
  for (const Suspect& suspect : held) found[place_of[suspect.channel]].push_back(suspect);
  if (held.empty()) {
    // Replayed rows are looked for by one thread, meanwhile the others look for the rest.
    std::vector<Suspect> replayed, copied, set_point;
    parallel_for(2, table.rows() * table.channels.size(), [&](std::size_t piece) {
      if (piece == 0) {
        replayed = find_replayed_rows(table);
        return;
      }
      for (const Suspect& suspect : find_repeated(table, sampled, course))
        add_repeated(found[place_of[suspect.channel]], suspect, record.interval_s);
      tell_clipped(table, course, found);
      copied = find_copied_channels(table, sampled);
      set_point = find_copied_set_point(table);
    });
    for (const std::vector<Suspect>* some : {&copied, &set_point, &replayed})
      for (const Suspect& suspect : *some) found[place_of[suspect.channel]].push_back(suspect);
  }
  for (const Suspect& suspect : find_spikes_and_jumps(table))
    add_wild(found[place_of[suspect.channel]], suspect, record.interval_s);
}

}  // namespace soakwright
