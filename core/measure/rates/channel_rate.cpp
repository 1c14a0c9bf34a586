// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/rates/channel_rate.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/rates/rate_window.h"
#include "core/measure/rates/reading_noise.h"

namespace soakwright {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// A window of one of the channel's parts.
struct WindowOfPart {
  FoundWindow window;
  std::size_t part = 0;
};

/// Windows of one part in a row that are not within the limit.
struct OpenWindows {
  std::size_t part = 0;
  Span time;
  FoundWindow steepest;
  double first_middle_s = 0.0, last_middle_s = 0.0;
  bool has_candidate = false;  ///< one is beyond the limit for certain by the channel's noise
};

/// The windows of one width, over all parts.
class WidthSearch {
 public:
  explicit WidthSearch(double width_s) : width_s_(width_s) {}

  [[nodiscard]] double width_s() const { return width_s_; }
  [[nodiscard]] const std::optional<WindowOfPart>& best() const { return best_; }
  [[nodiscard]] bool doubtful() const { return doubtful_; }
  [[nodiscard]] const std::vector<OpenWindows>& open() const { return open_; }
  /// Keep every window that is not within the limit, in places.
  void keep_places() { keeps_places_ = true; }

  /// Slopes of this shape up to it change nothing.
  [[nodiscard]] double of_interest_above(PartWindows& windows, const WindowShape& shape) const {
    const double better = windows.slope_with(best_value_);
    return keeps_places_ || !doubtful_ ? std::min(better, windows.open_above(shape)) : better;
  }

  void note(PartWindows& windows, std::size_t part, const FoundWindow& window) {
    const double value = windows.with_uncertainty(window.slope_c_per_h);
    if (!best_ || steeper(value, best_value_)) {
      best_value_ = value;
      best_ = WindowOfPart{window, part};
    }
    if (!keeps_places_ && doubtful_) return;
    if (!windows.is_open(window, width_s_)) return;
    doubtful_ = true;
    if (keeps_places_) keep(windows, part, window);
  }

 private:
  void keep(PartWindows& windows, std::size_t part, const FoundWindow& window) {
    const double middle_s = windows.middle_s(window);
    const Span time =
        window.sample ? Span{middle_s - width_s_ / 2.0, middle_s + width_s_ / 2.0} : windows.part().time;
    if (open_.empty() || open_.back().part != part || time.first > open_.back().time.second)
      open_.push_back({part, time, window, middle_s, middle_s, false});
    OpenWindows& last = open_.back();
    last.time.second = time.second;
    last.last_middle_s = middle_s;
    if (steeper(window.slope_c_per_h, last.steepest.slope_c_per_h)) last.steepest = window;
    last.has_candidate = last.has_candidate || windows.is_candidate(window);
  }

  double width_s_;
  bool keeps_places_ = false;
  double best_value_ = -kInfinite;
  std::optional<WindowOfPart> best_;
  bool doubtful_ = false;
  std::vector<OpenWindows> open_;
};

class ChannelRateMeter {
 public:
  ChannelRateMeter(const Record& record, const RowTicks& rows, const Trace& trace, std::size_t index,
                   const std::vector<RatePart>& parts, const RateConditions& conditions, double width_s)
      : record_(record),
        rows_(rows),
        trace_(trace),
        index_(index),
        parts_(parts),
        conditions_(conditions),
        main_(width_s) {
    main_.keep_places();
    for (const int minutes : kAlternativeMinutes) others_.emplace_back(minutes * 60.0);
  }

  ChannelRate measure() {
    load();
    for (std::size_t part = 0; part < parts_.size(); ++part) search(part);
    if (main_.best()) {
      const auto& [window, part] = *main_.best();
      rate_.worst = windows_[part].measured(window, main_.width_s());
    }
    for (const OpenWindows& open : main_.open()) rate_.places.push_back(place_of(open));
    for (std::size_t i = 0; i < others_.size(); ++i) rate_.by_window[i] = alternative_of(others_[i]);
    if (conditions_.limit_c_per_h) find_jumps();
    return std::move(rate_);
  }

 private:
  std::size_t source_of(const RatePart& part) const { return trace_.pieces[part.piece].source; }
  double last_digit_k(std::size_t source) const {
    return record_.channels[trace_.sources[source].channel].readings.resolution_k();
  }

  /// The samples that the parts need as integers, the noise of the channel, and the windows of each part.
  void load() {
    samples_.resize(trace_.sources.size());
    for (std::size_t source = 0; source < trace_.sources.size(); ++source) {
      std::size_t first = std::numeric_limits<std::size_t>::max();
      std::size_t end = 0;
      for (const RatePart& part : parts_) {
        if (source_of(part) != source || part.first >= part.end) continue;
        first = std::min(first, part.first);
        end = std::max(end, part.end);
      }
      if (first < end) samples_[source] = integer_samples(record_, rows_, trace_.sources[source], first, end);
    }
    ReadingNoise noise;
    double coarsest_k = last_digit_k(0);
    for (const RatePart& part : parts_) {
      noise.add(samples_[source_of(part)], part.first, part.end);
      coarsest_k = std::max(coarsest_k, last_digit_k(source_of(part)));
    }
    const double level = noise.level();
    rate_.noise_k = std::sqrt(std::max(level, coarsest_k * coarsest_k / 12.0));
    const double sign = conditions_.stage.direction == RampStage::Direction::heat ? 1.0 : -1.0;
    const double edge =
        conditions_.limit_c_per_h ? *conditions_.limit_c_per_h + kTemperatureSlack : kInfinite;
    windows_.reserve(parts_.size());
    for (const RatePart& part : parts_) {
      const std::size_t source = source_of(part);
      windows_.emplace_back(trace_, index_, part, samples_[source], sign, edge, level, last_digit_k(source),
                            conditions_.guard != nullptr, share_of(part));
    }
  }

  /// U of a rate as a share of it; of a part that is hotter than where the share begins, that of all of it.
  double share_of(const RatePart& part) const {
    if (conditions_.guard == nullptr) return 0.0;
    const TraceSource& source = trace_.sources[source_of(part)];
    double hottest = -kInfinite;
    for (std::size_t i = part.first; i < part.end; ++i) hottest = std::max(hottest, source.c[i]);
    return conditions_.guard->of(trace_, source_of(part)).rate_share_up_to(hottest);
  }

  void search(std::size_t index) {
    PartWindows& windows = windows_[index];
    WidthSearch* same = nullptr;
    for (WidthSearch& other : others_)
      if (other.width_s() == main_.width_s()) same = &other;
    const bool any = windows.visit(
        main_.width_s(),
        [&](const WindowShape& shape) {
          const double above = main_.of_interest_above(windows, shape);
          return same != nullptr ? std::min(above, same->of_interest_above(windows, shape)) : above;
        },
        [&](const FoundWindow& window) {
          main_.note(windows, index, window);
          if (same != nullptr) same->note(windows, index, window);
        });
    std::optional<FoundWindow> whole;
    if (!any) {
      whole = windows.whole(conditions_.in_range_min_s);
      if (whole) main_.note(windows, index, *whole);
    }
    if (!parts_[index].beside_hold) {
      rate_.own_time_measured = rate_.own_time_measured || any || whole;
      rate_.crossed_unseen = rate_.crossed_unseen || (!any && !whole && parts_[index].crosses_all());
    }
    for (WidthSearch& other : others_)
      if (&other != same)
        windows.visit(
            other.width_s(),
            [&](const WindowShape& shape) { return other.of_interest_above(windows, shape); },
            [&](const FoundWindow& window) { other.note(windows, index, window); });
  }

  bool is_certain(const WindowOfPart& found, double width_s) const {
    const PartWindows& windows = windows_[found.part];
    const auto [first, end] = windows.samples_of(found.window, width_s);
    LeftOutTenth tenth(windows.samples(), first, end);
    return windows.is_certain(found.window, width_s, tenth);
  }

  /// The steepest window of the part that is beyond the limit for certain, of those whose middle lies within
  /// `middles`.
  std::optional<FoundWindow> steepest_certain(std::size_t part, double width_s, Span middles) {
    PartWindows& windows = windows_[part];
    std::vector<FoundWindow> candidates;
    windows.visit(
        width_s, [&](const WindowShape& /*any*/) { return windows.candidate_of_any_shape_above(); },
        [&](const FoundWindow& window) {
          const double middle_s = windows.middle_s(window);
          if (middle_s >= middles.first && middle_s <= middles.second && windows.is_candidate(window))
            candidates.push_back(window);
        });
    if (candidates.empty()) return std::nullopt;
    std::stable_sort(candidates.begin(), candidates.end(), [](const FoundWindow& a, const FoundWindow& b) {
      return a.slope_c_per_h > b.slope_c_per_h;
    });
    std::size_t first = std::numeric_limits<std::size_t>::max();
    std::size_t end = 0;
    for (const FoundWindow& window : candidates) {
      const auto [from, to] = windows.samples_of(window, width_s);
      first = std::min(first, from);
      end = std::max(end, to);
    }
    LeftOutTenth tenth(windows.samples(), first, end);
    for (const FoundWindow& window : candidates)
      if (windows.is_certain(window, width_s, tenth)) return window;
    return std::nullopt;
  }

  SteepPlace place_of(const OpenWindows& open) {
    const PartWindows& windows = windows_[open.part];
    SteepPlace place{index_, open.time, windows.measured(open.steepest, main_.width_s()), std::nullopt};
    if (!open.has_candidate) return place;
    if (is_certain({open.steepest, open.part}, main_.width_s())) {
      place.certain = place.steepest;
    } else if (open.steepest.sample) {
      if (const auto certain =
              steepest_certain(open.part, main_.width_s(), {open.first_middle_s, open.last_middle_s}))
        place.certain = windows.measured(*certain, main_.width_s());
    }
    return place;
  }

  AlternativeRate alternative_of(const WidthSearch& search) {
    AlternativeRate alternative;
    if (!search.best()) return alternative;
    alternative.worst = windows_[search.best()->part].measured(search.best()->window, search.width_s());
    alternative.doubtful = search.doubtful();
    if (!alternative.doubtful) return alternative;
    alternative.surely = is_certain(*search.best(), search.width_s());
    for (std::size_t part = 0; part < parts_.size() && !alternative.surely; ++part)
      alternative.surely = steepest_certain(part, search.width_s(), {-kInfinite, kInfinite}).has_value();
    return alternative;
  }

  void find_jumps() {
    const double bound_k =
        *conditions_.limit_c_per_h * conditions_.rate_window_s / 3600.0 + kJumpNoise * rate_.noise_k;
    for (const RatePart& part : parts_)
      for (RateJump jump : rate_jumps(trace_, part, conditions_.stage, conditions_.rate_window_s, bound_k)) {
        jump.trace = index_;
        rate_.jumps.push_back(jump);
      }
  }

  /// A jump is larger than noise makes by this many standard deviations of a reading.
  static constexpr double kJumpNoise = 8.0;

  const Record& record_;
  const RowTicks& rows_;
  const Trace& trace_;
  std::size_t index_;
  const std::vector<RatePart>& parts_;
  const RateConditions& conditions_;
  WidthSearch main_;
  std::vector<WidthSearch> others_;
  std::vector<IntegerSamples> samples_;  ///< per source
  std::vector<PartWindows> windows_;     ///< per part
  ChannelRate rate_;
};

}  // namespace

ChannelRate channel_rate(const Record& record, const RowTicks& rows, const Trace& trace, std::size_t index,
                         const std::vector<RatePart>& parts, const RateConditions& conditions,
                         double width_s) {
  return ChannelRateMeter(record, rows, trace, index, parts, conditions, width_s).measure();
}

}  // namespace soakwright
