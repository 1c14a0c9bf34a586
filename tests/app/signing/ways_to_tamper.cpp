// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/signing/ways_to_tamper.h"

#include <algorithm>
#include <cctype>

#include <catch2/catch.hpp>

#include "app/evidence/pdf_update.h"
#include "tests/app/signing/tampered_report.h"

using namespace soakwright::evidence;

namespace {

/// One byte changed at the text's first, second … or last place.
std::string changed(std::string bytes, const std::string& text, std::size_t into, bool last = false) {
  const std::size_t at = last ? bytes.rfind(text) : bytes.find(text);
  REQUIRE(at != std::string::npos);
  bytes[at + into] = static_cast<char>(bytes[at + into] ^ 1);
  return bytes;
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

/// Something that is there says something else.
std::vector<Way> places_changed() {
  return {
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
  };
}

/// Bytes put in, taken out, or written behind the end.
std::vector<Way> bytes_more_or_less() {
  return {
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
  };
}

/// A later revision that a reader of PDF would follow.
std::vector<Way> updates_behind_it() {
  return {
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
  };
}

/// The value of a signature, and which one is where.
std::vector<Way> signatures_changed() {
  return {
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
}

}  // namespace

const std::vector<Way>& ways_to_tamper() {
  static const std::vector<Way> all = [] {
    std::vector<Way> ways;
    for (const auto& some :
         {places_changed(), bytes_more_or_less(), updates_behind_it(), signatures_changed()})
      ways.insert(ways.end(), some.begin(), some.end());
    return ways;
  }();
  return all;
}
