// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/measure/traces/trace_source.h"

#include <algorithm>

#include "core/measure/holds/merged_spans.h"

namespace soakwright {
namespace {

void sum_up_blocks(TraceSource& source) {
  const std::size_t blocks = source.c.size() / TraceSource::kBlock;
  source.block_low.resize(blocks);
  source.block_high.resize(blocks);
  source.block_sum.resize(blocks);
  for (std::size_t b = 0; b < blocks; ++b) {
    const double* c = source.c.data() + b * TraceSource::kBlock;
    // Four at a time, so that one comparison need not wait for the last.
    double low[4] = {c[0], c[1], c[2], c[3]};
    double high[4] = {c[0], c[1], c[2], c[3]};
    double sum[4] = {c[0], c[1], c[2], c[3]};
    for (std::size_t i = 4; i < TraceSource::kBlock; i += 4)
      for (std::size_t k = 0; k < 4; ++k) {
        low[k] = std::min(low[k], c[i + k]);
        high[k] = std::max(high[k], c[i + k]);
        sum[k] += c[i + k];
      }
    source.block_low[b] = std::min({low[0], low[1], low[2], low[3]});
    source.block_high[b] = std::max({high[0], high[1], high[2], high[3]});
    source.block_sum[b] = (sum[0] + sum[1]) + (sum[2] + sum[3]);
  }
}

/// Leaves out the readings that are no measurement.
void drop_unmeasured(const Record& record, TraceSource& source, const std::vector<Span>& unmeasured) {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < source.rows.size(); ++i) {
    if (any_at(unmeasured, record.times_s[source.rows[i]])) continue;
    source.rows[kept] = source.rows[i];
    source.own_c[kept] = source.own_c[i];
    ++kept;
  }
  source.rows.resize(kept);
  source.own_c.resize(kept);
}

TraceSource load_samples(const Record& record, std::size_t channel, double* room,
                         const std::vector<Span>& unmeasured) {
  TraceSource source;
  source.channel = channel;
  source.first_row = record.first_row;
  const Readings& readings = record.channels[channel].readings;
  const std::size_t rows = record.end_row - record.first_row;
  if (room != nullptr) {
    readings.fill_celsius(record.first_row, record.end_row, room);
    source.c = {room, rows};
    source.t = record.evaluated_times_s();
    return source;
  }
  source.own_c.reserve(rows);
  readings.collect(record.first_row, record.end_row, source.rows, source.own_c);
  drop_unmeasured(record, source, unmeasured);
  source.c = source.own_c;
  if (source.c.size() == rows) {
    source.rows = {};
    source.t = record.evaluated_times_s();
    return source;
  }
  source.own_t.reserve(source.rows.size());
  for (const std::uint32_t row : source.rows) source.own_t.push_back(record.times_s[row]);
  source.t = source.own_t;
  return source;
}

}  // namespace

TraceSource load_source(const Record& record, std::size_t channel, double* room,
                        const std::vector<Span>& unmeasured) {
  TraceSource source = load_samples(record, channel, room, unmeasured);
  sum_up_blocks(source);
  return source;
}

}  // namespace soakwright
