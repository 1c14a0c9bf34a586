// SPDX-License-Identifier: GPL-3.0-or-later
// Time stamps of a report (RFC 3161) by an authority that answers in memory.
#include "app/signing/report_time_stamp.h"

#include <ctime>
#include <string>

#include <catch2/catch.hpp>
#include <openssl/pem.h>
#include <openssl/ts.h>

#include "tests/app/signing/made_report.h"

using namespace soakwright::signing;
using Catch::Matchers::Contains;

namespace {

using OwnedRequest = std::unique_ptr<TS_REQ, Release<TS_REQ_free>>;
using OwnedReply = std::unique_ptr<TS_RESP, Release<TS_RESP_free>>;
using OwnedResponder = std::unique_ptr<TS_RESP_CTX, Release<TS_RESP_CTX_free>>;
using OwnedImprint = std::unique_ptr<TS_MSG_IMPRINT, Release<TS_MSG_IMPRINT_free>>;
using OwnedAlgorithm = std::unique_ptr<X509_ALGOR, Release<X509_ALGOR_free>>;

template <auto write, typename T>
std::string der_of(const T* value) {
  unsigned char* bytes = nullptr;
  const int size = write(value, &bytes);
  REQUIRE(size > 0);
  std::string der(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size));
  OPENSSL_free(bytes);
  return der;
}

/// What is sent to an authority: the digest of the bytes.
std::string query_of(const std::string& bytes, const EVP_MD* digest, bool with_certificate) {
  unsigned char own[EVP_MAX_MD_SIZE];
  unsigned size = 0;
  REQUIRE(EVP_Digest(bytes.data(), bytes.size(), own, &size, digest, nullptr) == 1);
  const OwnedAlgorithm algorithm{X509_ALGOR_new()};
  X509_ALGOR_set_md(algorithm.get(), digest);
  const OwnedImprint imprint{TS_MSG_IMPRINT_new()};
  REQUIRE(TS_MSG_IMPRINT_set_algo(imprint.get(), algorithm.get()) == 1);
  REQUIRE(TS_MSG_IMPRINT_set_msg(imprint.get(), own, static_cast<int>(size)) == 1);
  const OwnedRequest request{TS_REQ_new()};
  REQUIRE(TS_REQ_set_version(request.get(), 1) == 1);
  REQUIRE(TS_REQ_set_msg_imprint(request.get(), imprint.get()) == 1);
  REQUIRE(TS_REQ_set_cert_req(request.get(), with_certificate ? 1 : 0) == 1);
  return der_of<i2d_TS_REQ>(request.get());
}

ASN1_INTEGER* next_serial(TS_RESP_CTX* /*responder*/, void* /*data*/) {
  ASN1_INTEGER* serial = ASN1_INTEGER_new();
  ASN1_INTEGER_set(serial, 7);
  return serial;
}

int stamped_at(TS_RESP_CTX* /*responder*/, void* data, long* seconds, long* microseconds) {
  *seconds = *static_cast<long*>(data);
  *microseconds = 0;
  return 1;
}

/// A local responder.
struct StampingAuthority {
  explicit StampingAuthority(const char* usage = "critical,timeStamping") {
    Issue issue;
    issue.name = "Brackwater Time Stamps";
    issue.extended_usage = usage;
    issue.valid_from_s = -400'000'000;
    identity = authority.issue(issue);
  }

  [[nodiscard]] std::string answer(const std::string& query, long at_s) const {
    const OwnedBio key_bio = reader_of(identity.key_pem);
    const OwnedKey key{PEM_read_bio_PrivateKey(key_bio.get(), nullptr, nullptr, nullptr)};
    const auto certificates = certificates_in_pem(identity.certificate_pem);
    const OwnedResponder responder{TS_RESP_CTX_new()};
    REQUIRE(TS_RESP_CTX_set_signer_cert(responder.get(), certificates.front().get()) == 1);
    REQUIRE(TS_RESP_CTX_set_signer_key(responder.get(), key.get()) == 1);
    ASN1_OBJECT* policy = OBJ_txt2obj("1.2.3.4.1", 1);
    REQUIRE(TS_RESP_CTX_set_def_policy(responder.get(), policy) == 1);
    ASN1_OBJECT_free(policy);
    for (const EVP_MD* digest : {EVP_sha256(), EVP_sha512(), EVP_sha1()})
      REQUIRE(TS_RESP_CTX_add_md(responder.get(), digest) == 1);
    REQUIRE(TS_RESP_CTX_set_signer_digest(responder.get(), EVP_sha256()) == 1);
    TS_RESP_CTX_set_serial_cb(responder.get(), next_serial, nullptr);
    TS_RESP_CTX_set_time_cb(responder.get(), stamped_at, &at_s);
    const OwnedBio asked = reader_of(query);
    const OwnedReply reply{TS_RESP_create_response(responder.get(), asked.get())};
    REQUIRE(reply);
    return der_of<i2d_TS_RESP>(reply.get());
  }

  TestAuthority authority{"Brackwater Time Authority"};
  Identity identity;
};

std::string without_last_signature() {
  const std::string& bytes = signed_report().bytes;
  const std::size_t end = bytes.rfind("%%EOF", bytes.rfind("%%EOF") - 1);
  return bytes.substr(0, end + 6);
}

}  // namespace

TEST_CASE("a time stamp of a signed report holds, and names the authority and the time") {
  const TemporaryFolder folder;
  const StampingAuthority stamps;
  const std::string report = folder.with("signed.pdf", signed_report().bytes);
  const std::string trust =
      folder.with("trust.pem", signed_report().authority + stamps.authority.certificate_pem());
  const long now = std::time(nullptr);
  struct Row {
    const char* what;
    std::string bytes;
    const EVP_MD* digest;
    const char* says;
  };
  for (const Row& row :
       {Row{"the report", signed_report().bytes, EVP_sha256(), "up to signature 3 existed at"},
        Row{"by SHA-512", signed_report().bytes, EVP_sha512(), "up to signature 3 existed at"},
        Row{"before the last signature", without_last_signature(), EVP_sha256(),
            "up to signature 2 existed at"},
        Row{"before any", signed_report().unsigned_bytes, EVP_sha256(),
            "The report without a signature existed at"}}) {
    const std::string reply =
        folder.with("reply.tsr", stamps.answer(query_of(row.bytes, row.digest, true), now));
    const Ran ran = run_soakwright({"verify", report, "--timestamp", reply, "--trust", trust});
    INFO(row.what << '\n' << ran.out << ran.err);
    CHECK(ran.exit_code == 0);
    CHECK_THAT(ran.out, Contains(row.says) && Contains("as Brackwater Time Stamps states") &&
                            !Contains("Nobody vouches"));
    const Ran alone = run_soakwright({"verify", report, "--timestamp", reply});
    CHECK(alone.exit_code == 0);
    CHECK_THAT(alone.out, Contains("Nobody vouches for this authority"));
  }
}

TEST_CASE("what is no time stamp of the report is caught") {
  const TemporaryFolder folder;
  const StampingAuthority stamps;
  const std::string report = folder.with("signed.pdf", signed_report().bytes);
  const long now = std::time(nullptr);
  const std::string good = stamps.answer(query_of(signed_report().bytes, EVP_sha256(), true), now);
  std::string broken = good;
  broken[broken.size() - 3] = static_cast<char>(broken[broken.size() - 3] ^ 1);
  struct Row {
    const char* what;
    std::string reply;
    const char* says;
  };
  for (const Row& row :
       {Row{"of another file", stamps.answer(query_of("another", EVP_sha256(), true), now),
            "it is of another file"},
        Row{"by a digest that is not safe",
            stamps.answer(query_of(signed_report().bytes, EVP_sha1(), true), now), "no longer safe"},
        Row{"a changed bit", broken, "does not hold"},
        Row{"cut off", good.substr(0, good.size() - 1), "holds no time stamp"},
        Row{"something behind it", good + "0", "holds no time stamp"},
        Row{"a text", "time stamp", "holds no time stamp"},
        Row{"without the authority's certificate",
            stamps.answer(query_of(signed_report().bytes, EVP_sha256(), false), now), "is not in it"},
        Row{"a year before the signatures",
            stamps.answer(query_of(signed_report().bytes, EVP_sha256(), true), now - 31'536'000L),
            "before the time that signature 1 states"}}) {
    const std::string reply = folder.with("reply.tsr", row.reply);
    const Ran ran = run_soakwright({"verify", report, "--timestamp", reply});
    INFO(row.what << '\n' << ran.out << ran.err);
    CHECK(ran.exit_code == 1);
    CHECK_THAT(ran.out, Contains(row.says));
  }
  const std::string reply = folder.with("reply.tsr", good);
  const Ran untrusted = run_soakwright({"verify", report, "--timestamp", reply, "--trust",
                                        folder.with("trust.pem", signed_report().authority)});
  CHECK(untrusted.exit_code == 1);
  CHECK_THAT(untrusted.out, Contains("not vouched for by the trusted certificate"));
  const Ran absent = run_soakwright({"verify", report, "--timestamp", folder.file("none.tsr")});
  CHECK(absent.exit_code == 66);
}
