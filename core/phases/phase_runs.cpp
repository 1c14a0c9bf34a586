// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/phase_runs.h"

#include <algorithm>
#include <cmath>

#include "core/phases/robust.h"

namespace soakwright {

namespace {

// What follows a ramp and swings by less than this share of it, and by less than this, belongs to its
// arrival: an overshoot and its rings.
constexpr double kOvershootShare = 0.2;
constexpr double kOvershootMostK = 60.0;
// A stop within the swings, at the overshoot's top, is no longer than this many shortest phases.
constexpr double kTopPhases = 2.0;
// An excursion from a level and back: no deeper than this share of the level's height above ambient ...
constexpr double kDipShare = 0.2;
// ... and no longer than this many shortest phases (40 minutes of a long record).
constexpr double kDipPhases = 4.0;
// A reversal within a ramp (a power cut on the way up) of less than this share of either side.
constexpr double kReversalShare = 0.15;
// A stop that is still settling moves at less than this share of the pace beside it, in a few pieces.
constexpr double kStopPace = 0.25;
constexpr std::size_t kMostPiecesOfStop = 6;
// A fall that ebbs away is still a fall while it moves faster than this; slower is how a hold moves by
// itself.
constexpr double kEbbSlope = 1.5 / 3600.0;

class Runs {
 public:
  Runs(const GroupCourse& course, const PhaseScale& scale) : course_(course), scale_(scale) {}

  std::vector<Run> settle(const std::vector<StraightPiece>& pieces) {
    take(pieces);
    find_stops();
    for (bool changed = true; changed;) {
      join_alike();
      changed = absorb_smallest_ramp() || absorb_reversal() || absorb_arrival() || absorb_excursion() ||
                drop_short_level() || ebb_into_fall();
    }
    return runs_;
  }

 private:
  [[nodiscard]] double time_before(const Run& run) const {  // of the border before it
    if (run.first == 0) return course_.times_s.front();
    if (run.first >= course_.points()) return course_.times_s.back();
    return 0.5 * (course_.times_s[run.first - 1] + course_.times_s[run.first]);
  }
  [[nodiscard]] double time_after(const Run& run) const {
    if (run.last >= course_.points()) return course_.times_s.back();
    if (run.last == 0) return course_.times_s.front();
    return 0.5 * (course_.times_s[run.last - 1] + course_.times_s[run.last]);
  }
  [[nodiscard]] double duration_s(std::size_t first, std::size_t last) const {
    return time_after(runs_[last]) - time_before(runs_[first]);
  }
  [[nodiscard]] double duration_s(std::size_t i) const { return duration_s(i, i); }

  [[nodiscard]] Run classified(const StraightPiece& piece) const {
    Run run{Run::Kind::level, piece.first, piece.last, piece.start_c, piece.end_c};
    const double length_s = std::max(time_after(run) - time_before(run), 1e-9);
    const double change = std::abs(run.change_k());
    const bool slow = change <= scale_.level_slope * length_s && change <= 2.0 * scale_.smallest_k;
    if (!slow) run.kind = run.change_k() > 0.0 ? Run::Kind::rise : Run::Kind::fall;
    return run;
  }

  void take(const std::vector<StraightPiece>& pieces) {
    for (const StraightPiece& piece : pieces) {
      const Run next = classified(piece);
      if (!runs_.empty()) {
        Run& before = runs_.back();
        const double jump = next.start_c - before.end_c;
        if (std::abs(jump) >
            scale_.smallest_k)  // a ramp too steep to have points of its own, or across a gap
          runs_.push_back({jump > 0.0 ? Run::Kind::rise : Run::Kind::fall, next.first, next.first,
                           before.end_c, next.start_c});
      }
      runs_.push_back(next);
    }
  }

  [[nodiscard]] double pace(std::size_t i) const {
    return std::abs(runs_[i].change_k()) / std::max(duration_s(i), 1e-9);
  }
  /// Whether [first, last] stands still beside what comes before and after it.
  [[nodiscard]] bool is_stop(std::size_t first, std::size_t last) const {
    double low = runs_[first].start_c;
    double high = low;
    bool slow = true;
    for (std::size_t i = first; i <= last; ++i) {
      low = std::min({low, runs_[i].start_c, runs_[i].end_c});
      high = std::max({high, runs_[i].start_c, runs_[i].end_c});
      slow = slow && !runs_[i].ramp();
    }
    if (slow) return false;  // level already
    // At the record's edge a slow beginning is more likely the ramp's own knee, unless the work has cooled
    // down.
    const bool ebbed = first > 0 && runs_[first - 1].kind == Run::Kind::fall && near_ambient(course_, high);
    const bool edge = first == 0 || last + 1 == runs_.size();
    const double most_k = (edge && !ebbed ? 1.0 : 2.0) * scale_.smallest_k;
    const double length_s = duration_s(first, last);
    if (length_s < scale_.shortest_s || high - low > most_k) return false;
    // Two pieces on either side: the nearer may be the knee between ramp and stop.
    const double most = (high - low) / length_s / kStopPace;
    const bool before = first == 0 || pace(first - 1) >= most || (first > 1 && pace(first - 2) >= most);
    const bool after = last + 1 == runs_.size() || pace(last + 1) >= most ||
                       (last + 2 < runs_.size() && pace(last + 2) >= most);
    return before && after && !(first == 0 && last + 1 == runs_.size());
  }

  /// A stop that is still settling is not slow in itself; it is beside the ramps around it. Longest first.
  void find_stops() {
    for (;;) {
      std::size_t best_first = 0;
      std::size_t best_last = 0;
      double longest_s = 0.0;
      for (std::size_t first = 0; first < runs_.size(); ++first)
        for (std::size_t last = first; last < std::min(runs_.size(), first + kMostPiecesOfStop); ++last)
          if (duration_s(first, last) > longest_s && is_stop(first, last)) {
            best_first = first;
            best_last = last;
            longest_s = duration_s(first, last);
          }
      if (longest_s == 0.0) return;
      merge(best_first, best_last, Run::Kind::level);
    }
  }

  /// One run of `kind` in place of [first, last].
  void merge(std::size_t first, std::size_t last, Run::Kind kind) {
    Run merged{kind, runs_[first].first, runs_[last].last, runs_[first].start_c, runs_[last].end_c};
    if (kind == Run::Kind::level) {  // its height is that of most of its points, not of what it took in
      const std::span<const double> t{course_.times_s};
      const std::span<const double> y{course_.celsius};
      const std::size_t n = merged.last - merged.first;
      if (n > 0) {
        const Line line = robust_line(t.subspan(merged.first, n), y.subspan(merged.first, n));
        merged.start_c = line.at(t[merged.first]);
        merged.end_c = line.at(t[merged.last - 1]);
      }
    }
    runs_[first] = merged;
    runs_.erase(runs_.begin() + static_cast<std::ptrdiff_t>(first) + 1,
                runs_.begin() + static_cast<std::ptrdiff_t>(last) + 1);
  }

  [[nodiscard]] static double height(const Run& run) { return 0.5 * (run.start_c + run.end_c); }

  [[nodiscard]] bool same_level(const Run& a, const Run& b) const {
    return std::min(std::abs(b.start_c - a.end_c), std::abs(height(b) - height(a))) <= scale_.smallest_k;
  }

  void join_alike() {
    for (std::size_t i = 0; i + 1 < runs_.size();) {
      const bool alike =
          runs_[i].kind == runs_[i + 1].kind && (runs_[i].ramp() || same_level(runs_[i], runs_[i + 1]));
      if (alike)
        merge(i, i + 1, runs_[i].kind);
      else
        ++i;
    }
  }

  /// A ramp too small for a phase joins a level beside it, or else the larger ramp beside it.
  bool absorb_smallest_ramp() {
    std::size_t smallest = runs_.size();
    for (std::size_t i = 0; i < runs_.size(); ++i)
      if (runs_[i].ramp() && std::abs(runs_[i].change_k()) < scale_.smallest_k &&
          (smallest == runs_.size() || std::abs(runs_[i].change_k()) < std::abs(runs_[smallest].change_k())))
        smallest = i;
    if (smallest == runs_.size()) return false;
    const std::size_t i = smallest;
    const bool before = i > 0;
    const bool after = i + 1 < runs_.size();
    if (!before && !after) {
      runs_[i].kind = Run::Kind::level;
      return true;
    }
    const bool level_before = before && !runs_[i - 1].ramp();
    const bool level_after = after && !runs_[i + 1].ramp();
    bool to_before = before;
    if (level_before != level_after)
      to_before = level_before;
    else if (before && after)
      to_before = level_before ? duration_s(i - 1) >= duration_s(i + 1)
                               : std::abs(runs_[i - 1].change_k()) >= std::abs(runs_[i + 1].change_k());
    if (to_before)
      merge(i - 1, i, runs_[i - 1].kind);
    else
      merge(i, i + 1, runs_[i + 1].kind);
    return true;
  }

  bool absorb_reversal() {
    for (std::size_t i = 1; i + 1 < runs_.size(); ++i) {
      const Run& before = runs_[i - 1];
      const Run& here = runs_[i];
      const Run& after = runs_[i + 1];
      if (!before.ramp() || before.kind != after.kind || !here.ramp()) continue;
      const double least = std::min(std::abs(before.change_k()), std::abs(after.change_k()));
      if (std::abs(here.change_k()) > kReversalShare * least ||
          duration_s(i) > kDipPhases * scale_.shortest_s)
        continue;
      merge(i - 1, i + 1, before.kind);
      return true;
    }
    return false;
  }

  /// Ramp, swings, level: the swings are the overshoot, and the level begins where the ramp comes to its
  /// height.
  bool absorb_arrival() {
    for (std::size_t i = 0; i + 2 < runs_.size(); ++i) {
      if (!runs_[i].ramp()) continue;
      const double most_k = std::min(kOvershootShare * std::abs(runs_[i].change_k()), kOvershootMostK);
      for (std::size_t j = i + 1; j < runs_.size(); ++j) {
        const bool level = !runs_[j].ramp();
        if (level && j > i + 1 && std::abs(height(runs_[j]) - runs_[i].end_c) <= most_k &&
            duration_s(i + 1, j - 1) <= std::max(2.0 * duration_s(j), kDipPhases * scale_.shortest_s)) {
          runs_[i].end_c = height(runs_[j]);
          merge(i + 1, j, Run::Kind::level);
          return true;
        }
        const bool swing =
            level ? duration_s(j) <= kTopPhases * scale_.shortest_s : std::abs(runs_[j].change_k()) <= most_k;
        if (!swing) break;
      }
    }
    return false;
  }

  /// Level, away and back, the same level: a dip, or a hump.
  bool absorb_excursion() {
    for (std::size_t i = 0; i + 2 < runs_.size(); ++i) {
      if (runs_[i].ramp()) continue;
      double low = runs_[i].end_c;
      double high = low;
      for (std::size_t j = i + 1; j < runs_.size(); ++j) {
        if (j > i + 1 && !runs_[j].ramp() && same_level(runs_[i], runs_[j])) {
          const double depth = std::max(runs_[i].end_c - low, high - runs_[i].end_c);
          const double reach = kDipShare * std::max(height(runs_[i]) - course_.ambient_c, 0.0);
          const double away_s = duration_s(i + 1, j - 1);
          const double longest_s =
              std::min(kDipPhases * scale_.shortest_s, std::max(duration_s(i), duration_s(j)));
          if (depth <= std::max(reach, 2.0 * scale_.smallest_k) && away_s <= longest_s) {
            merge(i, j, Run::Kind::level);
            return true;
          }
          break;
        }
        low = std::min({low, runs_[j].start_c, runs_[j].end_c});
        high = std::max({high, runs_[j].start_c, runs_[j].end_c});
      }
    }
    return false;
  }

  /// A level too short for a phase joins the ramp beside it.
  bool drop_short_level() {
    if (runs_.size() < 2) return false;
    for (std::size_t i = 0; i < runs_.size(); ++i) {
      if (runs_[i].ramp() || duration_s(i) >= scale_.shortest_s) continue;
      const bool before = i > 0;
      const bool after = i + 1 < runs_.size();
      if (before && after && runs_[i - 1].kind == runs_[i + 1].kind) {
        merge(i - 1, i + 1, runs_[i - 1].kind);
      } else if (after && runs_[i + 1].ramp()) {
        const double start = before ? runs_[i - 1].end_c : runs_[i].start_c;
        runs_[i].start_c = start;
        merge(i, i + 1, runs_[i + 1].kind);
      } else if (before && runs_[i - 1].ramp()) {
        merge(i - 1, i, runs_[i - 1].kind);
      } else {
        continue;
      }
      return true;
    }
    return false;
  }

  /// What still falls after a fall, though slowly, and is the record's end or leads into the next heating, is
  /// the same cooling ebbing away. Near ambient it is idle and stays as it is.
  bool ebb_into_fall() {
    for (std::size_t i = 1; i < runs_.size(); ++i) {
      Run& level = runs_[i];
      if (level.ramp() || runs_[i - 1].kind != Run::Kind::fall) continue;
      if (near_ambient(course_, height(level))) continue;
      const double slope = level.change_k() / std::max(duration_s(i), 1e-9);
      const double moved = std::max(4.0 * course_.noise_k, 0.4 * scale_.smallest_k);
      if (slope > -kEbbSlope || -level.change_k() < moved) continue;
      merge(i - 1, i, Run::Kind::fall);
      return true;
    }
    return false;
  }

  const GroupCourse& course_;
  const PhaseScale& scale_;
  std::vector<Run> runs_;
};

}  // namespace

std::vector<Run> phase_runs(const GroupCourse& course, const PhaseScale& scale,
                            const std::vector<StraightPiece>& pieces) {
  return Runs(course, scale).settle(pieces);
}

}  // namespace soakwright
