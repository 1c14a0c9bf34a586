// SPDX-License-Identifier: GPL-3.0-or-later
// Detached signatures in CMS (RFC 5652) with the attribute signing-certificate-v2 (RFC 5035), as PDF's
// ETSI.CAdES.detached asks (ETSI EN 319 142-1).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/signing/crypto_types.h"
#include "app/signing/signing_key.h"

namespace soakwright::signing {

/// DER of a signature over `data` with SHA-256. Empty where OpenSSL cannot make it (openssl_reason()).
std::string cms_signature(const SigningKey& signing, const std::string& data);

/// What one signature's CMS says, and whether it holds.
struct CheckedCms {
  std::string broken;  ///< why it does not hold for the data; empty where it does
  std::string subject, issuer;
  std::string unfit;  ///< why the certificate must not sign; empty where it may
  std::string not_before, not_after;
  std::int64_t not_after_s = 0;  ///< Unix time
  bool valid_then = false;       ///< at the time that the signature states
  bool valid_now = false;
  std::string untrusted;  ///< why the chain does not lead to a trusted certificate; only where some are given
};

/// `der` must be one signature by one signer. `trusted` may be empty.
CheckedCms check_cms(const std::string& der, const std::string& data, std::int64_t signed_s,
                     std::int64_t now_s, const std::vector<OwnedCertificate>& trusted);

}  // namespace soakwright::signing
