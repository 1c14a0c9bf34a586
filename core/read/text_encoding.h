// SPDX-License-Identifier: GPL-3.0-or-later
// Which encoding a log's bytes are in, and the same text as UTF-8.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/read/reading_settings.h"

namespace soakwright {

struct DetectedEncoding {
  TextEncoding encoding = TextEncoding::utf_8;
  std::size_t mark_bytes = 0;  ///< byte order mark
};

/// From the beginning of the file; nullopt if it is not text.
std::optional<DetectedEncoding> detect_encoding(std::string_view head);
/// The byte order mark that `head` begins with.
std::optional<DetectedEncoding> byte_order_mark(std::string_view head);

/// Where the first byte stands that is not part of UTF-8; npos: nowhere.
std::size_t first_not_utf8(std::string_view text);
bool is_valid_utf8(std::string_view text);
/// Text of an 8-bit encoding as UTF-8; text that claims to be UTF-8 and is not is read as Windows-1252.
std::string to_utf8(std::string_view text);
/// Appends whole UTF-16 units as UTF-8; a half of a pair alone becomes U+FFFD. `high` carries a first half
/// over to the next call (0: none).
void append_utf16(std::string_view bytes, bool big_endian, unsigned& high, std::string& out);

}  // namespace soakwright
