// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/signing_key.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <optional>
#include <utility>

#include <openssl/err.h>
#include <openssl/pem.h>

#include "core/problems/command_line_problems.h"

namespace soakwright::signing {
namespace {

constexpr std::size_t kFarTooLarge = std::size_t{1} << 20U;

Problem key_refusal(const std::string& path, std::string what, std::string help) {
  return {ProblemKind::bad_input, path, 0, std::move(what), std::move(help)};
}

/// What opens key and certificate; no word where none was given.
struct Password {
  std::optional<std::string> word;
};

Result<Password> password_of(const SignOrder& order) {
  if (order.password) return Password{order.password->empty() ? std::nullopt : order.password};
  if (order.password_file.empty()) return Password{};
  auto bytes = read_small_file(order.password_file);
  if (!bytes) return bytes.problems();
  std::string line = std::move(bytes).value();
  line.resize(std::min(line.size(), line.find_first_of("\r\n")));
  return Password{std::move(line)};
}

int give_password(char* buffer, int size, int /*writing*/, void* password) {
  const auto* text = static_cast<const std::optional<std::string>*>(password);
  if (!*text || (*text)->size() > static_cast<std::size_t>(size)) return -1;
  std::copy((*text)->begin(), (*text)->end(), buffer);
  return static_cast<int>((*text)->size());
}

Problem closed(const std::string& path, const Password& password) {
  ERR_clear_error();
  if (!password.word)
    return helped_by(key_refusal(path, "it is protected by a password", {}), CommandLineHelp::give_password);
  return helped_by(key_refusal(path, "the password does not open it", {}), CommandLineHelp::check_password);
}

/// What a file holds, of either kind.
struct Holding {
  OwnedKey key;
  std::vector<OwnedCertificate> certificates;
};

Result<Holding> open_pkcs12(PKCS12* pkcs12, const std::string& path, const Password& password) {
  EVP_PKEY* key = nullptr;
  X509* certificate = nullptr;
  STACK_OF(X509)* more = nullptr;
  const std::string word = password.word.value_or(std::string{});
  if (PKCS12_verify_mac(pkcs12, word.c_str(), static_cast<int>(word.size())) != 1 &&
      (password.word || PKCS12_verify_mac(pkcs12, nullptr, 0) != 1))
    return closed(path, password);
  if (PKCS12_parse(pkcs12, word.c_str(), &key, &certificate, &more) != 1)
    return key_refusal(path, "the PKCS#12 file cannot be read: " + openssl_reason(),
                       "save it with AES, or give PEM files");
  Holding holding;
  holding.key.reset(key);
  if (certificate != nullptr) holding.certificates.emplace_back(certificate);
  while (more != nullptr && sk_X509_num(more) > 0) holding.certificates.emplace_back(sk_X509_shift(more));
  sk_X509_free(more);
  return holding;
}

Result<Holding> open_file(const std::string& path, const Password& password) {
  auto read = read_small_file(path);
  if (!read) return read.problems();
  const std::string& bytes = read.value();
  const auto* data = reinterpret_cast<const unsigned char*>(bytes.data());
  if (const OwnedPkcs12 pkcs12{d2i_PKCS12(nullptr, &data, static_cast<long>(bytes.size()))})
    return open_pkcs12(pkcs12.get(), path, password);
  ERR_clear_error();
  Holding holding;
  holding.certificates = certificates_in_pem(bytes);
  const bool has_key = bytes.find("PRIVATE KEY-----") != std::string::npos;
  if (has_key) {
    auto word = password.word;
    const OwnedBio bio = reader_of(bytes);
    holding.key.reset(PEM_read_bio_PrivateKey(bio.get(), nullptr, give_password, &word));
    const bool encrypted = bytes.find("ENCRYPTED") != std::string::npos;
    if (!holding.key && encrypted) return closed(path, password);
    if (!holding.key)
      return key_refusal(path, "the key cannot be read: " + openssl_reason(), "give a key in PEM or PKCS#12");
  }
  return holding;
}

std::string validity_fault(X509* certificate, std::int64_t now_s) {
  std::time_t now = now_s;
  if (X509_cmp_time(X509_get0_notBefore(certificate), &now) > 0)
    return "the certificate is not yet valid: it begins at " + time_text(X509_get0_notBefore(certificate));
  if (X509_cmp_time(X509_get0_notAfter(certificate), &now) < 0)
    return "the certificate has expired: it ended at " + time_text(X509_get0_notAfter(certificate));
  return {};
}

}  // namespace

Result<std::string> read_small_file(const std::string& path) {
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status))
    return Problem{ProblemKind::cannot_open, path, 0, "this is a folder, a pipe or a device, not a file",
                   "name a file"};
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file{std::fopen(path.c_str(), "rb"), std::fclose};
  if (!file)
    return Problem{ProblemKind::cannot_open, path, 0,
                   std::string("cannot be opened: ") + std::strerror(errno),
                   "check the path and the permissions"};
  std::string bytes(kFarTooLarge, '\0');
  bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file.get()));
  if (bytes.size() == kFarTooLarge)
    return key_refusal(path, "the file is larger than 1 MB", "is this the right file?");
  return bytes;
}

Result<std::vector<OwnedCertificate>> read_certificates(const std::string& path) {
  const auto bytes = read_small_file(path);
  if (!bytes) return bytes.problems();
  std::vector<OwnedCertificate> certificates = certificates_in_pem(bytes.value());
  if (certificates.empty())
    return key_refusal(path, "there is no certificate in this file", "give certificates in PEM");
  return certificates;
}

Result<SigningKey> read_signing_key(const SignOrder& order, std::int64_t now_s) {
  const auto password = password_of(order);
  if (!password) return password.problems();
  auto with_key = open_file(order.key, password.value());
  if (!with_key) return with_key.problems();
  SigningKey signing;
  signing.key = std::move(with_key.value().key);
  if (!signing.key)
    return key_refusal(order.key, "there is no key in this file", "give the signer's key in PEM or PKCS#12");
  std::vector<OwnedCertificate> certificates;
  const std::string& place = order.certificate.empty() ? order.key : order.certificate;
  if (order.certificate.empty()) {
    certificates = std::move(with_key.value().certificates);
  } else {
    auto with_certificate = open_file(order.certificate, password.value());
    if (!with_certificate) return with_certificate.problems();
    certificates = std::move(with_certificate.value().certificates);
  }
  if (certificates.empty())
    return helped_by(key_refusal(place, "there is no certificate in this file", {}),
                     CommandLineHelp::give_certificate);
  const auto fits = [&](const OwnedCertificate& one) {
    return X509_check_private_key(one.get(), signing.key.get()) == 1;
  };
  const auto own = std::find_if(certificates.begin(), certificates.end(), fits);
  ERR_clear_error();
  if (own == certificates.end())
    return key_refusal(place, "the certificate does not belong to the key in " + order.key,
                       "give the certificate that was issued for this key");
  signing.certificate = std::move(*own);
  certificates.erase(own);
  signing.chain = std::move(certificates);
  if (const std::string wrong = unfit_for_signing(signing.certificate.get()); !wrong.empty())
    return key_refusal(place, "the certificate cannot sign: " + wrong,
                       "use a certificate for signatures, RSA or P-256");
  if (std::string wrong = validity_fault(signing.certificate.get(), now_s); !wrong.empty())
    return key_refusal(place, std::move(wrong), "use a certificate that is valid today");
  return signing;
}

}  // namespace soakwright::signing
