// SPDX-License-Identifier: GPL-3.0-or-later
// A certificate authority for one test, and the people whom it gives certificates. Made by OpenSSL, in
// memory.
#pragma once

#include <string>

#include "app/signing/crypto_types.h"

struct Issue {
  enum class Key { rsa, p256, rsa_1024 };
  std::string name = "T. Lindqvist";
  Key key = Key::p256;
  long valid_from_s = -86'400;  ///< from now
  long valid_to_s = 86'400;
  const char* usage = "digitalSignature,nonRepudiation";
  const char* extended_usage = nullptr;
};

struct Identity {
  std::string key_pem, certificate_pem;
  std::string key_pem_with_password;  ///< "open sesame"
  std::string pkcs12_with_password;   ///< the same
};

class TestAuthority {
 public:
  explicit TestAuthority(const std::string& name = "Brackwater Test Authority");
  [[nodiscard]] Identity issue(const Issue& issue) const;
  [[nodiscard]] const std::string& certificate_pem() const { return pem_; }

 private:
  soakwright::signing::OwnedKey key_;
  soakwright::signing::OwnedCertificate certificate_;
  std::string pem_;
};
