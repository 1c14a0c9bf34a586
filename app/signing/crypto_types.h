// SPDX-License-Identifier: GPL-3.0-or-later
// OpenSSL's values with owners.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include <openssl/bio.h>
#include <openssl/cms.h>
#include <openssl/evp.h>
#include <openssl/pkcs12.h>
#include <openssl/x509.h>

namespace soakwright::signing {

template <auto release>
struct Release {
  template <typename T>
  void operator()(T* value) const {
    release(value);
  }
};

using OwnedKey = std::unique_ptr<EVP_PKEY, Release<EVP_PKEY_free>>;
using OwnedCertificate = std::unique_ptr<X509, Release<X509_free>>;
using OwnedBio = std::unique_ptr<BIO, Release<BIO_free_all>>;
using OwnedCms = std::unique_ptr<CMS_ContentInfo, Release<CMS_ContentInfo_free>>;
using OwnedPkcs12 = std::unique_ptr<PKCS12, Release<PKCS12_free>>;
using OwnedStore = std::unique_ptr<X509_STORE, Release<X509_STORE_free>>;
using OwnedStoreContext = std::unique_ptr<X509_STORE_CTX, Release<X509_STORE_CTX_free>>;

/// A stack that owns nothing: what is in it must outlive it.
struct FreeStack {
  void operator()(STACK_OF(X509) * stack) const { sk_X509_free(stack); }
};
using CertificateStack = std::unique_ptr<STACK_OF(X509), FreeStack>;
CertificateStack stack_of(const std::vector<OwnedCertificate>& certificates);

/// Reads from `bytes`, which must outlive it.
OwnedBio reader_of(const std::string& bytes);
/// All certificates in PEM, in their order.
std::vector<OwnedCertificate> certificates_in_pem(const std::string& pem);

/// "T. Lindqvist" of CN=T. Lindqvist, O=…; the whole name where there is no CN. UTF-8.
std::string common_name(const X509_NAME* name);
/// "2026-11-28 13:05:01 UTC"
std::string time_text(const ASN1_TIME* time);
/// What OpenSSL last complained of; clears its queue.
std::string openssl_reason();

/// What keeps the certificate and its key from signing reports, apart from its dates. Empty if nothing does.
std::string unfit_for_signing(X509* certificate);

}  // namespace soakwright::signing
