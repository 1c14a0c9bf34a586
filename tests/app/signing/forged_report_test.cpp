// SPDX-License-Identifier: GPL-3.0-or-later
// Reports that somebody made himself, with the right shape and the wrong contents.
#include <algorithm>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/evidence_update.h"
#include "tests/app/signing/made_report.h"
#include "tests/app/signing/tampered_report.h"

using namespace soakwright;
using namespace soakwright::evidence;
using Catch::Matchers::Contains;

namespace {

/// An unsigned report made anew from the pages of one and the files of another.
std::string forged(const std::string& pages_of, const std::string& files_of,
                   const std::function<void(std::vector<AttachedFile>&)>& change) {
  const PdfFile pages = file_of(pages_of);
  const PdfFile files = file_of(files_of);
  auto taken = evidence_of(files, "files.pdf");
  REQUIRE(taken);
  const auto own = evidence_of(pages, "pages.pdf");
  REQUIRE(own);
  ReportContents contents;
  contents.files = taken.value().files;
  contents.options.program_version = taken.value().version;
  change(contents.files);
  const PrintedReport printed{pages_of.substr(0, pages.revisions().front().end), own.value().boxes,
                              own.value().set_up, own.value().issued, own.value().created_s};
  auto made = with_evidence(printed, contents, packed(contents.files));
  REQUIRE(made);
  return std::move(made).value();
}

AttachedFile& file_in(std::vector<AttachedFile>& files, AttachedFile::Kind kind) {
  return *std::find_if(files.begin(), files.end(),
                       [kind](const AttachedFile& one) { return one.kind == kind; });
}

}  // namespace

TEST_CASE("a forged report without a signature contradicts itself, and is neither verified nor signed") {
  using Kind = AttachedFile::Kind;
  using Files = std::vector<AttachedFile>;
  const TemporaryFolder folder;
  const SignerFiles signer(folder, "signer", TestAuthority().issue({}));
  const std::string& good = signed_report().unsigned_bytes;
  const std::string failing = text_of(report_of(folder, "w-118-late-and-dipping", "failing.pdf"));
  struct Row {
    const char* what;
    const char* says;
    std::string bytes;
  };
  for (const Row& row : std::vector<Row>{
           {"made again as it was", "There is no signature", forged(good, good, [](Files&) {})},
           {"the verdict turned round", "another result",
            forged(failing, failing,
                   [](Files& files) {
                     std::string& result = file_in(files, Kind::result).bytes;
                     result = replaced(result, "\"verdict\": \"not met\"", "\"verdict\": \"met\"", true);
                   })},
           {"the pages of another report", "not what the result gives", forged(good, failing, [](Files&) {})},
           {"a reading changed", "another result",
            forged(failing, failing,
                   [](Files& files) {
                     std::string& log = file_in(files, Kind::log).bytes;
                     const std::size_t at = log.find(".", log.size() / 2);
                     log[at + 1] = log[at + 1] == '9' ? '8' : '9';
                   })},
           {"a limit changed", "another result",
            forged(failing, failing,
                   [](Files& files) {
                     std::string& procedure = file_in(files, Kind::procedure).bytes;
                     procedure += "\n# seen\n";
                   })},
           {"procedure and job swapped", "cannot be evaluated again",
            forged(good, good,
                   [](Files& files) {
                     std::swap(file_in(files, Kind::procedure).bytes, file_in(files, Kind::job).bytes);
                   })},
           {"the job left out", "another result",
            forged(good, good,
                   [](Files& files) {
                     files.erase(std::find_if(files.begin(), files.end(),
                                              [](const AttachedFile& one) { return one.kind == Kind::job; }));
                   })},
           {"two results", "two files of the kind 'result'",
            forged(good, good, [](Files& files) { files.push_back(file_in(files, Kind::result)); })},
           {"no result", "the log or the result is not inside",
            forged(good, good, [](Files& files) { files.pop_back(); })},
           {"a name that leads out of its folder", "no proper name",
            forged(good, good, [](Files& files) { file_in(files, Kind::log).name = "../log.csv"; })}}) {
    const std::string path = folder.with("forged.pdf", row.bytes);
    const Ran verified = run_soakwright({"verify", path});
    INFO(row.what << "\n" << verified.out << verified.err);
    CHECK_THAT(verified.out + verified.err, Contains(row.says));
    const bool sound = row.bytes == good;
    CHECK((verified.exit_code == 1 || verified.exit_code == 65) == !sound);
    const Ran ran = sign(path, signer, "T. Lindqvist", "reviewed", {"--out", folder.file("signed.pdf")});
    CHECK((ran.exit_code == 65) == !sound);
  }
}
