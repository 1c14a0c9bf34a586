// SPDX-License-Identifier: GPL-3.0-or-later
// Reports that are damaged at random or made to lead a reader astray: read to the end or refused.
#include <random>
#include <string>

#include <catch2/catch.hpp>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/pdf_syntax.h"
#include "app/signing/found_signature.h"
#include "tests/app/signing/made_report.h"

using namespace soakwright;
using namespace soakwright::evidence;

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
