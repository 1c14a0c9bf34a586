// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/its90_reference.h"

#include <algorithm>
#include <cmath>

#include "core/record/its90_coefficients.h"

namespace soakwright {
namespace {

// Below this E(t) of type B falls and rises again: one emf has two temperatures.
constexpr double kTypeBSingleFrom = 42.2;
constexpr double kCloseEnough = 1e-6;
constexpr int kMostSteps = 100;

// The exponential term of type K above 0 C: a0 exp(a1 (t - a2)^2), in mV.
constexpr double kTypeKa0 = 0.1185976;
constexpr double kTypeKa1 = -1.183432e-4;
constexpr double kTypeKa2 = 126.9686;

const its90::Piece* piece_for(char letter, double celsius) {
  for (const its90::Piece& piece : its90::kPieces)
    if (piece.type == letter && celsius >= piece.from_c && celsius <= piece.to_c) return &piece;
  return nullptr;
}

bool has_exponential(const its90::Piece& piece) { return piece.type == 'K' && piece.from_c >= 0.0; }

double value_of(const its90::Piece& piece, double t) {
  double sum = 0.0;
  for (std::size_t n = piece.terms; n-- > 0;) sum = sum * t + piece.a[n];
  if (has_exponential(piece)) sum += kTypeKa0 * std::exp(kTypeKa1 * (t - kTypeKa2) * (t - kTypeKa2));
  return sum;
}

double slope_of(const its90::Piece& piece, double t) {
  double sum = 0.0;
  for (std::size_t n = piece.terms; n-- > 1;) sum = sum * t + static_cast<double>(n) * piece.a[n];
  if (has_exponential(piece))
    sum += 2.0 * kTypeKa0 * kTypeKa1 * (t - kTypeKa2) * std::exp(kTypeKa1 * (t - kTypeKa2) * (t - kTypeKa2));
  return sum;
}

}  // namespace

char letter_of(ThermocoupleType type) {
  switch (type) {
    case ThermocoupleType::K:
      return 'K';
    case ThermocoupleType::J:
      return 'J';
    case ThermocoupleType::N:
      return 'N';
    case ThermocoupleType::E:
      return 'E';
    case ThermocoupleType::T:
      return 'T';
    case ThermocoupleType::R:
      return 'R';
    case ThermocoupleType::S:
      return 'S';
    case ThermocoupleType::B:
      return 'B';
  }
  return '?';
}

EmfRange emf_range(ThermocoupleType type) {
  EmfRange range{1e9, -1e9};
  for (const its90::Piece& piece : its90::kPieces)
    if (piece.type == letter_of(type)) {
      range.from_c = std::min(range.from_c, piece.from_c);
      range.to_c = std::max(range.to_c, piece.to_c);
    }
  if (type == ThermocoupleType::B) range.from_c = kTypeBSingleFrom;
  return range;
}

std::optional<double> emf_mv(ThermocoupleType type, double celsius) {
  const its90::Piece* const piece = piece_for(letter_of(type), celsius);
  if (piece == nullptr) return std::nullopt;
  return value_of(*piece, celsius);
}

double emf_slope_mv_per_k(ThermocoupleType type, double celsius) {
  const its90::Piece* const piece = piece_for(letter_of(type), celsius);
  return piece == nullptr ? 0.0 : slope_of(*piece, celsius);
}

std::optional<double> celsius_of_emf(ThermocoupleType type, double mv, double near_c) {
  const char letter = letter_of(type);
  EmfRange bracket = emf_range(type);
  const double lowest = *emf_mv(type, bracket.from_c);
  const double highest = *emf_mv(type, bracket.to_c);
  if (!(mv >= lowest && mv <= highest)) return std::nullopt;
  // Newton's steps inside a bracket that only shrinks; where a step leaves it, the bracket is halved.
  double t = std::clamp(near_c, bracket.from_c, bracket.to_c);
  for (int i = 0; i < kMostSteps; ++i) {
    const its90::Piece* const piece = piece_for(letter, t);
    if (piece == nullptr) return std::nullopt;
    const double excess = value_of(*piece, t) - mv;
    (excess > 0.0 ? bracket.to_c : bracket.from_c) = t;
    const double slope = slope_of(*piece, t);
    double next = t - excess / slope;
    if (!(next > bracket.from_c && next < bracket.to_c)) next = (bracket.from_c + bracket.to_c) / 2.0;
    if (std::fabs(next - t) < kCloseEnough) return next;
    t = next;
  }
  return t;
}

}  // namespace soakwright
