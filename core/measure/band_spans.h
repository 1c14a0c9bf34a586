// Where a trace lies below, in and above a band, crossings taken on its straight lines.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/measure/trace.h"

namespace soakwright {

enum class BandState : std::uint8_t { below, in, above };

struct BandSpan {
  double from = 0.0;
  double to = 0.0;
  BandState state = BandState::in;
  std::size_t piece = 0;  ///< index into Trace::pieces
};

/// Either edge may be infinite; a band upside down holds nothing.
struct Band {
  double low_c = 0.0;
  double high_c = 0.0;
};
/// A band for each leg of a trace; one alone is for all of them.
using LegBands = std::vector<Band>;
inline const Band& band_of_leg(const LegBands& bands, std::size_t leg) {
  return leg < bands.size() ? bands[leg] : bands.back();
}

/// The known time of `trace`, split at the edges of low…high (either may be infinite). At the edge is in.
/// Spans of one piece join end to end; one of no length is given only for a reading with no line on either
/// side.
std::vector<BandSpan> band_spans(const Trace& trace, double low_c, double high_c);
std::vector<BandSpan> band_spans(const Trace& trace, const LegBands& bands);

/// First time after `after` at which the trace, from below, reaches `level`.
std::optional<double> first_rise_through(const Trace& trace, double level_c, double after_s);
/// Last time before `before` at which the trace, from below, reaches `level`.
std::optional<double> last_rise_through(const Trace& trace, double level_c, double before_s);
/// First time at or after `after` at which the trace falls below `level`.
std::optional<double> first_fall_through(const Trace& trace, double level_c, double after_s);
/// Last time at or before `before` at which the trace falls below `level`.
std::optional<double> last_fall_through(const Trace& trace, double level_c, double before_s);

}  // namespace soakwright
