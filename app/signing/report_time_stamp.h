// SPDX-License-Identifier: GPL-3.0-or-later
// Time stamps of a report by a third party (RFC 3161), in a file beside it: the reply of a time-stamping
// authority, or the token alone, over the report or over an earlier state of it.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "app/signing/crypto_types.h"

namespace soakwright::signing {

struct CheckedStamp {
  std::string broken;     ///< why it is no time stamp of any of the states; empty where it is one
  std::size_t state = 0;  ///< of those given: the first that it covers
  std::string authority;  ///< common name of its certificate
  std::int64_t at_s = 0;  ///< Unix time
  std::string untrusted;  ///< why no chain leads to a trusted certificate; only where some are given
};

/// `states`: the bytes of which it may be. `trusted` may be empty; then the authority's own certificate must
/// be in the stamp.
CheckedStamp check_time_stamp(const std::string& der, const std::vector<std::string_view>& states,
                              const std::vector<OwnedCertificate>& trusted);

}  // namespace soakwright::signing
