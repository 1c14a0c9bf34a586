// SPDX-License-Identifier: GPL-3.0-or-later
// For each channel, in this order; what one search explains the next ones leave alone:
// 1. find_missing(): no reading
// 2. find_lag(): late or early all the way, which would look like much else in places
// 3. find_reversed(): the whole way, or from some time on
// 4. find_standing_far_off(): a reading where no work can be
// 5. find_noisy(): scatters
// 6. find_stuck(): does not move, without having fallen there
// 7. find_detached(): a sudden step that stays
// In a small group then again without the one that is surely faulty. Then add_suspects_by_rows().
#include "core/phases/suspects/suspects_of.h"

#include <algorithm>
#include <functional>
#include <utility>

#include "core/phases/suspects/readings/examined_channel.h"
#include "core/phases/suspects/readings/sudden_steps.h"
#include "core/phases/suspects/suspect_detached.h"
#include "core/phases/suspects/suspect_lag.h"
#include "core/phases/suspects/suspect_noisy.h"
#include "core/phases/suspects/suspect_open.h"
#include "core/phases/suspects/suspect_reversed.h"
#include "core/phases/suspects/suspect_stuck.h"
#include "core/phases/suspects/suspect_unheated.h"
#include "core/phases/suspects/suspects_by_rows.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr std::size_t kFewestRows = 20;   // fewer show no course to differ from
constexpr std::size_t kFewestForLag = 3;  // of two channels either may be the late one

constexpr std::size_t kSwayedGroup = 4;  // in which one wrong channel sways the middle of the others

void take(ExaminedChannel& examined, std::vector<Suspect>& found, const std::vector<Suspect>& more) {
  for (const Suspect& suspect : more) {
    const bool known_already = std::any_of(found.begin(), found.end(), [&](const Suspect& other) {
      return suspect.from_s >= other.from_s && suspect.to_s <= other.to_s;
    });
    if (known_already) continue;
    found.push_back(suspect);
    examined.explain(suspect.from_s, suspect.to_s);
  }
}

std::vector<Suspect> faults_of(ExaminedChannel& examined, const Scatter& own, const Scatter& usual,
                               bool together) {
  std::vector<Suspect> found;
  const std::vector<Suspect> missing = find_missing(examined);
  if (together) {
    const bool comparable =
        examined.sampled->evaluated >= kFewestForLag && examined.channel().zone == Zone::soak;
    if (comparable) take(examined, found, find_lag(examined));
    if (found.empty()) take(examined, found, find_reversed(examined, sudden_steps(examined)));
    if (found.empty()) take(examined, found, find_below_ambient(examined));
  }
  take(examined, found, missing);
  if (!together) {
    take(examined, found, find_never_moving(examined));
    take(examined, found, find_below_ambient(examined));
    return found;
  }
  take(examined, found, find_standing_far_off(examined));
  take(examined, found, find_noisy(examined, own, usual));
  std::vector<SuddenStep> steps = sudden_steps(examined);
  const std::vector<Suspect> stuck = find_stuck(examined, steps);
  take(examined, found, stuck);
  if (!stuck.empty()) steps = sudden_steps(examined);  // its end is no longer a step
  take(examined, found, find_detached(examined, steps));
  return found;
}

/// What each channel shows beside the others; `faulty` ones are left as they were found.
void look_at_all(const Record& record, const SampledRecord& sampled, const GroupCourse& course,
                 const std::vector<char>& faulty, std::vector<std::vector<Suspect>>& found) {
  std::vector<ExaminedChannel> all = examine_channels(record, sampled, course);
  const bool together = run_together(sampled, course);
  const std::size_t size = all.size() * sampled.cells();
  std::vector<Scatter> scatter(all.size());
  parallel_for(all.size(), size, [&](std::size_t i) { scatter[i] = scatter_of(all[i]); });
  const Scatter usual =
      usual_scatter({scatter.begin(), scatter.begin() + static_cast<std::ptrdiff_t>(sampled.evaluated)});
  parallel_for(all.size(), size, [&](std::size_t i) {
    if (faulty[i] == 0) found[i] = faults_of(all[i], scatter[i], usual, together);
  });
}

/// Whether all readings of that time are the same: nothing else makes a channel do that.
bool stands_exactly(const Record& record, const Suspect& suspect) {
  const Readings& readings = record.channels[suspect.channel].readings;
  const auto begin = record.times_s.begin();
  const auto first = std::lower_bound(begin, record.times_s.end(), suspect.from_s) - begin;
  const auto last = std::upper_bound(begin, record.times_s.end(), suspect.to_s) - begin;
  std::vector<std::uint32_t> rows;
  std::vector<double> celsius;
  readings.collect(static_cast<std::size_t>(first), static_cast<std::size_t>(last), rows, celsius);
  return !celsius.empty() &&
         std::adjacent_find(celsius.begin(), celsius.end(), std::not_equal_to<>()) == celsius.end();
}

/// How unsure it is that a fault is its channel's own, and not that of what it is held against.
int doubt_about(const Record& record, const Suspect& suspect) {
  switch (suspect.code) {
    case Suspect::Code::open:
      return 0;
    case Suspect::Code::reversed:
      return 1;
    case Suspect::Code::lag:
      return 2;
    case Suspect::Code::stuck:
      return stands_exactly(record, suspect) ? 3 : 6;
    case Suspect::Code::detached:
      return 4;
    case Suspect::Code::noisy:
      return 5;
    case Suspect::Code::copied:  // what only the rows show is added later
    case Suspect::Code::clipped:
    case Suspect::Code::spike:
      break;
  }
  return 6;
}

/// The channel, not yet `faulty`, with the surest fault, of equals the earliest; as many as there are
/// channels where no other has one.
std::size_t surest(const Record& record, const std::vector<std::vector<Suspect>>& found,
                   const std::vector<char>& faulty) {
  std::size_t best = found.size();
  std::pair<int, double> least{};
  for (std::size_t i = 0; i < found.size(); ++i)
    for (const Suspect& suspect : found[i]) {
      if (faulty[i] != 0) continue;
      const std::pair<int, double> here{doubt_about(record, suspect), suspect.from_s};
      if (best < found.size() && here >= least) continue;
      least = here;
      best = i;
    }
  return best;
}

/// In a small group one faulty channel makes the others look wrong: leaves it out where it is, and looks
/// again.
void look_again_without_faulty(const Record& record, SampledRecord sampled,
                               std::vector<std::vector<Suspect>>& found) {
  std::vector<char> faulty(found.size());
  for (;;) {
    const std::size_t worst = surest(record, found, faulty);
    if (worst == found.size()) return;
    faulty[worst] = 1;
    if (surest(record, found, faulty) == found.size()) return;  // nobody else is accused
    SampledTrace& trace = sampled.traces[worst];
    for (const Suspect& suspect : found[worst])
      for (std::size_t k = 0; k < sampled.cells(); ++k)
        if (sampled.times_s[k] + sampled.step_s >= suspect.from_s &&
            sampled.times_s[k] - sampled.step_s <= suspect.to_s) {
          trace.known[k] = 0;
          trace.exclusion[k] = 1;
        }
    find_middles(sampled);
    const GroupCourse course = group_course(record, sampled);
    if (course.points() < kFewestRows) return;
    std::vector<std::vector<Suspect>> again = found;
    look_at_all(record, sampled, course, faulty, again);
    for (std::size_t i = 0; i < found.size(); ++i)
      if (again[i].size() <= found[i].size())
        found[i] = std::move(again[i]);  // leaving one out accuses nobody anew
  }
}

}  // namespace

std::vector<Suspect> suspects_of(const Record& record, const SampledRecord& sampled,
                                 const GroupCourse& course) {
  if (sampled.cells() < kFewestRows) return {};
  std::vector<std::vector<Suspect>> found(sampled.traces.size());
  if (course.points() >= kFewestRows) {
    look_at_all(record, sampled, course, std::vector<char>(found.size()), found);
    if (sampled.evaluated <= kSwayedGroup) look_again_without_faulty(record, sampled, found);
  } else {  // hardly a reading of any channel
    const std::vector<ExaminedChannel> all = examine_channels(record, sampled, course);
    for (std::size_t i = 0; i < all.size(); ++i) found[i] = find_missing(all[i]);
  }
  add_suspects_by_rows(record, sampled, course, found);

  std::vector<Suspect> suspects;
  for (const std::vector<Suspect>& more : found) suspects.insert(suspects.end(), more.begin(), more.end());
  std::stable_sort(suspects.begin(), suspects.end(), [](const Suspect& a, const Suspect& b) {
    return a.channel != b.channel ? a.channel < b.channel : a.from_s < b.from_s;
  });
  return suspects;
}

}  // namespace soakwright
