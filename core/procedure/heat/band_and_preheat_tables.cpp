// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/band_and_preheat_tables.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/procedure/heat/preheat_problems.h"
#include "core/procedure/job/job_words.h"
#include "core/procedure/toml/value_readers.h"

namespace soakwright {
namespace {

/// Per cent by mass.
struct PercentOf {
  Element element;
  std::optional<double> operator()(const FoundValue& found) const {
    const auto value = number(found);
    if (!value) return std::nullopt;
    if (*value < 0.0) return found.refuse(value_problems::negative(found));
    if (*value <= most_plausible_percent(element)) return value;
    return found.refuse(
        preheat_problems::too_much_of_an_element(found.name, *value, most_plausible_percent(element)));
  }
};

void read_composition(TableReader& in, Composition& composition) {
  composition.line = in.line();
  double sum = 0.0;
  for (std::size_t i = 0; i < kElements; ++i) {
    const auto element = static_cast<Element>(i);
    double percent = 0.0;
    if (!in.may(kElementWords.of(element), PercentOf{element}, percent)) continue;
    composition.percent[i] = percent;
    sum += percent;
  }
  constexpr double kWhole = 100.0, kSlack = 1e-9;
  if (sum > kWhole + kSlack) in.complain(in.line(), preheat_problems::over_a_whole(sum));
  const bool any = std::any_of(composition.percent.begin(), composition.percent.end(),
                               [](const auto& one) { return one.has_value(); });
  const bool tried = std::any_of(kElementWords.words.begin(), kElementWords.words.end(),
                                 [&](std::string_view word) { return in.entry(word) != nullptr; });
  if (!any && !tried) in.complain(in.line(), preheat_problems::empty_composition());
}

void read_band(TableReader& in, BandEntry& band) {
  band.line = in.line();
  in.may("weld", name_text, band.weld);
  in.must("diameter", thickness, band.diameter);
  in.may("wall", thickness, band.wall);
  in.may("soak_band", thickness, band.soak_band);
  in.may("heated_band", thickness, band.heated_band);
  in.may("centre", place_m, band.centre_m);
  in.must_rise("soak_band", band.soak_band, "heated_band", band.heated_band);
  if (!in.entry("soak_band"))
    for (const char* key : {"heated_band", "centre"})
      if (in.entry(key)) in.complain(in.line_of(key), preheat_problems::needs_soak_band(key));
  if (band.wall && in.sound("diameter") && band.diameter.millimetres() <= 2.0 * band.wall->millimetres())
    in.complain(in.line_of("wall"), preheat_problems::wall_fills_the_pipe());
}

/// A table for all welds that each weld replaces by its own does nothing.
template <typename HasOwn>
void check_used(TableReader& in, const Job& job, const char* key, bool given, const HasOwn& has_own) {
  if (given && !job.welds.empty() && std::all_of(job.welds.begin(), job.welds.end(), has_own))
    in.complain(in.line_of(key), preheat_problems::used_by_no_weld(key));
}

}  // namespace

void read_preheat(TableReader& in, std::optional<Composition>& composition,
                  std::optional<PreheatTable>& minimum_preheat) {
  in.table("composition", TableName::Kind::composition, [&](TableReader& inner) {
    Composition read;
    read_composition(inner, read);
    composition = read;
  });
  in.may("minimum_preheat", one_of(kPreheatTableWords), minimum_preheat);
}

void read_bands(TableReader& in, Job& job) {
  in.each("band", "[[band]]", [&](TableReader& inner) { read_band(inner, job.bands.emplace_back()); });
}

void check_preheat_and_bands(TableReader& in, const Job& job) {
  check_used(in, job, "composition", job.composition.has_value(),
             [](const WeldEntry& weld) { return weld.composition.has_value(); });
  check_used(in, job, "minimum_preheat", job.minimum_preheat.has_value(),
             [](const WeldEntry& weld) { return weld.minimum_preheat.has_value(); });
  for (std::size_t i = 0; i < job.bands.size(); ++i) {
    const BandEntry& band = job.bands[i];
    std::vector<std::string> numbers;
    for (const WeldEntry& weld : job.welds) numbers.push_back(weld.number);
    if (job.weld) numbers.push_back(*job.weld);
    if (!band.weld && job.welds.size() > 1) in.complain(band.line, preheat_problems::band_of_which_weld());
    if (band.weld && std::find(numbers.begin(), numbers.end(), *band.weld) == numbers.end())
      in.complain(band.line, preheat_problems::band_of_no_weld(*band.weld, numbers));
    const auto same = std::find_if(job.bands.begin(), job.bands.begin() + static_cast<std::ptrdiff_t>(i),
                                   [&](const BandEntry& other) { return other.weld == band.weld; });
    if (same != job.bands.begin() + static_cast<std::ptrdiff_t>(i))
      in.complain(band.line, preheat_problems::two_bands(same->line));
  }
}

}  // namespace soakwright
