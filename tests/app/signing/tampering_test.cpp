// SPDX-License-Identifier: GPL-3.0-or-later
// Ways to change a report: each must be caught. ISO 32000-1, 12.8, and published attacks on PDF signatures
// (incremental saving, signature wrapping, universal forgery, shadow content; USENIX and NDSS papers of 2019
// and 2021, from memory).
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "app/evidence/evidence_reader.h"
#include "app/signing/cms_signature.h"
#include "app/signing/found_signature.h"
#include "tests/app/signing/made_report.h"
#include "tests/app/signing/tampered_report.h"
#include "tests/app/signing/ways_to_tamper.h"

using namespace soakwright;
using namespace soakwright::evidence;

TEST_CASE("a signed report that nobody touched holds") {
  CHECK_FALSE(caught_by_verify(signed_report().bytes));
}

TEST_CASE("each way to change a signed report is caught, without looking at the pages") {
  CHECK(ways_to_tamper().size() >= 50);
  for (const Way& way : ways_to_tamper()) {
    const std::string bytes = way.change(signed_report().bytes);
    INFO(way.what);
    CHECK(bytes != signed_report().bytes);
    CHECK(caught_by_verify(bytes));
  }
}

TEST_CASE("pdfsig too says nothing good of a signed report with a changed byte or one behind the end") {
  const TemporaryFolder folder;
  const std::string& whole = signed_report().bytes;
  const auto last_holds = [&](const std::string& bytes) {
    const std::string path = folder.with("changed.pdf", bytes);
    const std::string said = printed_by("pdfsig -nocert '" + path + "'");
    const std::size_t last = said.find("Signature #3");
    return last != std::string::npos && said.find("Signature is Valid", last) != std::string::npos &&
           said.find("Total document signed", last) != std::string::npos;
  };
  CHECK(last_holds(whole));
  CHECK_FALSE(last_holds(whole + " "));
  const auto [begin, end] = last_value(whole);
  for (std::size_t at = 20; at < whole.size(); at += 9973) {
    if (at >= begin && at <= end) continue;
    std::string bytes = whole;
    bytes[at] = static_cast<char>(bytes[at] ^ 4);
    INFO("byte " << at);
    CHECK_FALSE(last_holds(bytes));
  }
}

TEST_CASE("a changed bit anywhere in a signed report is caught") {
  const std::string& whole = signed_report().bytes;
  for (std::size_t at = 3; at < whole.size(); at += 4001) {
    std::string bytes = whole;
    bytes[at] = static_cast<char>(bytes[at] ^ (1 << (at % 7)));
    INFO("byte " << at);
    CHECK(caught_by_verify(bytes));
  }
}

TEST_CASE("a changed digit anywhere in the last signature's value is caught") {
  const std::string& whole = signed_report().bytes;
  const PdfFile file = file_of(whole);
  const auto taken = evidence_of(file, "signed.pdf");
  REQUIRE(taken);
  const auto signatures = signing::signatures_in(file, taken.value());
  REQUIRE(signatures.size() == 3);
  const signing::FoundSignature& last = signatures.back();
  const std::string data = whole.substr(0, last.contents) + whole.substr(last.behind);
  REQUIRE(signing::check_cms(last.value, data, last.signed_s, last.signed_s, {}).broken.empty());
  std::vector<std::size_t> missed;
  for (std::size_t at = 0; at < last.value.size(); ++at)
    for (const int bit : {0x01, 0x10}) {
      std::string value = last.value;
      value[at] = static_cast<char>(value[at] ^ bit);
      if (signing::check_cms(value, data, last.signed_s, last.signed_s, {}).broken.empty())
        missed.push_back(at);
    }
  CHECK(missed == std::vector<std::size_t>{});
}
