// SPDX-License-Identifier: GPL-3.0-or-later
// Signatures as other people's tools see them (poppler's pdfsig), and what `sign` refuses.
#include <algorithm>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/units/sha256.h"
#include "tests/app/signing/made_report.h"

using Catch::Matchers::Contains;

namespace {

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; ++at) ++count;
  return count;
}

const char* const kFailing = "w-118-late-and-dipping";

/// A review of the failing sample with a disposition for each requirement.
std::string review_of(const std::vector<std::string>& requirements, const std::string& people = {}) {
  const Ran ran = run_soakwright(
      {"check", "--job", source_file(std::string("sample-logs/") + kFailing + "/job.toml"), "--json", "-"});
  std::string text =
      "soakwright = \"review 1\"\nresult_sha256 = \"" + soakwright::sha256_hex(ran.out) + "\"\n";
  for (const std::string& requirement : requirements)
    text += "[[finding]]\nrequirement = \"" + requirement +
            "\"\ndisposition = \"repeat\"\nreason = \"heater changed\"\n";
  return text + people;
}

}  // namespace

TEST_CASE(
    "three signatures one after the other, RSA and P-256, are valid and the last covers the whole file") {
  const TemporaryFolder folder;
  const std::string report = folder.with("signed.pdf", signed_report().bytes);
  const std::string said = printed_by("pdfsig -nocert '" + report + "'");
  INFO(said);
  CHECK(count_of(said, "Signature is Valid") == 3);
  CHECK(count_of(said, "Total document signed") == 1);
  CHECK(said.rfind("Total document signed") > said.rfind("Signature #3"));
  CHECK(count_of(said, "ETSI.CAdES.detached") == 3);
  for (const char* name : {"O. Ferris", "T. Lindqvist", "Šarić"}) CHECK_THAT(said, Contains(name));
  const std::string check = printed_by("qpdf --check '" + report + "'");
  CHECK_THAT(check, Contains("No syntax or stream encoding errors found") && !Contains("WARNING"));
}

TEST_CASE("verify says that each signature is intact, and whether somebody vouches for it") {
  const TemporaryFolder folder;
  const std::string report = folder.with("signed.pdf", signed_report().bytes);
  const std::string root = folder.with("root.pem", signed_report().authority);
  const Ran trusted = run_soakwright({"verify", report, "--trust", root});
  INFO(trusted.out << trusted.err);
  CHECK(trusted.exit_code == 0);
  CHECK(count_of(trusted.out, "intact, and covers everything before it") == 3);
  CHECK_THAT(trusted.out, !Contains("Nobody vouches"));
  const Ran alone = run_soakwright({"verify", report});
  CHECK(alone.exit_code == 0);
  CHECK(count_of(alone.out, "Nobody vouches for this certificate") == 3);
  const std::string other = folder.with("other.pem", TestAuthority("Another Authority").certificate_pem());
  const Ran foreign = run_soakwright({"verify", report, "--trust", other});
  CHECK(foreign.exit_code == 1);
  CHECK(count_of(foreign.out, "not vouched for") == 3);
}

TEST_CASE("role, name and time of each signature can be read on the page, in any script") {
  const TemporaryFolder folder;
  const std::string report = folder.with("signed.pdf", signed_report().bytes);
  const std::string text = printed_by("pdftotext -layout '" + report + "' -");
  for (const char* words : {"Performed by O. Ferris", "Reviewed by T. Lindqvist",
                            "Witnessed by Ž. Šarić (Ærø)", "issued by Brackwater Test Authority"})
    CHECK_THAT(text, Contains(words));
  CHECK(count_of(text, " UTC") >= 3);
}

TEST_CASE("key and certificate in one PKCS#12 file, and a PEM key with a password, sign") {
  const TemporaryFolder folder;
  const Identity identity = TestAuthority().issue({});
  const std::string password = folder.with("password", "open sesame\n");
  const std::string both = folder.with("both.p12", identity.pkcs12_with_password);
  const std::string key = folder.with("key.pem", identity.key_pem_with_password);
  const std::string certificate = folder.with("certificate.pem", identity.certificate_pem);
  const std::string report = report_of(folder, "w-117-stress-relief");
  const Ran packed = run_soakwright({"sign", report, "--key", both, "--name", "T. Lindqvist", "--role",
                                     "reviewed", "--password-file", password, "--out", folder.file("a.pdf")});
  INFO(packed.err);
  CHECK(packed.exit_code == 0);
  const Ran plain =
      run_soakwright({"sign", report, "--key", key, "--certificate", certificate, "--name", "T. Lindqvist",
                      "--role", "reviewed", "--password-file", password, "--out", folder.file("b.pdf")});
  INFO(plain.err);
  CHECK(plain.exit_code == 0);
  for (const char* name : {"a.pdf", "b.pdf"})
    CHECK_THAT(printed_by("pdfsig -nocert '" + folder.file(name) + "'"),
               Contains("Signature is Valid") && Contains("Total document signed"));
}

TEST_CASE("what must not sign is refused with 65, the right words, and nothing written") {
  const TemporaryFolder folder;
  const TestAuthority authority;
  const Identity good = authority.issue({});
  Issue issue;
  issue.valid_to_s = -60;
  const SignerFiles expired(folder, "expired", authority.issue(issue));
  issue = {};
  issue.valid_from_s = 3600;
  const SignerFiles early(folder, "early", authority.issue(issue));
  issue = {};
  issue.usage = "keyEncipherment";
  const SignerFiles other_use(folder, "other-use", authority.issue(issue));
  issue = {};
  issue.key = Issue::Key::rsa_1024;
  const SignerFiles short_key(folder, "short", authority.issue(issue));
  const SignerFiles signer(folder, "good", good);
  const SignerFiles stranger(folder, "stranger", authority.issue({}));
  const std::string locked = folder.with("locked.pem", good.key_pem_with_password);
  const std::string packed = folder.with("packed.p12", good.pkcs12_with_password);
  const std::string wrong = folder.with("wrong", "close sesame\n");
  const std::string report = report_of(folder, "w-117-stress-relief");
  const std::string before = text_of(report);
  struct Row {
    std::string key, certificate, password, says;
  };
  for (const Row& row :
       std::vector<Row>{{expired.key, expired.certificate, "", "the certificate has expired"},
                        {early.key, early.certificate, "", "the certificate is not yet valid"},
                        {other_use.key, other_use.certificate, "", "its key usage does not allow signatures"},
                        {short_key.key, short_key.certificate, "", "its key is too short"},
                        {signer.key, stranger.certificate, "", "the certificate does not belong to the key"},
                        {locked, signer.certificate, "", "it is protected by a password"},
                        {locked, signer.certificate, wrong, "the password does not open it"},
                        {packed, "", wrong, "the password does not open it"},
                        {packed, "", "", "it is protected by a password"},
                        {signer.certificate, signer.certificate, "", "there is no key in this file"},
                        {signer.key, "", "", "there is no certificate in this file"}}) {
    std::vector<std::string> words{"sign",   report,         "--key",  row.key,
                                   "--name", "T. Lindqvist", "--role", "reviewed"};
    if (!row.certificate.empty()) words.insert(words.end(), {"--certificate", row.certificate});
    if (!row.password.empty()) words.insert(words.end(), {"--password-file", row.password});
    const Ran ran = run_soakwright(words);
    INFO(row.says << "\n" << ran.err);
    CHECK(ran.exit_code == 65);
    CHECK_THAT(ran.err, Contains(row.says));
    CHECK(text_of(report) == before);
  }
}

TEST_CASE("what is no report, or no longer one, is refused by sign and verify, and nothing is written") {
  const TemporaryFolder folder;
  const SignerFiles signer(folder, "signer", TestAuthority().issue({}));
  const std::string& bytes = signed_report().unsigned_bytes;
  const std::string whole = folder.with("whole.pdf", bytes);
  printed_by("qpdf --encrypt a b 256 -- '" + whole + "' '" + folder.file("encrypted.pdf") + "'");
  printed_by("qpdf '" + whole + "' '" + folder.file("rewritten.pdf") + "'");
  printed_by("qpdf --empty '" + folder.file("empty.pdf") + "'");
  static_cast<void>(folder.with("text.pdf", "not a PDF\n"));
  static_cast<void>(folder.with("pages.pdf", bytes.substr(0, bytes.find("%%EOF\n") + 6)));
  static_cast<void>(folder.with("cut.pdf", bytes.substr(0, bytes.find("startxref") - 10)));
  struct Row {
    const char* file;
    const char* says;
  };
  for (const Row& row : {Row{"encrypted.pdf", "the file is encrypted"}, Row{"rewritten.pdf", "not a report"},
                         Row{"empty.pdf", "not a report"}, Row{"text.pdf", "this is no PDF"},
                         Row{"pages.pdf", "not a report"}, Row{"cut.pdf", "the file is cut off"}}) {
    const std::string path = folder.file(row.file);
    const std::string before = text_of(path);
    const Ran signing = sign(path, signer, "T. Lindqvist", "reviewed");
    const Ran verifying = run_soakwright({"verify", path});
    INFO(row.file << "\n" << signing.err << verifying.err);
    CHECK(signing.exit_code == 65);
    CHECK(verifying.exit_code == 65);
    CHECK_THAT(signing.err, Contains(row.says));
    CHECK_THAT(verifying.err, Contains(row.says));
    CHECK(text_of(path) == before);
  }
  CHECK(run_soakwright({"verify", folder.file("none.pdf")}).exit_code == 66);
  CHECK(run_soakwright({"sign", whole, "--key", folder.file("none"), "--name", "A", "--role", "reviewed"})
            .exit_code == 66);
}

TEST_CASE("a draft is refused with the findings that need a disposition, and signed once each has one") {
  const TemporaryFolder folder;
  const SignerFiles signer(folder, "signer", TestAuthority().issue({}));
  const std::string draft = report_of(folder, kFailing, "draft.pdf");
  const Ran refused = sign(draft, signer, "T. Lindqvist", "reviewed");
  CHECK(refused.exit_code == 65);
  CHECK_THAT(refused.err,
             Contains("the report is a draft: no disposition of ") && Contains("stage-1.heating-rate"));
  CHECK_THAT(printed_by("pdfsig '" + draft + "'"), Contains("does not contain any signatures"));

  const std::string list = refused.err.substr(refused.err.find("disposition of ") + 15);
  std::vector<std::string> requirements;
  for (std::size_t at = 0; (at = list.find("stage-", at)) != std::string::npos; ++at) {
    const std::string id = list.substr(at, list.find_first_of(",;", at) - at);
    if (std::find(requirements.begin(), requirements.end(), id) == requirements.end())
      requirements.push_back(id);
  }
  REQUIRE_FALSE(requirements.empty());
  const std::string review = folder.with("review.toml", review_of(requirements));
  const std::string reviewed = report_of(folder, kFailing, "reviewed.pdf", {"--review", review});
  const Ran done = sign(reviewed, signer, "T. Lindqvist", "reviewed");
  INFO(done.err);
  CHECK(done.exit_code == 0);
  const Ran verified = run_soakwright({"verify", reviewed});
  INFO(verified.out);
  CHECK(verified.exit_code == 0);
}

TEST_CASE("a person signs once, and only where the report has a place for that name") {
  const TemporaryFolder folder;
  const SignerFiles signer(folder, "signer", TestAuthority().issue({}));
  const std::string report = report_of(folder, "w-117-stress-relief");
  REQUIRE(sign(report, signer, "T. Lindqvist", "reviewed").exit_code == 0);
  const std::string once = text_of(report);
  const Ran again = sign(report, signer, "T. Lindqvist", "reviewed");
  CHECK(again.exit_code == 65);
  CHECK_THAT(again.err, Contains("the place for 'Reviewed by' is signed already"));
  CHECK(text_of(report) == once);
  const Ran role = sign(report, signer, "T. Lindqvist", "approved");
  CHECK(role.exit_code == 64);
  CHECK_THAT(role.err, Contains("--role is performed, reviewed or witnessed, not 'approved'"));
}
