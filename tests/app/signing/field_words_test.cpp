// SPDX-License-Identifier: GPL-3.0-or-later
// What a signer puts on the page beside the signature: verify prints the words again from the signature.
#include "app/signing/field_words.h"

#include <ctime>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <dlfcn.h>

#include "app/evidence/evidence_reader.h"
#include "app/signing/cms_signature.h"
#include "app/signing/signature_update.h"
#include "app/signing/signing_key.h"
#include "core/report/pdf_border.h"
#include "tests/app/signing/made_report.h"

using namespace soakwright;
using namespace soakwright::signing;
using Catch::Matchers::Contains;

namespace {

/// A PDF of one page with the words, as the report writer makes it.
std::string printed(const SignatureWords& words) {
  void* module = dlopen(SOAKWRIGHT_PDF_MODULE, RTLD_NOW | RTLD_LOCAL);
  REQUIRE(module != nullptr);
  auto* const print = reinterpret_cast<PdfModulePrintSignature*>(dlsym(module, kPdfModulePrintSignature));
  REQUIRE(print != nullptr);
  std::string document;
  Problem problem;
  REQUIRE(print(&words, &document, &problem));
  return document;
}

/// A report signed by `O. Ferris` whose field shows `lines`, with a good signature over all of it.
std::string signed_with(const TemporaryFolder& folder, const SignerFiles& signer, std::int64_t signed_s,
                        const std::vector<std::string>& lines) {
  const auto file = evidence::PdfFile::read(signed_report().unsigned_bytes, "");
  REQUIRE(file);
  const auto taken = evidence::evidence_of(file.value(), "");
  REQUIRE(taken);
  const evidence::SignatureBox& box = taken.value().boxes.front();
  SignatureWords words = field_words(box, "O. Ferris", signed_s, "O. Ferris", "Brackwater Test Authority");
  for (std::size_t i = 0; i < lines.size(); ++i)
    if (!lines[i].empty()) words.lines[i] = lines[i];
  const auto page = evidence::PdfFile::read(printed(words), "");
  REQUIRE(page);
  auto prepared = with_signature_field(
      file.value(), {box, "O. Ferris", signed_s, 1, printing_set_up(taken.value())}, page.value(), 4000);
  REQUIRE(prepared);
  SignOrder order;
  order.key = signer.key;
  order.certificate = signer.certificate;
  const auto key = read_signing_key(order, signed_s);
  REQUIRE(key);
  REQUIRE(prepared.value().put_value(cms_signature(key.value(), prepared.value().signed_bytes())));
  return folder.with("forged.pdf", prepared.value().bytes);
}

}  // namespace

TEST_CASE("words on the page that are not those of the signature beside them are caught") {
  const TemporaryFolder folder;
  Issue issue;
  issue.name = "O. Ferris";
  const SignerFiles signer(folder, "signer", TestAuthority().issue(issue));
  const auto now_s = static_cast<std::int64_t>(std::time(nullptr));
  struct Row {
    const char* what;
    std::vector<std::string> lines;
    int exit_code;
  };
  for (const Row& row :
       {Row{"the words of the signature", {}, 0}, Row{"another name", {"Performed by T. Lindqvist"}, 1},
        Row{"another role", {"Witnessed by O. Ferris"}, 1},
        Row{"another time", {"", "2031-04-10 09:00:00 UTC"}, 1},
        Row{"another authority", {"", "", "Certificate of O. Ferris, issued by T. Lindqvist"}, 1}}) {
    const Ran ran = run_soakwright({"verify", signed_with(folder, signer, now_s, row.lines)});
    INFO(row.what << '\n' << ran.out << ran.err);
    CHECK(ran.exit_code == row.exit_code);
    CHECK_THAT(ran.out, Contains("intact, and covers everything before it"));
    CHECK_THAT(ran.out,
               Contains(row.exit_code == 0 ? "The page shows role, name, time and certificate"
                                           : "The words on the page are not those of this signature"));
  }
}

TEST_CASE("words that were printed with other fonts or another version are not compared") {
  const auto file = evidence::PdfFile::read(signed_report().unsigned_bytes, "");
  REQUIRE(file);
  CHECK(fonts_in("/BaseFont /A\n/BaseFont /B>>") == std::vector<std::string>{"A", "B"});
  const auto taken = evidence::evidence_of(file.value(), "");
  REQUIRE(taken);
  CHECK_THAT(printing_set_up(taken.value()), Catch::StartsWith(taken.value().version));
  CHECK_THAT(printing_set_up(taken.value()), Contains(taken.value().set_up));
}
