// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/crypto_types.h"

#include <ctime>
#include <new>

#include <openssl/err.h>
#include <openssl/objects.h>
#include <openssl/pem.h>
#include <openssl/x509v3.h>

#include "app/evidence/pdf_date.h"

namespace soakwright::signing {
namespace {

/// Of NIST SP 800-57 part 1: RSA with 2048 bits, P-224.
constexpr int kLeastSecurityBits = 112;

std::string text_of(const ASN1_STRING* string) {
  unsigned char* utf8 = nullptr;
  const int size = ASN1_STRING_to_UTF8(&utf8, string);
  if (size < 0) return {};
  std::string text(reinterpret_cast<const char*>(utf8), static_cast<std::size_t>(size));
  OPENSSL_free(utf8);
  return text;
}

}  // namespace

CertificateStack stack_of(const std::vector<OwnedCertificate>& certificates) {
  CertificateStack stack{sk_X509_new_null()};
  if (!stack) throw std::bad_alloc();
  for (const OwnedCertificate& one : certificates)
    if (sk_X509_push(stack.get(), one.get()) == 0) throw std::bad_alloc();
  return stack;
}

OwnedBio reader_of(const std::string& bytes) {
  OwnedBio bio{BIO_new_mem_buf(bytes.data(), static_cast<int>(bytes.size()))};
  if (!bio) throw std::bad_alloc();
  return bio;
}

std::vector<OwnedCertificate> certificates_in_pem(const std::string& pem) {
  std::vector<OwnedCertificate> certificates;
  const OwnedBio bio = reader_of(pem);
  while (X509* one = PEM_read_bio_X509(bio.get(), nullptr, nullptr, nullptr)) certificates.emplace_back(one);
  ERR_clear_error();
  return certificates;
}

std::string common_name(const X509_NAME* name) {
  const int at = X509_NAME_get_index_by_NID(name, NID_commonName, -1);
  if (at >= 0) return text_of(X509_NAME_ENTRY_get_data(X509_NAME_get_entry(name, at)));
  const OwnedBio bio{BIO_new(BIO_s_mem())};
  if (!bio) throw std::bad_alloc();
  X509_NAME_print_ex(bio.get(), name, 0, XN_FLAG_ONELINE & ~ASN1_STRFLGS_ESC_MSB);
  char* data = nullptr;
  const long size = BIO_get_mem_data(bio.get(), &data);
  return size > 0 ? std::string(data, static_cast<std::size_t>(size)) : std::string("without a name");
}

std::string time_text(const ASN1_TIME* time) {
  std::tm parts{};
  if (ASN1_TIME_to_tm(time, &parts) != 1) return "an unreadable time";
  return evidence::utc_text(static_cast<std::int64_t>(timegm(&parts)));
}

std::string openssl_reason() {
  const char* reason = ERR_reason_error_string(ERR_peek_last_error());
  std::string text = reason != nullptr ? reason : "no reason given";
  ERR_clear_error();
  return text;
}

std::string unfit_for_signing(X509* certificate) {
  EVP_PKEY* key = X509_get0_pubkey(certificate);
  if (key == nullptr) return "its key cannot be read";
  const int kind = EVP_PKEY_get_base_id(key);
  if (kind != EVP_PKEY_RSA && kind != EVP_PKEY_EC) return "its key is neither RSA nor P-256";
  if (EVP_PKEY_get_security_bits(key) < kLeastSecurityBits) return "its key is too short";
  const std::uint32_t usage = X509_get_key_usage(certificate);  // all bits where the certificate names none
  if ((usage & (X509v3_KU_DIGITAL_SIGNATURE | X509v3_KU_NON_REPUDIATION)) == 0)
    return "its key usage does not allow signatures";
  return {};
}

}  // namespace soakwright::signing
