// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/limit_readers.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "core/units/duration_text.h"
#include "core/units/number_text.h"
#include "core/units/quantity_text.h"

namespace soakwright {
namespace {

/// Reads the table that `found` is with `read(TableReader&, T&)`; nullopt if any of it was wrong.
template <typename T, typename Read>
std::optional<T> inner_table(const FoundValue& found, const TomlTable& table, const Read& read) {
  const std::size_t before = found.complaints.count();
  TableReader in{table, found.value.line, fmt::format("`{}`", found.name), found.complaints};
  T value;
  read(in, value);
  in.finish();
  if (found.complaints.count() != before) return std::nullopt;
  return value;
}

std::optional<TimeRule::Slope> slope(const FoundValue& found) {
  constexpr std::string_view kPer = " per ";
  const auto* const written = found.value.as<std::string>();
  const std::size_t at = written ? written->find(kPer) : std::string::npos;
  if (at == std::string::npos) return found.refuse(value_problems::not_a_time_per_thickness(found));
  const auto seconds = parse_duration(std::string_view{*written}.substr(0, at));
  const std::string_view behind = trimmed(std::string_view{*written}.substr(at + kPer.size()));
  auto per = parse_thickness(behind);
  if (const auto unit = parse_length_unit(behind)) per = Thickness::of(1.0, *unit);
  if (!seconds || !per || !(per->millimetres() > 0.0))
    return found.refuse(value_problems::not_a_time_per_thickness(found));
  if (*seconds < 0.0) return found.refuse(value_problems::negative(found));
  return TimeRule::Slope{*seconds, *per};
}

using Points = std::vector<std::pair<Thickness, double>>;

std::optional<Points> points(const FoundValue& found) {
  const auto* const list = found.value.as<TomlArray>();
  if (!list || list->values.empty()) return found.refuse(value_problems::not_points_of_thickness(found));
  Points out;
  for (const TomlValue& item : list->values) {
    const std::string name = fmt::format("{}[{}]", found.name, out.size() + 1);
    const FoundValue point{item, name, found.complaints};
    const auto* const pair = item.as<TomlArray>();
    if (!pair || pair->values.size() != 2)
      return point.refuse(value_problems::not_points_of_thickness(point));
    const auto at = thickness({pair->values[0], name, found.complaints});
    const auto seconds = duration({pair->values[1], name, found.complaints});
    if (!at || !seconds) return std::nullopt;
    if (!out.empty() && !(out.back().first < *at))
      return point.refuse(value_problems::point_not_thicker(point));
    out.emplace_back(*at, *seconds);
  }
  return out;
}

}  // namespace

std::optional<RateLimit> RateLimitIn::operator()(const FoundValue& found) const {
  const RateIn rate{unit};
  const auto* const table = found.value.as<TomlTable>();
  if (!table) {
    const auto plain = rate(found);
    return plain ? std::optional<RateLimit>{*plain} : std::nullopt;
  }
  return inner_table<RateRule>(found, *table, [&rate](TableReader& in, RateRule& rule) {
    in.must("over", rate, rule.over);
    in.must("per", one_of<LengthUnit>({{"mm", LengthUnit::millimetre}, {"in", LengthUnit::inch}}), rule.per);
    in.may("at_least", rate, rule.at_least);
    in.may("at_most", rate, rule.at_most);
    in.must_not_fall("at_least", rule.at_least, "at_most", rule.at_most);
  });
}

std::optional<TimeLimit> time_limit(const FoundValue& found) {
  const auto* const table = found.value.as<TomlTable>();
  if (!table) {
    const auto plain = duration(found);
    return plain ? std::optional<TimeLimit>{*plain} : std::nullopt;
  }
  return inner_table<TimeRule>(found, *table, [](TableReader& in, TimeRule& rule) {
    in.must("points", points, rule.points);
    in.may("beyond", slope, rule.beyond);
    in.may("step", thickness, rule.step);
  });
}

std::optional<ExcursionAllowed> ExcursionAllowedIn::operator()(const FoundValue& found) const {
  const auto* const table = found.value.as<TomlTable>();
  if (!table) {
    const auto plain = duration(found);
    return plain ? std::optional<ExcursionAllowed>{ExcursionAllowed{*plain, std::nullopt}} : std::nullopt;
  }
  return inner_table<ExcursionAllowed>(found, *table,
                                       [this](TableReader& in, ExcursionAllowed& excursion_allowed) {
                                         in.must("time", duration, excursion_allowed.time_s);
                                         in.may("depth", DifferenceIn{unit}, excursion_allowed.depth);
                                       });
}

}  // namespace soakwright
