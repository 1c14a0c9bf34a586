// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/sha256.h"

#include <catch2/catch.hpp>

using namespace soakwright;

TEST_CASE("SHA-256 gives the digests of its standard") {
  // FIPS 180-4 with the example values that NIST publishes for SHA-256.
  CHECK(sha256_hex("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(sha256_hex("") == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(sha256_hex("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq") ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

TEST_CASE("SHA-256 does not care in which pieces the bytes come") {
  // NIST: one million times the letter a.
  Sha256 sum;
  const std::string piece(617, 'a');
  std::size_t left = 1'000'000;
  for (; left > piece.size(); left -= piece.size()) sum.update(piece);
  sum.update(piece.data(), left);
  CHECK(sum.hex() == "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("after the digest a sum begins anew") {
  Sha256 sum;
  sum.update("Port Ellery");
  (void)sum.hex();
  sum.update("abc");
  CHECK(sum.hex() == sha256_hex("abc"));
}
