// SPDX-License-Identifier: GPL-3.0-or-later
// Ways to change a report: each must be caught. ISO 32000-1, 12.8, and published attacks on PDF signatures
// (incremental saving, signature wrapping, universal forgery, shadow content; USENIX and NDSS papers of 2019
// and 2021, from memory).
#include <algorithm>
#include <cctype>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/pdf_syntax.h"
#include "app/evidence/pdf_update.h"
#include "app/signing/cms_signature.h"
#include "app/signing/found_signature.h"
#include "app/signing/signing.h"
#include "tests/app/signing/made_report.h"

using namespace soakwright;
using namespace soakwright::evidence;
using Catch::Matchers::Contains;

namespace {

/// Verifies without a report writer: the pages cannot be compared then, so everything else must catch the
/// change.
bool caught_by_verify(const std::string& bytes, std::string* why = nullptr) {
  const TemporaryFolder folder;
  const std::string path = folder.with("changed.pdf", bytes);
  const ReportPrinter none{[](const ReportContents&) -> Result<std::string> {
                             return Problem{ProblemKind::no_such_part, "", 0, "none", ""};
                           },
                           [](const SignatureWords&) -> Result<std::string> {
                             return Problem{ProblemKind::no_such_part, "", 0, "none", ""};
                           }};
  const auto lines = signing::verify_report({path, ""}, none);
  if (!lines) {
    if (why != nullptr) *why = lines.problems().front().text();
    return lines.problems().front().kind == ProblemKind::bad_input;
  }
  for (const CheckLine& line : lines.value())
    if (line.state == CheckLine::State::fails) {
      if (why != nullptr) *why = line.what + ": " + line.text;
      return true;
    }
  return false;
}

PdfFile file_of(const std::string& bytes) {
  auto read = PdfFile::read(bytes, "test.pdf");
  INFO((read ? std::string{} : read.problems().front().text()));
  REQUIRE(read);
  return std::move(read).value();
}

/// One byte changed at the text's first, second … or last place.
std::string changed(std::string bytes, const std::string& text, std::size_t into, bool last = false) {
  const std::size_t at = last ? bytes.rfind(text) : bytes.find(text);
  REQUIRE(at != std::string::npos);
  bytes[at + into] = static_cast<char>(bytes[at + into] ^ 1);
  return bytes;
}

std::string replaced(std::string bytes, const std::string& text, const std::string& by, bool last = false) {
  const std::size_t at = last ? bytes.rfind(text) : bytes.find(text);
  REQUIRE(at != std::string::npos);
  return bytes.replace(at, text.size(), by);
}

/// The report with an update behind it that `make` fills.
std::string updated(const std::string& bytes, const std::function<void(const PdfFile&, PdfUpdate&)>& make) {
  const PdfFile file = file_of(bytes);
  PdfUpdate update(file);
  make(file, update);
  return bytes + update.finish();
}

std::string with_catalog(const std::string& bytes, const std::function<void(PdfValue&)>& change) {
  return updated(bytes, [&](const PdfFile& file, PdfUpdate& update) {
    PdfValue catalog = *file.catalog();
    change(catalog);
    update.put(file.trailer().find("Root")->object, catalog);
  });
}

/// From the last signature's '<' to its '>'.
std::pair<std::size_t, std::size_t> last_value(const std::string& bytes) {
  const std::size_t begin = bytes.rfind("/Contents <") + 10;
  return {begin, bytes.find('>', begin)};
}

std::string upper_case_value(std::string bytes) {
  const auto [begin, end] = last_value(bytes);
  for (std::size_t i = begin; i < end; ++i)
    bytes[i] = static_cast<char>(std::toupper(static_cast<unsigned char>(bytes[i])));
  return bytes;
}

std::string value_at(std::string bytes, std::size_t from_end, char digit) {
  const auto [begin, end] = last_value(bytes);
  static_cast<void>(begin);
  bytes[end - from_end] = digit;
  return bytes;
}

struct Way {
  const char* what;
  std::function<std::string(const std::string&)> change;
};

const std::vector<Way>& ways() {
  static const std::vector<Way> all{
      {"the header", [](const std::string& b) { return changed(b, "%PDF-1.4", 7); }},
      {"the title", [](const std::string& b) { return changed(b, "/Title <feff", 14); }},
      {"the metadata", [](const std::string& b) { return changed(b, "CreatorTool", 14); }},
      {"a page's drawing", [](const std::string& b) { return changed(b, "stream\n", 2000); }},
      {"a page's size",
       [](const std::string& b) { return replaced(b, "[0 0 595.000000", "[0 0 595.000001"); }},
      {"a page's drawing named otherwise",
       [](const std::string& b) { return changed(b, "/Contents 1", 10); }},
      {"the order of pages", [](const std::string& b) { return changed(b, "/Kids", 9); }},
      {"a letter's width", [](const std::string& b) { return changed(b, "/W [0 [", 8); }},
      {"a letter's shape", [](const std::string& b) { return changed(b, "/Length1", 120); }},
      {"the log inside", [](const std::string& b) { return changed(b, "text#2fcsv", 400); }},
      {"a file's checksum", [](const std::string& b) { return changed(b, "/CheckSum <", 12); }},
      {"a file's date", [](const std::string& b) { return changed(b, "/ModDate <", 30); }},
      {"a file's name", [](const std::string& b) { return changed(b, "/UF <feff", 12); }},
      {"a file's relationship",
       [](const std::string& b) {
         return replaced(b, "/AFRelationship /Source", "/AFRelationship /Sourcf");
       }},
      {"the list of files", [](const std::string& b) { return changed(b, "/Files [", 40); }},
      {"the place of a signature", [](const std::string& b) { return changed(b, "/Boxes [", 60); }},
      {"the identifier", [](const std::string& b) { return changed(b, "/ID [<", 8); }},
      {"an offset in the first table",
       [](const std::string& b) { return replaced(b, "0000000015 00000 n", "0000000016 00000 n"); }},
      {"an offset in the last table",
       [](const std::string& b) { return changed(b, " 00000 n \ntrailer", 1, true); }},
      {"where the last table starts",
       [](const std::string& b) { return changed(b, "startxref\n", 11, true); }},
      {"a signer's name", [](const std::string& b) { return changed(b, "/Name <feff", 14); }},
      {"the last signer's name", [](const std::string& b) { return changed(b, "/Name <feff", 14, true); }},
      {"the time of signing", [](const std::string& b) { return changed(b, "/M <", 20, true); }},
      {"the role", [](const std::string& b) { return changed(b, "/Reason <feff", 16, true); }},
      {"the range that is signed",
       [](const std::string& b) { return changed(b, "/ByteRange [0 ", 15, true); }},
      {"the range of the first signature",
       [](const std::string& b) { return changed(b, "/ByteRange [0 ", 15); }},
      {"where a signature stands", [](const std::string& b) { return changed(b, "/Rect [", 8, true); }},
      {"whether a signature is shown",
       [](const std::string& b) { return replaced(b, "/F 132", "/F 134", true); }},
      {"the words of a signature",
       [](const std::string& b) { return changed(b, "/Subtype /Form", 300, true); }},
      {"which signature a field has",
       [](const std::string& b) { return changed(b, "/FT /Sig /T", 20, true); }},
      {"a byte behind the end", [](const std::string& b) { return b + " "; }},
      {"a line behind the end", [](const std::string& b) { return b + "\n"; }},
      {"a comment behind the end", [](const std::string& b) { return b + "% seen\n"; }},
      {"a second end behind the end", [](const std::string& b) { return b + "startxref\n15\n%%EOF\n"; }},
      {"the last byte cut off", [](const std::string& b) { return b.substr(0, b.size() - 1); }},
      {"the last hundred bytes cut off", [](const std::string& b) { return b.substr(0, b.size() - 100); }},
      {"half of it", [](const std::string& b) { return b.substr(0, b.size() / 2); }},
      {"a byte taken out",
       [](const std::string& b) {
         std::string c = b;
         return c.erase(5000, 1);
       }},
      {"a byte put in",
       [](const std::string& b) {
         std::string c = b;
         return c.insert(5000, 1, ' ');
       }},
      {"a byte put in before the last table",
       [](const std::string& b) {
         std::string c = b;
         return c.insert(c.rfind("xref\n", c.rfind("startxref") - 1), 1, ' ');
       }},
      {"an update that changes nothing",
       [](const std::string& b) { return with_catalog(b, [](PdfValue&) {}); }},
      {"an update with another list of files",
       [](const std::string& b) { return with_catalog(b, [](PdfValue& c) { c.remove("Names"); }); }},
      {"an update with other facts",
       [](const std::string& b) { return with_catalog(b, [](PdfValue& c) { c.remove("PieceInfo"); }); }},
      {"an update that runs a script",
       [](const std::string& b) {
         return with_catalog(b, [](PdfValue& c) { c.set("OpenAction", PdfValue::of_name("X")); });
       }},
      {"an update without the signatures",
       [](const std::string& b) { return with_catalog(b, [](PdfValue& c) { c.remove("AcroForm"); }); }},
      {"an update with another drawing of page 1",
       [](const std::string& b) {
         return updated(b, [](const PdfFile& file, PdfUpdate& update) {
           const ObjectNumber page = file.pages().front();
           update.put_stream(file.object(page)->find("Contents")->object, PdfValue::of_dictionary(),
                             "0 0 100 100 re f");
         });
       }},
      {"an update that lays something over page 1",
       [](const std::string& b) {
         return updated(b, [](const PdfFile& file, PdfUpdate& update) {
           const ObjectNumber number = file.pages().front();
           PdfValue page = *file.object(number);
           const ObjectNumber note = update.new_number();
           PdfValue annotation = PdfValue::of_dictionary();
           annotation.set("Subtype", PdfValue::of_name("FreeText"));
           update.put(note, annotation);
           page.set("Annots", PdfValue::of_array({PdfValue::of_reference(note)}));
           update.put(number, page);
         });
       }},
      {"an update with another log",
       [](const std::string& b) {
         return updated(b, [](const PdfFile& file, PdfUpdate& update) {
           for (ObjectNumber number = 1; number < file.size(); ++number) {
             const auto stream = file.stream(number);
             if (!stream || stream->dictionary.find("Params") == nullptr) continue;
             update.put_stream(number, stream->dictionary, stream->stored);
             return;
           }
         });
       }},
      {"the value in capital letters", upper_case_value},
      {"something in the room behind the value", [](const std::string& b) { return value_at(b, 3, '1'); }},
      {"the last digit of the room", [](const std::string& b) { return value_at(b, 1, '1'); }},
      {"a space in the room", [](const std::string& b) { return value_at(b, 5, ' '); }},
      {"the stated length of the value",
       [](const std::string& b) {
         const auto [begin, end] = last_value(b);
         static_cast<void>(end);
         std::string c = b;
         c[begin + 8] = c[begin + 8] == '0' ? '1' : '0';
         return c;
       }},
      {"no value at all",
       [](const std::string& b) {
         const auto [begin, end] = last_value(b);
         std::string c = b;
         std::fill(c.begin() + static_cast<std::ptrdiff_t>(begin) + 1,
                   c.begin() + static_cast<std::ptrdiff_t>(end), '0');
         return c;
       }},
      {"the value of another signature",
       [](const std::string& b) {
         const std::size_t first = b.find("/Contents <30") + 10;
         const auto [begin, end] = last_value(b);
         const std::size_t size = std::min(end - begin, b.find('>', first) - first) - 1;
         std::string c = b;
         return c.replace(begin + 1, size, b, first + 1, size);
       }},
      {"the second signature taken out",
       [](const std::string& b) {
         const PdfFile file = file_of(b);
         const auto& two = file.revisions()[3];
         std::string c = b;
         return c.erase(two.begin, two.end - two.begin);
       }},
      {"the first two signatures the other way round",
       [](const std::string& b) {
         const PdfFile file = file_of(b);
         const auto& one = file.revisions()[2];
         const auto& two = file.revisions()[3];
         return b.substr(0, one.begin) + b.substr(two.begin, two.end - two.begin) +
                b.substr(one.begin, one.end - one.begin) + b.substr(two.end);
       }},
  };
  return all;
}

}  // namespace

TEST_CASE("a signed report that nobody touched holds") {
  CHECK_FALSE(caught_by_verify(signed_report().bytes));
}

TEST_CASE("each way to change a signed report is caught, without looking at the pages") {
  CHECK(ways().size() >= 50);
  for (const Way& way : ways()) {
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

TEST_CASE("damaged reports are read to the end without a fault, whatever comes out") {
  std::mt19937 random(20310402);
  const std::string& whole = signed_report().bytes;
  std::size_t read = 0;
  for (int round = 0; round < 1500; ++round) {
    std::string bytes = whole;
    for (auto n = 1 + random() % 6; n > 0; --n) {
      // Mostly where the structure is: near the ends of revisions.
      const std::size_t at =
          random() % 3 == 0 ? random() % bytes.size() : bytes.size() - 1 - random() % 60'000;
      switch (random() % 5) {
        case 0:
          bytes.erase(at, 1 + random() % 40);
          break;
        case 1:
          bytes.insert(at, 1 + random() % 40, "[<(/%0"[random() % 6]);
          break;
        case 2:
          bytes.insert(at, bytes, random() % bytes.size(), 1 + random() % 400);
          break;
        default:
          bytes[at] = static_cast<char>(random() % 256);
      }
    }
    const auto file = PdfFile::read(bytes, "damaged.pdf");
    if (!file) continue;
    const auto taken = evidence_of(file.value(), "damaged.pdf");
    if (!taken) continue;
    ++read;
    for (const signing::FoundSignature& found : signing::signatures_in(file.value(), taken.value()))
      CHECK(found.value.size() < bytes.size());
  }
  CHECK(read > 0);
}

TEST_CASE("values that nest too deep, and tables that name each other, are refused") {
  const std::string deep(100'000, '[');
  CHECK_FALSE(PdfSyntax(deep, 0).value());
  const std::string turning =
      "%PDF-1.4\nxref\n0 1\n0000000000 65535 f \ntrailer\n<< /Size 1 /Prev 9 >>\nstartxref\n9\n%%EOF\n";
  CHECK_FALSE(PdfFile::read(turning, "turning.pdf"));
  CHECK_FALSE(PdfFile::read("%PDF-1.4\nstartxref\n99999999999999\n%%EOF\n", "far.pdf"));
  CHECK_FALSE(PdfFile::read("", "empty.pdf"));
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
