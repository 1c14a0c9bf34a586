// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/cms_frame.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>

namespace soakwright::signing {
namespace {

using namespace std::string_view_literals;

constexpr auto kSignedData = "\x2a\x86\x48\x86\xf7\x0d\x01\x07\x02"sv;
constexpr auto kDataType = "\x06\x09\x2a\x86\x48\x86\xf7\x0d\x01\x07\x01"sv;
// Without and with the parameter NULL: RFC 5754, 2, allows both.
constexpr std::array kDigests{"\x06\x09\x60\x86\x48\x01\x65\x03\x04\x02\x01"sv,
                              "\x06\x09\x60\x86\x48\x01\x65\x03\x04\x02\x01\x05\x00"sv};
constexpr std::array kAlgorithms{
    "\x06\x08\x2a\x86\x48\xce\x3d\x04\x03\x02"sv,               // ecdsa-with-SHA256
    "\x06\x09\x2a\x86\x48\x86\xf7\x0d\x01\x01\x01\x05\x00"sv,   // rsaEncryption
    "\x06\x09\x2a\x86\x48\x86\xf7\x0d\x01\x01\x0b\x05\x00"sv};  // sha256WithRSAEncryption

/// Values one after the other, in DER (ITU-T X.690).
class DerValues {
 public:
  explicit DerValues(std::string_view bytes) : rest_(bytes) {}

  /// The content of the next value if it has this tag.
  std::optional<std::string_view> take(unsigned char tag) {
    if (rest_.size() < 2 || byte(0) != tag) return std::nullopt;
    std::size_t length = byte(1);
    std::size_t head = 2;
    if (length >= 0x80) {
      const std::size_t more = length - 0x80;
      if (more < 1 || more > 3 || rest_.size() < 2 + more) return std::nullopt;
      length = 0;
      for (std::size_t i = 0; i < more; ++i) length = 256 * length + byte(2 + i);
      head += more;
    }
    if (length > rest_.size() - head) return std::nullopt;
    const std::string_view content = rest_.substr(head, length);
    rest_.remove_prefix(head + length);
    return content;
  }
  [[nodiscard]] bool ended() const { return rest_.empty(); }

 private:
  [[nodiscard]] std::size_t byte(std::size_t at) const { return static_cast<unsigned char>(rest_[at]); }
  std::string_view rest_;
};

constexpr unsigned char kInteger = 0x02, kOctets = 0x04, kIdentifier = 0x06, kSequence = 0x30, kSet = 0x31,
                        kContext = 0xa0;
constexpr auto kVersion = "\x01"sv;

template <typename List>
bool one_of(const List& list, const std::optional<std::string_view>& content) {
  return content && std::find(list.begin(), list.end(), *content) != list.end();
}

bool plain_signer(std::string_view content) {
  DerValues signer(content);
  if (signer.take(kInteger) != kVersion || !signer.take(kSequence)) return false;
  if (!one_of(kDigests, signer.take(kSequence)) || !signer.take(kContext)) return false;
  return one_of(kAlgorithms, signer.take(kSequence)) && signer.take(kOctets) && signer.ended();
}

bool plain_signed_data(std::string_view content) {
  DerValues data(content);
  if (data.take(kInteger) != kVersion) return false;
  const auto digests = data.take(kSet);
  if (!digests) return false;
  DerValues digest(*digests);
  if (!one_of(kDigests, digest.take(kSequence)) || !digest.ended()) return false;
  if (data.take(kSequence) != kDataType || !data.take(kContext)) return false;
  const auto signers = data.take(kSet);
  if (!signers || !data.ended()) return false;
  DerValues signer(*signers);
  const auto only = signer.take(kSequence);
  return only && signer.ended() && plain_signer(*only);
}

}  // namespace

bool plain_frame(std::string_view der) {
  DerValues outer(der);
  const auto whole = outer.take(kSequence);
  if (!whole || !outer.ended()) return false;
  DerValues parts(*whole);
  if (parts.take(kIdentifier) != kSignedData) return false;
  const auto wrapped = parts.take(kContext);
  if (!wrapped || !parts.ended()) return false;
  DerValues inner(*wrapped);
  const auto data = inner.take(kSequence);
  return data && inner.ended() && plain_signed_data(*data);
}

}  // namespace soakwright::signing
