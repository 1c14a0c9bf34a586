// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/signing/test_authority.h"

#include <cstdint>
#include <functional>
#include <stdexcept>

#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/rsa.h>
#include <openssl/x509v3.h>

using namespace soakwright::signing;

namespace {

constexpr const char* kPassword = "open sesame";

void must(bool holds) {
  if (!holds) throw std::runtime_error("the test authority does not work");
}

OwnedKey new_key(Issue::Key kind) {
  OwnedKey key{kind == Issue::Key::p256  ? EVP_EC_gen("P-256")
               : kind == Issue::Key::rsa ? EVP_RSA_gen(2048)
                                         : EVP_RSA_gen(1024)};
  must(key != nullptr);
  return key;
}

std::string in_memory(const std::function<bool(BIO*)>& write) {
  const OwnedBio bio{BIO_new(BIO_s_mem())};
  must(bio && write(bio.get()));
  char* data = nullptr;
  const long size = BIO_get_mem_data(bio.get(), &data);
  return {data, static_cast<std::size_t>(size)};
}

std::string pem_of(X509* certificate) {
  return in_memory([certificate](BIO* bio) { return PEM_write_bio_X509(bio, certificate) == 1; });
}

void extend(X509* certificate, X509* issuer, int kind, const char* value) {
  X509V3_CTX context;
  X509V3_set_ctx(&context, issuer, certificate, nullptr, nullptr, 0);
  X509_EXTENSION* extension = X509V3_EXT_conf_nid(nullptr, &context, kind, value);
  must(extension != nullptr && X509_add_ext(certificate, extension, -1) == 1);
  X509_EXTENSION_free(extension);
}

OwnedCertificate bare_certificate(const std::string& name, EVP_PKEY* key, long from_s, long to_s) {
  OwnedCertificate certificate{X509_new()};
  std::uint32_t serial = 0;
  must(RAND_bytes(reinterpret_cast<unsigned char*>(&serial), sizeof serial) == 1);
  X509_set_version(certificate.get(), X509_VERSION_3);
  ASN1_INTEGER_set_uint64(X509_get_serialNumber(certificate.get()), serial);
  X509_gmtime_adj(X509_getm_notBefore(certificate.get()), from_s);
  X509_gmtime_adj(X509_getm_notAfter(certificate.get()), to_s);
  must(X509_set_pubkey(certificate.get(), key) == 1);
  must(X509_NAME_add_entry_by_txt(X509_get_subject_name(certificate.get()), "CN", MBSTRING_UTF8,
                                  reinterpret_cast<const unsigned char*>(name.c_str()), -1, -1, 0) == 1);
  return certificate;
}

}  // namespace

TestAuthority::TestAuthority(const std::string& name) : key_(new_key(Issue::Key::p256)) {
  certificate_ = bare_certificate(name, key_.get(), -1'000'000'000, 1'000'000'000);
  X509_set_issuer_name(certificate_.get(), X509_get_subject_name(certificate_.get()));
  extend(certificate_.get(), certificate_.get(), NID_basic_constraints, "critical,CA:TRUE");
  extend(certificate_.get(), certificate_.get(), NID_key_usage, "critical,keyCertSign,cRLSign");
  must(X509_sign(certificate_.get(), key_.get(), EVP_sha256()) > 0);
  pem_ = pem_of(certificate_.get());
}

Identity TestAuthority::issue(const Issue& issue) const {
  const OwnedKey key = new_key(issue.key);
  const OwnedCertificate certificate =
      bare_certificate(issue.name, key.get(), issue.valid_from_s, issue.valid_to_s);
  X509_set_issuer_name(certificate.get(), X509_get_subject_name(certificate_.get()));
  extend(certificate.get(), certificate_.get(), NID_key_usage, issue.usage);
  if (issue.extended_usage != nullptr)
    extend(certificate.get(), certificate_.get(), NID_ext_key_usage, issue.extended_usage);
  must(X509_sign(certificate.get(), key_.get(), EVP_sha256()) > 0);
  Identity identity;
  identity.certificate_pem = pem_of(certificate.get()) + pem_;
  identity.key_pem = in_memory([&key](BIO* bio) {
    return PEM_write_bio_PKCS8PrivateKey(bio, key.get(), nullptr, nullptr, 0, nullptr, nullptr) == 1;
  });
  identity.key_pem_with_password = in_memory([&key](BIO* bio) {
    return PEM_write_bio_PKCS8PrivateKey(bio, key.get(), EVP_aes_256_cbc(), kPassword, 11, nullptr,
                                         nullptr) == 1;
  });
  const OwnedPkcs12 pkcs12{
      PKCS12_create(kPassword, "signer", key.get(), certificate.get(), nullptr, 0, 0, 0, 0, 0)};
  must(pkcs12 != nullptr);
  identity.pkcs12_with_password =
      in_memory([&pkcs12](BIO* bio) { return i2d_PKCS12_bio(bio, pkcs12.get()) == 1; });
  return identity;
}
