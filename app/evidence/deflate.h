// SPDX-License-Identifier: GPL-3.0-or-later
// Streams in and out of the Flate filter (RFC 1950): in by libdeflate, whose time a report is made in; out by
// zlib, which stops at a given size.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/system/watch.h"

namespace soakwright::evidence {

std::string deflated(std::string_view bytes);

/// Returns nullopt if the bytes are no whole Flate stream, hold more than `most` bytes, or `watch` is
/// cancelled.
std::optional<std::string> inflated(std::string_view stored, std::size_t most, const Watch& watch = {});

/// Other versions, of another text, may compress the same bytes otherwise.
std::string deflate_version();

}  // namespace soakwright::evidence
