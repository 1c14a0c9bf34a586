// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/spare_take_over.h"

#include <algorithm>

namespace soakwright {
namespace {

/// Cuts what lies before `from` off a piece; its first sample then lies behind the cut.
void cut_before(const TraceSource& source, Piece& piece, double from) {
  if (from <= piece.from) return;
  piece.from = from;
  while (piece.first < piece.end && source.t[piece.first] <= from + kWindowSlack_s) ++piece.first;
  while (piece.lead + 1 < piece.trail && source.t[piece.lead + 1] <= from) ++piece.lead;
}

/// Cuts what lies after `to` off a piece; a reading at the cut stays.
void cut_after(const TraceSource& source, Piece& piece, double to) {
  if (to >= piece.to) return;
  piece.to = to;
  while (piece.end > piece.first && source.t[piece.end - 1] > to + kWindowSlack_s) --piece.end;
  while (piece.trail > piece.lead + 1 && source.t[piece.trail - 2] >= to) --piece.trail;
}

/// From when a spare serves: the last reading before the first time unknown for longer than
/// `interpolate_max_s` (the record's start where there is none), or the start of the first excluded time, if
/// that is earlier.
std::optional<double> take_over_moment(const Record& record, const Trace& main, double interpolate_max_s) {
  std::optional<double> at;
  for (const Span& unknown : unknown_spans(main, record.begin_s(), record.end_s())) {
    if (unknown.second - unknown.first <= interpolate_max_s + kWindowSlack_s) continue;
    at = record.begin_s();
    for (const Piece& piece : main.pieces)
      if (piece.to <= unknown.first + kWindowSlack_s) at = piece.to;
    break;
  }
  if (!main.exclusions.empty()) at = std::min(at.value_or(record.end_s()), main.exclusions.front().first);
  if (at && *at >= record.end_s() - kWindowSlack_s) return std::nullopt;
  return at;
}

/// Behind its take-over a spare's readings are its channel's.
void end_at(Trace& spare, double at) {
  std::erase_if(spare.pieces, [&](const Piece& piece) { return piece.from > at + kWindowSlack_s; });
  if (!spare.pieces.empty()) cut_after(spare.sources.front(), spare.pieces.back(), at);
}

}  // namespace

std::optional<TakeOver> take_over(const Record& record, Trace& main, Trace& spare, double interpolate_max_s) {
  const auto moment = take_over_moment(record, main, interpolate_max_s);
  if (!moment) return std::nullopt;
  const double at = *moment;
  TakeOver change{main.channel, spare.channel, at, std::nullopt};
  const std::optional<double> main_there = temperature_at(main, at);
  const std::optional<double> spare_there = temperature_at(spare, at);
  if (main_there && spare_there) change.step_k = *spare_there - *main_there;

  std::erase_if(main.pieces, [&](const Piece& piece) { return piece.to > at + kWindowSlack_s; });
  const bool served = !main.pieces.empty();
  main.sources.push_back(spare.sources.front());
  const TraceSource& source = main.sources.back();
  for (Piece piece : spare.pieces) {
    if (piece.to < at || (main_there && piece.to <= at)) continue;
    piece.source = main.sources.size() - 1;
    cut_before(source, piece, at);
    // The reading at that instant is the main one's.
    if (main_there && source.t[piece.first] <= at + kWindowSlack_s) ++piece.first;
    main.pieces.push_back(piece);
  }
  main.exclusions.clear();  // none begins before the take-over
  for (Span exclusion : spare.exclusions)
    if (exclusion.second > at) main.exclusions.emplace_back(std::max(exclusion.first, at), exclusion.second);
  if (!served) main.excluded_from_start = spare.excluded_from_start;
  main.excluded_to_end = spare.excluded_to_end;
  main.take_over_s = at;
  end_at(spare, at);
  return change;
}

}  // namespace soakwright
