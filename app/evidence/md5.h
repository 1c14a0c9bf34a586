// SPDX-License-Identifier: GPL-3.0-or-later
// The checksum that PDF prescribes for attached files and file identifiers (RFC 1321, by nettle). It finds
// accidents, not forgeries.
#pragma once

#include <string>
#include <string_view>

namespace soakwright::evidence {

/// 16 bytes.
std::string md5_of(std::string_view bytes);

}  // namespace soakwright::evidence
