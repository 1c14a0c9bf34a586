// SPDX-License-Identifier: GPL-3.0-or-later
// What in a CMS signature no signature covers: the frame around certificate, signed attributes and value.
#pragma once

#include <string_view>

namespace soakwright::signing {

/// True if the frame (RFC 5652, 5.1 and 5.3) holds what `soakwright sign` writes there and nothing else: one
/// signer, SHA-256, no unsigned attributes, no revocation lists, no bytes left over. So no byte of it can be
/// changed in silence.
bool plain_frame(std::string_view der);

}  // namespace soakwright::signing
