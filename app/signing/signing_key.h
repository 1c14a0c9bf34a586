// SPDX-License-Identifier: GPL-3.0-or-later
// The signer's key and certificate: PEM, or PKCS#12 (RFC 7292), opened with a password where they need one.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/signing/crypto_types.h"
#include "core/problems/problem.h"
#include "core/report/signing_border.h"

namespace soakwright::signing {

struct SigningKey {
  OwnedKey key;
  OwnedCertificate certificate;
  std::vector<OwnedCertificate> chain;  ///< what else the files hold: the certificate's issuers
};

/// Refused, with the file: a wrong or a missing password, a certificate that is not the key's, one that is
/// not valid at `now_s` (Unix time), one that must not sign.
Result<SigningKey> read_signing_key(const SignOrder& order, std::int64_t now_s);

/// Of a key, a certificate, a time stamp; refused where it is larger than any of them.
Result<std::string> read_small_file(const std::string& path);

/// All certificates of a PEM file; refused where there is none.
Result<std::vector<OwnedCertificate>> read_certificates(const std::string& path);

}  // namespace soakwright::signing
