// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/report_time_stamp.h"

#include <array>
#include <ctime>
#include <new>
#include <optional>
#include <utility>

#include <openssl/err.h>
#include <openssl/objects.h>
#include <openssl/pkcs7.h>
#include <openssl/ts.h>
#include <openssl/x509_vfy.h>

namespace soakwright::signing {
namespace {

using OwnedReply = std::unique_ptr<TS_RESP, Release<TS_RESP_free>>;
using OwnedToken = std::unique_ptr<PKCS7, Release<PKCS7_free>>;
using OwnedStatement = std::unique_ptr<TS_TST_INFO, Release<TS_TST_INFO_free>>;

/// All of `der`, and nothing behind it.
template <typename Owned, auto read>
Owned whole(const std::string& der) {
  const auto* bytes = reinterpret_cast<const unsigned char*>(der.data());
  const unsigned char* const end = bytes + der.size();
  Owned value{read(nullptr, &bytes, static_cast<long>(der.size()))};
  return bytes == end ? std::move(value) : Owned{};
}

OwnedToken token_in(const std::string& der) {
  if (const auto reply = whole<OwnedReply, d2i_TS_RESP>(der)) {
    PKCS7* token = TS_RESP_get_token(reply.get());
    return OwnedToken{token != nullptr ? PKCS7_dup(token) : nullptr};
  }
  ERR_clear_error();
  return whole<OwnedToken, d2i_PKCS7>(der);
}

const EVP_MD* strong_digest(TS_MSG_IMPRINT* imprint) {
  const ASN1_OBJECT* kind = nullptr;
  X509_ALGOR_get0(&kind, nullptr, nullptr, TS_MSG_IMPRINT_get_algo(imprint));
  switch (OBJ_obj2nid(kind)) {
    case NID_sha256:
      return EVP_sha256();
    case NID_sha384:
      return EVP_sha384();
    case NID_sha512:
      return EVP_sha512();
    default:
      return nullptr;
  }
}

std::optional<std::size_t> stamped_state(TS_MSG_IMPRINT* imprint, const EVP_MD* digest,
                                         const std::vector<std::string_view>& states) {
  const ASN1_OCTET_STRING* message = TS_MSG_IMPRINT_get_msg(imprint);
  const std::string_view stamped(reinterpret_cast<const char*>(ASN1_STRING_get0_data(message)),
                                 static_cast<std::size_t>(ASN1_STRING_length(message)));
  for (std::size_t i = 0; i < states.size(); ++i) {
    std::array<unsigned char, EVP_MAX_MD_SIZE> own{};
    unsigned size = 0;
    if (EVP_Digest(states[i].data(), states[i].size(), own.data(), &size, digest, nullptr) != 1)
      throw std::bad_alloc();
    if (stamped == std::string_view(reinterpret_cast<const char*>(own.data()), size)) return i;
  }
  return std::nullopt;
}

/// Whether the token is signed by a certificate for time stamps to which a chain leads from `anchors`; says
/// who signed. The chain is looked at as of `at_s`.
bool is_signed(PKCS7* token, const std::vector<X509*>& anchors, std::int64_t at_s, std::string& authority) {
  const OwnedStore store{X509_STORE_new()};
  if (!store) throw std::bad_alloc();
  for (X509* anchor : anchors) X509_STORE_add_cert(store.get(), anchor);
  X509_STORE_set_flags(store.get(), X509_V_FLAG_PARTIAL_CHAIN);
  X509_VERIFY_PARAM_set_time(X509_STORE_get0_param(store.get()), at_s);
  X509* signer = nullptr;
  if (TS_RESP_verify_signature(token, nullptr, store.get(), &signer) != 1) return false;
  const OwnedCertificate own{signer};
  authority = common_name(X509_get_subject_name(own.get()));
  return true;
}

}  // namespace

CheckedStamp check_time_stamp(const std::string& der, const std::vector<std::string_view>& states,
                              const std::vector<OwnedCertificate>& trusted) {
  CheckedStamp checked;
  const auto broken = [&](std::string why) {
    checked.broken = std::move(why);
    ERR_clear_error();
    return checked;
  };
  const OwnedToken token = token_in(der);
  if (!token || PKCS7_type_is_signed(token.get()) == 0) return broken("it holds no time stamp (RFC 3161)");
  const OwnedStatement statement{PKCS7_to_TS_TST_INFO(token.get())};
  if (!statement) return broken("it holds no time stamp (RFC 3161)");
  TS_MSG_IMPRINT* imprint = TS_TST_INFO_get_msg_imprint(statement.get());
  const EVP_MD* digest = strong_digest(imprint);
  if (digest == nullptr) return broken("it uses a digest that is no longer safe");
  const auto state = stamped_state(imprint, digest, states);
  if (!state) return broken("it is of another file, or of a report that has been changed since");
  checked.state = *state;
  std::tm parts{};
  if (ASN1_TIME_to_tm(TS_TST_INFO_get_time(statement.get()), &parts) != 1)
    return broken("its time cannot be read");
  checked.at_s = static_cast<std::int64_t>(timegm(&parts));

  const CertificateStack signers{PKCS7_get0_signers(token.get(), nullptr, 0)};
  std::vector<X509*> own;
  for (int i = 0; signers && i < sk_X509_num(signers.get()); ++i)
    own.push_back(sk_X509_value(signers.get(), i));
  if (own.empty())
    return broken("the certificate of its authority is not in it; ask for it with the time stamp");
  if (!is_signed(token.get(), own, checked.at_s, checked.authority))
    return broken("its signature does not hold (" + openssl_reason() + ")");
  if (trusted.empty()) return checked;
  std::vector<X509*> anchors;
  anchors.reserve(trusted.size());
  for (const OwnedCertificate& one : trusted) anchors.push_back(one.get());
  if (!is_signed(token.get(), anchors, checked.at_s, checked.authority)) checked.untrusted = openssl_reason();
  ERR_clear_error();
  return checked;
}

}  // namespace soakwright::signing
