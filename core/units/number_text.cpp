// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/number_text.h"

#include <charconv>
#include <cmath>
#include <system_error>

namespace soakwright {
namespace {

/// The longest number at the front of `text`, and what stands behind it.
std::optional<NumberAndUnit> number_in_front(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) {
    text.remove_prefix(1);
    if (text.starts_with('-')) return std::nullopt;
  }
  double value = 0.0;
  const char* const end = text.data() + text.size();
  const auto [behind, error] = std::from_chars(text.data(), end, value);
  if (error != std::errc{} || !std::isfinite(value)) return std::nullopt;
  return NumberAndUnit{value, trimmed({behind, static_cast<std::size_t>(end - behind)})};
}

}  // namespace

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kSpaces = " \t";
  const std::size_t from = text.find_first_not_of(kSpaces);
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(kSpaces) - from + 1);
}

std::optional<double> parse_number(std::string_view text) {
  const auto found = number_in_front(text);
  if (!found || !found->unit.empty()) return std::nullopt;
  return found->number;
}

std::optional<NumberAndUnit> split_number_and_unit(std::string_view text) {
  const auto found = number_in_front(text);
  if (!found || found->unit.empty()) return std::nullopt;
  return found;
}

std::string number_text(double value) {
  char text[32];
  const auto [end, error] = std::to_chars(text, text + sizeof text, value);
  return error == std::errc{} ? std::string(text, end) : std::string();
}

std::string fixed_text(double value, int decimals) {
  // 309 digits before the point for the largest double; more places than 20 say nothing.
  char text[352];
  const auto [end, error] =
      std::to_chars(text, text + sizeof text, value, std::chars_format::fixed, decimals > 20 ? 20 : decimals);
  if (error != std::errc{}) return {};
  std::string out(text, end);
  if (out.starts_with('-') && out.find_first_of("123456789") == std::string::npos && std::isfinite(value))
    out.erase(0, 1);
  return out;
}

}  // namespace soakwright
