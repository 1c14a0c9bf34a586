// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_noisy.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "core/phases/robust.h"
#include "core/phases/suspects/readings/noise_shape.h"

namespace soakwright {

namespace {

constexpr std::size_t kBlock = 8;  // cells: enough for a figure, few enough to find a time of a hundredth
// The block's figure is this quantile of its second differences, so that a weld run's heat (one or two of
// them) does not count and a contact that fails now and then does. It is that many deviations of a normal
// distribution.
constexpr double kQuantile = 0.6;
constexpr double kNotKnown = std::numeric_limits<double>::infinity();
constexpr double kDeviations = 0.8416;
// Noisy: so many times the others' scatter, and so much; a single block's figure may be lower by chance.
constexpr double kTimes = 4.0;
constexpr double kLeastRowK = 2.2;
constexpr double kUnsureShare = 0.4;    // of that: a noisy block may look so by chance
constexpr std::size_t kMostUnsure = 6;  // blocks before the first that is surely noisy
constexpr double kLeastRowDigits = 2.5;
constexpr double kBlockShare = 0.7;
// A block of the others may be quiet by chance: no quieter than this share of what is usual all through the
// record.
constexpr double kUsualShare = 0.7;
// A cell of two rows, their mean, scatters by 1/1.41 of one row; the median of three by 1/1.5.
constexpr double kOfTwo = 1.41;
constexpr double kOfThree = 1.5;
constexpr std::size_t kFewestBlocks = 4;
// One channel alone is held against its own quieter part: this share of its blocks.
constexpr double kQuietBlocks = 0.25;
// Where the quiet part ends: a reading of it may lie somewhat further off than its deviation says.
constexpr double kQuietTimes = 1.5;
constexpr double kQuietShare = 0.08;
constexpr double kWildest = 8.0;  // a wild reading among quiet ones counts as four deviations
// Rows before one that tell where a quiet channel stands, and by how many deviations it may be away from
// there.
constexpr std::size_t kQuietRows = 8;
constexpr double kDrift = 3.0;
// Quiet blocks within a noisy time that do not end it.
constexpr std::size_t kForgiven = 2;

/// Index at which the scatter changes from `before` to `after`: the likeliest under normal noise.
std::size_t likeliest_change(const std::vector<double>& residuals, double before_k, double after_k) {
  const auto cost = [](double residual, double deviation) {
    return std::min(residual * residual / (2.0 * deviation * deviation), kWildest) + std::log(deviation);
  };
  double sum = 0.0;
  for (const double residual : residuals) sum += cost(residual, after_k);
  double best = sum;
  std::size_t at = 0;
  for (std::size_t i = 0; i < residuals.size(); ++i) {
    sum += cost(residuals[i], before_k) - cost(residuals[i], after_k);
    if (sum < best) {
      best = sum;
      at = i + 1;
    }
  }
  return at;
}

/// Each row against the middle of its neighbours, of itself and apart from the others, the smaller; of a
/// row's own deviation.
std::vector<double> residuals_of(const RowsNear& rows, double interval_s) {
  const auto bend = [](const std::vector<double>& values, std::size_t i) {
    return std::abs(values[i] - 0.5 * (values[i - 1] + values[i + 1])) / std::sqrt(1.5);
  };
  std::vector<double> residuals(rows.size(), 0.0);
  for (std::size_t i = 1; i + 1 < rows.size(); ++i) {
    if (rows.times_s[i + 1] - rows.times_s[i - 1] > 4.0 * interval_s)
      continue;  // beside a gap nothing can be told
    residuals[i] = bend(rows.celsius, i);
    if (!rows.apart_k.empty()) residuals[i] = std::min(residuals[i], bend(rows.apart_k, i));
  }
  return residuals;
}

/// The time within [from_s, to_s] at which noise begins (or, backwards, ends).
double change_s(const ExaminedChannel& examined, double from_s, double to_s, double quiet_k, double noisy_k,
                bool begins) {
  const RowsNear rows = rows_near(examined, from_s, to_s);
  if (rows.size() < 4) return begins ? from_s : to_s;
  std::vector<double> residuals = residuals_of(rows, examined.record->interval_s);
  if (!begins) std::reverse(residuals.begin(), residuals.end());
  if (!rows.apart_k.empty()) {
    // A reading between two that happen to be as far off does not bend, but is not where the quiet ones were.
    std::vector<double> apart = rows.apart_k;
    if (!begins) std::reverse(apart.begin(), apart.end());
    for (std::size_t i = 0; i < residuals.size(); ++i) {
      const std::size_t first = i >= kQuietRows ? i - kQuietRows : 0;
      const auto from = apart.begin() + static_cast<std::ptrdiff_t>(first);
      const double quiet =
          median_of({from, from + static_cast<std::ptrdiff_t>(std::min(kQuietRows, apart.size()))});
      const double leap = i > 0 ? std::abs(apart[i] - apart[i - 1]) : 0.0;  // what drifts does not leap
      residuals[i] = std::max(residuals[i], std::min(std::abs(apart[i] - quiet), leap) - kDrift * quiet_k);
    }
  }
  const std::size_t at = std::min(likeliest_change(residuals, quiet_k, noisy_k), rows.size() - 1);
  return rows.times_s[begins ? at : rows.size() - 1 - at];
}

/// By how much more a row scatters than a cell.
double row_by_cell(const ExaminedChannel& examined) {
  const double rows = static_cast<double>(examined.record->end_row - examined.record->first_row) /
                      static_cast<double>(examined.cells());
  if (rows < 2.0) return 1.0 + (kOfTwo - 1.0) * (rows - 1.0);
  return std::min(kOfTwo + (kOfThree - kOfTwo) * (rows - 2.0), kOfThree);
}

/// The bend of each cell between its neighbours, of itself and apart from the others, the smaller: neither
/// their common movement nor the others' noise is its. kNotKnown where one of the three is not known.
std::vector<double> bends_of(const ExaminedChannel& examined) {
  const std::size_t cells = examined.cells();
  const SampledTrace& trace = examined.sampled->traces[examined.trace];
  const double* const own_c = trace.celsius.data();
  const double* const others_c = examined.others_c.data();
  const char* const known = trace.known.data();
  const char* const others_known = examined.others_known.data();
  std::vector<double> bends(cells, kNotKnown);
  for (std::size_t k = 1; k + 1 < cells; ++k) {
    const double own = std::abs(own_c[k - 1] - 2.0 * own_c[k] + own_c[k + 1]);
    const double apart = std::abs((own_c[k - 1] - others_c[k - 1]) - 2.0 * (own_c[k] - others_c[k]) +
                                  (own_c[k + 1] - others_c[k + 1]));
    const bool beside = (others_known[k - 1] != 0) & (others_known[k] != 0) & (others_known[k + 1] != 0);
    const bool all = (known[k - 1] != 0) & (known[k] != 0) & (known[k + 1] != 0);
    const double bend = beside && apart < own ? apart : own;
    bends[k] = all ? bend : kNotKnown;
  }
  return bends;
}

/// Smallest first, by comparisons that no branch depends on: Batcher's merge exchange of eight (Knuth, TAOCP
/// vol. 3, 5.2.2).
void sort_block(std::array<double, kBlock>& block) {
  static_assert(kBlock == 8);
  using Pair = std::pair<std::size_t, std::size_t>;
  constexpr std::array<Pair, 19> kExchanges = {Pair{0, 4}, Pair{1, 5}, Pair{2, 6}, Pair{3, 7}, Pair{0, 2},
                                               Pair{1, 3}, Pair{4, 6}, Pair{5, 7}, Pair{2, 4}, Pair{3, 5},
                                               Pair{0, 1}, Pair{2, 3}, Pair{4, 5}, Pair{6, 7}, Pair{1, 4},
                                               Pair{3, 6}, Pair{1, 2}, Pair{3, 4}, Pair{5, 6}};
  for (const auto& [a, b] : kExchanges) {
    const double low = std::min(block[a], block[b]);
    block[b] = std::max(block[a], block[b]);
    block[a] = low;
  }
}

double middle_of_known(const Scatter& scatter) {
  std::vector<double> known;
  for (const double figure : scatter)
    if (figure >= 0.0) known.push_back(figure);
  return median_of(std::move(known));
}

}  // namespace

Scatter scatter_of(const ExaminedChannel& examined) {
  const std::vector<double> bends = bends_of(examined);
  Scatter scatter;
  scatter.reserve(bends.size() / kBlock + 1);
  for (std::size_t first = 0; first < bends.size(); first += kBlock) {
    std::array<double, kBlock> block{};
    block.fill(kNotKnown);
    std::copy_n(bends.begin() + static_cast<std::ptrdiff_t>(first), std::min(kBlock, bends.size() - first),
                block.begin());
    const auto count = static_cast<std::size_t>(
        std::count_if(block.begin(), block.end(), [](double bend) { return bend < kNotKnown; }));
    if (count < kBlock / 2) {
      scatter.push_back(-1.0);
      continue;
    }
    sort_block(block);
    const auto at = static_cast<std::size_t>(kQuantile * static_cast<double>(count));
    scatter.push_back(block[at] / (kDeviations * std::sqrt(6.0)));
  }
  return scatter;
}

Scatter usual_scatter(const std::vector<Scatter>& evaluated) {
  Scatter usual;
  if (evaluated.empty()) return usual;
  if (evaluated.size() == 1) {
    std::vector<double> known;
    for (const double figure : evaluated.front())
      if (figure >= 0.0) known.push_back(figure);
    std::sort(known.begin(), known.end());
    const auto at = static_cast<std::size_t>(kQuietBlocks * static_cast<double>(known.size()));
    return Scatter(evaluated.front().size(), known.empty() ? -1.0 : known[at]);
  }
  for (std::size_t b = 0; b < evaluated.front().size(); ++b) {
    std::vector<double> known;
    for (const Scatter& scatter : evaluated)
      if (scatter[b] >= 0.0) known.push_back(scatter[b]);
    std::sort(known.begin(), known.end());
    // The lower middle: of two channels the quieter one is the measure.
    usual.push_back(known.empty() ? -1.0 : known[(known.size() - 1) / 2]);
  }
  return usual;
}

std::vector<Suspect> find_noisy(const ExaminedChannel& examined, const Scatter& own, const Scatter& usual) {
  std::vector<Suspect> found;
  const double row = row_by_cell(examined);
  const double least = std::max(kLeastRowK, kLeastRowDigits * examined.digit_k) / row;
  const double floor = std::max(examined.digit_k / std::sqrt(12.0), kUsualShare * middle_of_known(usual));
  const auto scatters = [&](std::size_t b, double share) {
    return own[b] >= 0.0 && usual[b] >= 0.0 &&
           own[b] >= share * std::max(least, kTimes * std::max(usual[b], floor));
  };
  const auto noisy = [&](std::size_t b) { return scatters(b, kBlockShare); };
  const auto unsure = [&](std::size_t b) { return scatters(b, kUnsureShare); };
  for (std::size_t b = 0; b < own.size(); ++b) {
    if (!noisy(b)) continue;
    std::size_t last = b;
    std::size_t reach = b;
    std::vector<double> figures = {own[b]};
    std::vector<double> beside = {usual[b]};
    for (std::size_t next = b + 1; next < own.size() && next <= reach + 1 + kForgiven; ++next) {
      if (unsure(next)) reach = next;
      if (!noisy(next)) continue;
      last = next;
      figures.push_back(own[next]);
      beside.push_back(usual[next]);
    }
    const std::size_t first = b;
    b = last;
    if (figures.size() < kFewestBlocks) continue;
    const double noisy_k = median_of(figures);
    const double others_k = std::max(median_of(beside), floor);
    if (noisy_k < std::max(least, kTimes * others_k)) continue;
    if (!is_noise(examined, first * kBlock, (last + 1) * kBlock, kBlock, noisy_k)) continue;
    std::size_t begin = first;
    while (begin > 0 && first - begin < kMostUnsure && unsure(begin - 1)) --begin;
    std::vector<double> quiet;
    for (std::size_t i = 0; i < own.size(); ++i)
      if ((i + 1 < first || i > last + 1) && own[i] >= 0.0 && !noisy(i)) quiet.push_back(own[i]);
    const double quiet_k =
        std::max(quiet.empty() ? noisy_k / kTimes : median_of(quiet), examined.digit_k / std::sqrt(12.0));
    const double quiet_row_k = row * std::max(kQuietTimes * quiet_k, kQuietShare * noisy_k);
    const auto cell = [&](std::size_t block) { return std::min(block * kBlock, examined.cells() - 1); };
    Suspect suspect;
    suspect.channel = examined.index();
    suspect.code = Suspect::Code::noisy;
    // Wide enough for a block at either end that is only half noisy, or noisy by chance.
    const std::size_t before = begin >= 2 ? begin - 2 : 0;
    const std::size_t inside = std::min(first + 5, last + 1);
    const std::size_t late_inside = last >= first + 4 ? last - 4 : first;
    suspect.from_s = begin == 0 ? examined.sampled->begin_s
                                : change_s(examined, examined.time_s(cell(before)),
                                           examined.time_s(cell(inside)), quiet_row_k, row * noisy_k, true);
    const bool to_end = std::all_of(own.begin() + static_cast<std::ptrdiff_t>(last) + 1, own.end(),
                                    [](double figure) { return figure < 0.0; });
    suspect.to_s = to_end ? examined.sampled->end_s
                          : change_s(examined, examined.time_s(cell(late_inside)),
                                     examined.time_s(cell(last + 3)), quiet_row_k, row * noisy_k, false);
    if (suspect.to_s <= suspect.from_s) {  // too short a time to say where within its cells
      suspect.from_s = examined.time_s(cell(first));
      suspect.to_s = examined.time_s(cell(last + 1));
    }
    suspect.evidence = {.kind = SuspectEvidence::Kind::scatter, .change_k = noisy_k, .others_k = others_k};
    found.push_back(std::move(suspect));
  }
  return found;
}

}  // namespace soakwright
