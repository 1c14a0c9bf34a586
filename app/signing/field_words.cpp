// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/field_words.h"

#include <string_view>

#include "app/evidence/pdf_date.h"
#include "app/signing/signature_update.h"
#include "core/wording/sections/review_words.h"

namespace soakwright::signing {

std::vector<std::string> fonts_in(std::string_view document) {
  constexpr std::string_view kKey = "/BaseFont /";
  std::vector<std::string> names;
  for (std::size_t at = 0; (at = document.find(kKey, at)) != std::string_view::npos;) {
    at += kKey.size();
    names.emplace_back(document.substr(at, document.find_first_of("\n/> ", at) - at));
  }
  return names;
}

SignatureWords field_words(const evidence::SignatureBox& box, const std::string& name, std::int64_t signed_s,
                           const std::string& subject, const std::string& issuer) {
  SignatureWords words;
  words.lines = {person_role_text(box.role) + ' ' + name, evidence::utc_text(signed_s), "Certificate of "};
  words.lines.back().append(subject).append(", issued by ").append(issuer);
  words.width_pt = box.box[2] - box.box[0];
  words.height_pt = box.box[3] - box.box[1];
  return words;
}

std::string printing_set_up(const evidence::TakenEvidence& taken) {
  std::string set_up = taken.version;
  return set_up.append(", ").append(taken.set_up).append(", ").append(taken.deflate);
}

Result<FieldAgain> field_again(const SignatureWords& words, const evidence::PdfFile& file,
                               const FoundSignature& found, const evidence::SignatureBox& box,
                               std::size_t number, const ReportPrinter& printer) {
  const auto printed = printer.signature(words);
  if (!printed) return printed.problems();
  const auto page = evidence::PdfFile::read(printed.value(), "");
  if (!page) return page.problems();
  const std::size_t start = file.revisions()[found.revision - 1].end;
  const auto before = evidence::PdfFile::read(file.bytes().substr(0, start), "");
  if (!before) return before.problems();
  const std::size_t room = (found.behind - found.contents - 2) / 2;
  const auto again = with_signature_field(
      before.value(), {box, found.name, found.signed_s, number, found.set_up}, page.value(), room);
  if (!again) return again.problems();
  const std::size_t end = file.revisions()[found.revision].end;
  const std::string_view there = std::string_view(file.bytes()).substr(0, end);
  const std::string_view here = again.value().bytes;
  const bool same = again.value().contents == found.contents && here.size() == there.size() &&
                    here.substr(0, found.contents) == there.substr(0, found.contents) &&
                    here.substr(found.behind) == there.substr(found.behind);
  if (same) return FieldAgain::same;
  return fonts_in(here.substr(start)) == fonts_in(there.substr(start)) ? FieldAgain::other
                                                                       : FieldAgain::other_fonts;
}

}  // namespace soakwright::signing
