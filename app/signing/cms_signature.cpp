// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/cms_signature.h"

#include <array>
#include <ctime>
#include <new>
#include <string_view>

#include <openssl/err.h>
#include <openssl/ess.h>
#include <openssl/objects.h>
#include <openssl/x509_vfy.h>

#include "app/signing/cms_frame.h"

namespace soakwright::signing {
namespace {

constexpr unsigned kDetached = CMS_DETACHED | CMS_BINARY;

using OwnedEss = std::unique_ptr<ESS_SIGNING_CERT_V2, Release<ESS_SIGNING_CERT_V2_free>>;
struct FreeSigners {
  void operator()(STACK_OF(X509) * stack) const { sk_X509_free(stack); }
};
struct FreeCertificates {
  void operator()(STACK_OF(X509) * stack) const { sk_X509_pop_free(stack, X509_free); }
};

bool strong_digest(CMS_SignerInfo* signer) {
  X509_ALGOR* digest = nullptr;
  CMS_SignerInfo_get0_algs(signer, nullptr, nullptr, &digest, nullptr);
  const ASN1_OBJECT* object = nullptr;
  X509_ALGOR_get0(&object, nullptr, nullptr, digest);
  const int kind = OBJ_obj2nid(object);
  return kind == NID_sha256 || kind == NID_sha384 || kind == NID_sha512;
}

/// The certificates with the signer's first.
CertificateStack signer_first(STACK_OF(X509) * all, X509* own) {
  CertificateStack stack{sk_X509_new_null()};
  if (!stack || sk_X509_push(stack.get(), own) == 0) throw std::bad_alloc();
  for (int i = 0; i < sk_X509_num(all); ++i) {
    X509* one = sk_X509_value(all, i);
    if (X509_cmp(one, own) != 0 && sk_X509_push(stack.get(), one) == 0) throw std::bad_alloc();
  }
  return stack;
}

/// Whether the signed attributes name the signer's certificate and every other one that is there, by SHA-256:
/// none can be changed, added or replaced by another with the same key.
bool names_certificates(CMS_SignerInfo* signer, STACK_OF(X509) * all, X509* own) {
  const int at = CMS_signed_get_attr_by_NID(signer, NID_id_smime_aa_signingCertificateV2, -1);
  if (at < 0) return false;
  const ASN1_TYPE* value = X509_ATTRIBUTE_get0_type(CMS_signed_get_attr(signer, at), 0);
  if (value == nullptr || value->type != V_ASN1_SEQUENCE) return false;
  const unsigned char* data = value->value.sequence->data;
  const std::string_view named(reinterpret_cast<const char*>(data),
                               static_cast<std::size_t>(value->value.sequence->length));
  const OwnedEss ess{d2i_ESS_SIGNING_CERT_V2(nullptr, &data, value->value.sequence->length)};
  const CertificateStack stack = signer_first(all, own);
  if (!ess || OSSL_ESS_check_signing_certs(nullptr, ess.get(), stack.get(), 1) <= 0) return false;
  for (int i = 0; i < sk_X509_num(stack.get()); ++i) {
    std::array<unsigned char, EVP_MAX_MD_SIZE> digest{};
    unsigned size = 0;
    if (X509_digest(sk_X509_value(stack.get(), i), EVP_sha256(), digest.data(), &size) != 1) return false;
    if (named.find(std::string_view(reinterpret_cast<const char*>(digest.data()), size)) ==
        std::string_view::npos)
      return false;
  }
  return true;
}

/// Adds the attribute that names_certificates() reads (RFC 5035, 3: the signer's certificate first, then its
/// issuers).
bool add_certificate_names(CMS_SignerInfo* signer, X509* own, STACK_OF(X509) * chain) {
  const OwnedEss ess{OSSL_ESS_signing_cert_v2_new_init(EVP_sha256(), own, chain, 1)};
  unsigned char* der = nullptr;
  const int size = ess ? i2d_ESS_SIGNING_CERT_V2(ess.get(), &der) : 0;
  if (size <= 0) return false;
  const bool added = CMS_signed_add1_attr_by_NID(signer, NID_id_smime_aa_signingCertificateV2,
                                                 V_ASN1_SEQUENCE, der, size) == 1;
  OPENSSL_free(der);
  return added;
}

bool valid_at(X509* certificate, std::int64_t unix_s) {
  std::time_t at = unix_s;
  return X509_cmp_time(X509_get0_notBefore(certificate), &at) < 0 &&
         X509_cmp_time(X509_get0_notAfter(certificate), &at) > 0;
}

/// Why no chain leads from the certificate to a trusted one; empty where one does.
std::string distrust(X509* certificate, STACK_OF(X509) * others, std::int64_t at_s,
                     const std::vector<OwnedCertificate>& trusted) {
  const OwnedStore store{X509_STORE_new()};
  const OwnedStoreContext context{X509_STORE_CTX_new()};
  if (!store || !context) throw std::bad_alloc();
  for (const OwnedCertificate& one : trusted) X509_STORE_add_cert(store.get(), one.get());
  X509_STORE_set_flags(store.get(), X509_V_FLAG_PARTIAL_CHAIN);
  if (X509_STORE_CTX_init(context.get(), store.get(), certificate, others) != 1) throw std::bad_alloc();
  X509_VERIFY_PARAM_set_time(X509_STORE_CTX_get0_param(context.get()), at_s);
  const bool trusts = X509_verify_cert(context.get()) == 1;
  ERR_clear_error();
  return trusts ? std::string{} : X509_verify_cert_error_string(X509_STORE_CTX_get_error(context.get()));
}

}  // namespace

std::string cms_signature(const SigningKey& signing, const std::string& data) {
  const CertificateStack chain = stack_of(signing.chain);
  const OwnedCms cms{CMS_sign(nullptr, nullptr, chain.get(), nullptr, kDetached | CMS_PARTIAL)};
  if (!cms) return {};
  CMS_SignerInfo* signer = CMS_add1_signer(cms.get(), signing.certificate.get(), signing.key.get(),
                                           EVP_sha256(), kDetached | CMS_NOSMIMECAP | CMS_PARTIAL);
  if (signer == nullptr || !add_certificate_names(signer, signing.certificate.get(), chain.get())) return {};
  const OwnedBio bio = reader_of(data);
  if (CMS_final(cms.get(), bio.get(), nullptr, kDetached) != 1) return {};
  unsigned char* der = nullptr;
  const int size = i2d_CMS_ContentInfo(cms.get(), &der);
  if (size <= 0) return {};
  std::string bytes(reinterpret_cast<const char*>(der), static_cast<std::size_t>(size));
  OPENSSL_free(der);
  return bytes;
}

CheckedCms check_cms(const std::string& der, const std::string& data, std::int64_t signed_s,
                     std::int64_t now_s, const std::vector<OwnedCertificate>& trusted) {
  CheckedCms checked;
  const auto broken = [&](const std::string& why) {
    checked.broken = why;
    ERR_clear_error();
    return checked;
  };
  const auto* bytes = reinterpret_cast<const unsigned char*>(der.data());
  const OwnedCms cms{d2i_CMS_ContentInfo(nullptr, &bytes, static_cast<long>(der.size()))};
  if (!cms || bytes != reinterpret_cast<const unsigned char*>(der.data()) + der.size())
    return broken("the signature cannot be read");
  if (!plain_frame(der)) return broken("the signature is not as `soakwright sign` makes it");
  STACK_OF(CMS_SignerInfo)* signers = CMS_get0_SignerInfos(cms.get());
  if (signers == nullptr || sk_CMS_SignerInfo_num(signers) != 1)
    return broken("the signature is not one person's");
  const OwnedBio bio = reader_of(data);
  if (CMS_verify(cms.get(), nullptr, nullptr, bio.get(), nullptr, kDetached | CMS_NO_SIGNER_CERT_VERIFY) != 1)
    return broken("the signed bytes have been changed (" + openssl_reason() + ")");

  const std::unique_ptr<STACK_OF(X509), FreeSigners> own{CMS_get0_signers(cms.get())};
  if (!own || sk_X509_num(own.get()) != 1) return broken("the signer's certificate is not in it");
  X509* certificate = sk_X509_value(own.get(), 0);
  CMS_SignerInfo* signer = sk_CMS_SignerInfo_value(signers, 0);
  if (!strong_digest(signer)) return broken("it uses a digest that is no longer safe");
  const std::unique_ptr<STACK_OF(X509), FreeCertificates> all{CMS_get1_certs(cms.get())};
  if (!all || !names_certificates(signer, all.get(), certificate))
    return broken("a certificate in it is not one that was signed with");
  checked.subject = common_name(X509_get_subject_name(certificate));
  checked.issuer = common_name(X509_get_issuer_name(certificate));
  checked.unfit = unfit_for_signing(certificate);
  checked.not_before = time_text(X509_get0_notBefore(certificate));
  checked.not_after = time_text(X509_get0_notAfter(certificate));
  std::tm end{};
  if (ASN1_TIME_to_tm(X509_get0_notAfter(certificate), &end) == 1)
    checked.not_after_s = static_cast<std::int64_t>(timegm(&end));
  checked.valid_then = valid_at(certificate, signed_s);
  checked.valid_now = valid_at(certificate, now_s);
  if (!trusted.empty()) checked.untrusted = distrust(certificate, all.get(), signed_s, trusted);
  return checked;
}

}  // namespace soakwright::signing
