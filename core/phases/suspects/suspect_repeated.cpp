// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_repeated.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <deque>
#include <mutex>

#include "core/phases/suspects/readings/equal_columns.h"
#include "core/phases/suspects/readings/repeat_odds.h"
#include "core/system/parallel_for.h"

namespace soakwright {

namespace {

constexpr std::size_t kLongRun = 12;  // readings; shorter ones are everybody's
// -ln of the chance that is taken for none: 1e-13 where another channel shows at the same time that the
// noise goes on, its square where nothing does.
constexpr double kSurpriseBeside = 30.0;
constexpr double kSurpriseAlone = 60.0;
// Noise that several channels have in common makes their rows repeat together more easily.
constexpr double kCommonNoise = 1.5;
// A channel that repeats itself for much of the record besides is a quiet one, unless others show otherwise.
constexpr double kMostInOtherRuns = 0.25;
// The others are hot, so that waiting at ambient is no rest of a cold furnace.
constexpr double kOthersHotK = 100.0;

struct Repeats {
  std::vector<RowRun> runs;
  std::size_t in_runs = 0;  ///< readings
};

std::vector<Repeats> repeats_of(const RowTable& table) {
  std::vector<Repeats> all(table.channels.size());
  parallel_for(all.size(), all.size() * table.rows(), [&](std::size_t i) {
    all[i].runs = equal_runs(table.channels[i], kLongRun);
    for (const RowRun& run : all[i].runs) all[i].in_runs += run.count;
  });
  return all;
}

/// The bends of each channel, counted when they are first asked for: most records repeat nothing for long.
class ChannelBends {
 public:
  ChannelBends(const RowTable& table, const std::vector<Repeats>& all)
      : table_(table), all_(all), blocks_(all.size()), counted_(all.size()) {}

  /// May be called on several threads at once.
  const std::vector<BendBlock>& of(std::size_t place) {
    std::call_once(counted_[place], [&] {
      blocks_[place] = bend_blocks(table_, table_.channels[place], beside(place), all_[place].runs);
    });
    return blocks_[place];
  }

 private:
  /// The next channel of the same scale that is no copy of this one; null if there is none.
  const RowReadings* beside(std::size_t place) {
    std::call_once(compared_, [&] { first_equal_ = first_equal_places(table_); });
    const std::size_t count = table_.channels.size();
    for (std::size_t step = 1; step < count; ++step) {
      const std::size_t next = (place + step) % count;
      const RowReadings& other = table_.channels[next];
      if (other.evaluated && other.kelvin_per_unit == table_.channels[place].kelvin_per_unit &&
          first_equal_[next] != first_equal_[place])
        return &other;
    }
    return nullptr;
  }

  const RowTable& table_;
  const std::vector<Repeats>& all_;
  std::vector<std::vector<BendBlock>> blocks_;
  std::deque<std::once_flag> counted_;
  std::once_flag compared_;
  std::vector<std::size_t> first_equal_;
};

double surprise_of_reading(const RowTable& table, ChannelBends& bends, std::size_t place, const RowRun& run) {
  return repeat_surprise(bends.of(place), run.first, run.last, table.record->interval_s);
}

bool noise_beside(const RowTable& table, ChannelBends& bends, std::size_t self, const RowRun& run) {
  for (std::size_t i = 0; i < table.channels.size(); ++i)
    if (i != self && table.channels[i].evaluated && shows_noise(bends.of(i), run.first, run.last))
      return true;
  return false;
}

/// Mean of the others' middle over the run.
double middle_c(const RowTable& table, const SampledRecord& sampled, const RowRun& run) {
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t k = 0; k < sampled.cells(); ++k) {
    if (sampled.middles[k].count == 0 || sampled.times_s[k] < table.time_s(run.first) ||
        sampled.times_s[k] > table.time_s(run.last))
      continue;
    sum += sampled.middles[k].median();
    ++count;
  }
  return count > 0 ? sum / static_cast<double>(count) : 0.0;
}

Suspect suspect_of(const RowTable& table, std::size_t place, const RowRun& run, bool all, std::size_t count) {
  const RowReadings& channel = table.channels[place];
  Suspect suspect;
  suspect.channel = channel.channel;
  suspect.code = Suspect::Code::stuck;
  suspect.from_s = table.time_s(run.first);
  suspect.to_s = table.time_s(run.last);
  suspect.evidence.kind =
      all ? SuspectEvidence::Kind::all_repeat_row : SuspectEvidence::Kind::repeats_reading;
  suspect.evidence.value_c = table.celsius(place, run.first);
  suspect.evidence.count = count;
  suspect.evidence.seconds = suspect.to_s - suspect.from_s;
  return suspect;
}

/// Runs of rows on which every known evaluated channel, half of them at least, reads what it read before.
std::vector<RowRun> equal_rows(const RowTable& table, const std::vector<Repeats>& all) {
  std::vector<std::size_t> repeating(table.rows() + 1);  // channels in a long run, as changes from row to row
  std::size_t evaluated = 0;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (!table.channels[i].evaluated) continue;
    ++evaluated;
    for (const RowRun& run : all[i].runs) {
      ++repeating[run.first];
      --repeating[run.last + 1];
    }
  }
  std::vector<RowRun> runs;
  std::size_t now = 0;
  const auto repeats_or_missing = [&](std::size_t row, std::size_t in_runs) {
    if (in_runs == evaluated) return true;
    if (2 * in_runs < evaluated) return false;
    std::size_t missing = 0;
    for (std::size_t i = 0; i < all.size(); ++i)
      if (table.channels[i].evaluated && !table.channels[i].known(row)) ++missing;
    return in_runs + missing >= evaluated;
  };
  for (std::size_t row = 0; row < table.rows(); ++row) {
    now += repeating[row];
    if (evaluated == 0 || now == 0 || !repeats_or_missing(row, now)) continue;
    if (!runs.empty() && runs.back().last + 1 == row) {
      runs.back().last = row;
      ++runs.back().count;
    } else {
      runs.push_back({row, row, 1});
    }
  }
  return runs;
}

bool overlap(const RowRun& a, const RowRun& b) { return a.first <= b.last && b.first <= a.last; }

}  // namespace

std::vector<Suspect> find_repeated(const RowTable& table, const SampledRecord& sampled,
                                   const GroupCourse& course) {
  const std::vector<Repeats> all = repeats_of(table);
  ChannelBends bends(table, all);
  std::size_t evaluated = 0;
  for (const RowReadings& channel : table.channels) evaluated += channel.evaluated ? 1 : 0;

  // Rows that all channels repeat.
  std::vector<RowRun> rows;
  for (const RowRun& run : equal_rows(table, all)) {
    if (run.count < kLongRun || near_ambient(course, middle_c(table, sampled, run))) continue;
    double surprise = 0.0;
    for (std::size_t i = 0; i < all.size(); ++i)
      if (table.channels[i].evaluated) surprise += surprise_of_reading(table, bends, i, run);
    if (evaluated > 1) surprise /= kCommonNoise;
    if (static_cast<double>(run.count) * surprise >= kSurpriseAlone) rows.push_back(run);
  }

  std::vector<std::vector<Suspect>> found(all.size());
  parallel_for(all.size(), all.size() * table.rows(), [&](std::size_t i) {
    const RowReadings& channel = table.channels[i];
    for (const RowRun& run : all[i].runs) {
      const auto with_all =
          std::find_if(rows.begin(), rows.end(), [&](const RowRun& row) { return overlap(row, run); });
      if (with_all != rows.end()) {
        found[i].push_back(
            suspect_of(table, i, run, evaluated > 1, evaluated > 1 ? with_all->count : run.count));
        continue;
      }
      const double most = 1.6 * static_cast<double>(run.count);  // of any noise that is there at all
      if (most < kSurpriseBeside) continue;
      const double surprise = static_cast<double>(run.count) * surprise_of_reading(table, bends, i, run);
      if (surprise < kSurpriseBeside) continue;
      if (!noise_beside(table, bends, i, run)) continue;
      const double elsewhere = static_cast<double>(all[i].in_runs - run.count);
      if (surprise < kSurpriseAlone && elsewhere > kMostInOtherRuns * static_cast<double>(channel.rows()))
        continue;
      const double own_c = table.celsius(i, run.first);
      if (near_ambient(course, own_c) && middle_c(table, sampled, run) < own_c + kOthersHotK) continue;
      found[i].push_back(suspect_of(table, i, run, false, run.count));
    }
  });
  std::vector<Suspect> suspects;
  for (const std::vector<Suspect>& more : found) suspects.insert(suspects.end(), more.begin(), more.end());
  return suspects;
}

}  // namespace soakwright
