// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/signature_update.h"

#include <cstdio>
#include <utility>

#include "app/evidence/pdf_date.h"
#include "app/evidence/pdf_update.h"
#include "app/signing/imported_page.h"
#include "core/procedure/job/job_words.h"
#include "core/wording/sections/review_words.h"

namespace soakwright::signing {
namespace {

using evidence::ObjectNumber;
using evidence::PdfFile;
using evidence::PdfUpdate;
using evidence::PdfValue;

Problem fault(const std::string& what) {
  return {ProblemKind::fault, "", 0, "the signature cannot be written: " + what,
          "please report this, with the report"};
}

constexpr const char* kOpenRange = "[0 9999999999 9999999999 9999999999]";

/// Print, and locked: nothing moves it (ISO 32000-1, 12.5.3).
constexpr std::uint64_t kFlags = 4 + 128;
/// There are signatures, and the file may only be appended to (12.7.2).
constexpr std::uint64_t kSignatureFlags = 1 + 2;

PdfValue signature_of(const SignatureField& field, std::size_t room) {
  PdfValue open = PdfValue::of_whole(9'999'999'999);
  PdfValue signature = PdfValue::of_dictionary();
  signature.set("Type", PdfValue::of_name("Sig"));
  signature.set("Filter", PdfValue::of_name("Adobe.PPKLite"));
  signature.set("SubFilter", PdfValue::of_name("ETSI.CAdES.detached"));
  signature.set("Name", PdfValue::of_words(field.name));
  signature.set("M", evidence::pdf_date(field.signed_s));
  signature.set("Reason", PdfValue::of_words(person_role_text(field.box.role)));
  signature.set("SetUp", PdfValue::of_bytes(field.set_up));
  signature.set("ByteRange", PdfValue::of_array({PdfValue::of_whole(0), open, open, open}));
  signature.set("Contents", PdfValue::of_bytes(std::string(room, '\0')));
  return signature;
}

PdfValue widget_of(const SignatureField& field, ObjectNumber signature, ObjectNumber page,
                   ObjectNumber form) {
  PdfValue appearance = PdfValue::of_dictionary();
  appearance.set("N", PdfValue::of_reference(form));
  PdfValue rectangle = PdfValue::of_array();
  for (const double edge : field.box.box) rectangle.items.push_back(PdfValue::of_real(edge));
  PdfValue widget = PdfValue::of_dictionary();
  widget.set("Type", PdfValue::of_name("Annot"));
  widget.set("Subtype", PdfValue::of_name("Widget"));
  widget.set("FT", PdfValue::of_name("Sig"));
  widget.set("T", PdfValue::of_bytes(field_name(field.box.role, field.number)));
  widget.set("V", PdfValue::of_reference(signature));
  widget.set("P", PdfValue::of_reference(page));
  widget.set("Rect", std::move(rectangle));
  widget.set("F", PdfValue::of_whole(kFlags));
  widget.set("AP", std::move(appearance));
  return widget;
}

/// The page's or form's list with one more in it.
PdfValue longer(const PdfFile& report, const PdfValue& holder, const char* key, ObjectNumber one) {
  auto list = report.entry(holder, key);
  PdfValue items = list && list->is(PdfValue::Kind::array) ? std::move(*list) : PdfValue::of_array();
  items.items.push_back(PdfValue::of_reference(one));
  return items;
}

}  // namespace

std::string field_name(Person::Role role, std::size_t number) {
  return std::string(kPersonRoleWords.of(role)) + '-' + std::to_string(number);
}

std::string PreparedReport::signed_bytes() const {
  const std::size_t behind = contents + 2 * room + 2;
  std::string data;
  data.reserve(bytes.size());
  data.append(bytes, 0, contents);
  data.append(bytes, behind, std::string::npos);
  return data;
}

bool PreparedReport::put_value(const std::string& der) {
  if (der.size() > room) return false;
  const std::string digits = PdfValue::of_bytes(der).written();  // <…>
  bytes.replace(contents + 1, digits.size() - 2, digits, 1, digits.size() - 2);
  return true;
}

Result<PreparedReport> with_signature_field(const PdfFile& report, const SignatureField& field,
                                            const PdfFile& words, std::size_t room) {
  auto catalog = report.catalog();
  const PdfValue* root = report.trailer().find("Root");
  const std::vector<ObjectNumber> pages = report.pages();
  if (!catalog || root == nullptr || field.box.page >= pages.size()) return fault("the page is not there");
  const ObjectNumber page_number = pages[field.box.page];
  auto page = report.object(page_number);
  if (!page) return fault("the page cannot be read");

  PdfUpdate update(report);
  const ObjectNumber signature = update.new_number();
  const ObjectNumber widget = update.new_number();
  const std::size_t signature_at = update.position();
  update.put(signature, signature_of(field, room));
  const auto form = import_page(words, update);
  if (!form) return fault("its words cannot be placed");
  update.put(widget, widget_of(field, signature, page_number, *form));
  page->set("Annots", longer(report, *page, "Annots", widget));
  update.put(page_number, *page);
  auto fields = report.entry(*catalog, "AcroForm");
  PdfValue form_fields = fields ? std::move(*fields) : PdfValue::of_dictionary();
  form_fields.set("Fields", longer(report, form_fields, "Fields", widget));
  form_fields.set("SigFlags", PdfValue::of_whole(kSignatureFlags));
  catalog->set("AcroForm", std::move(form_fields));
  update.put(root->object, *catalog);

  PreparedReport prepared;
  prepared.room = room;
  prepared.bytes = report.bytes() + update.finish();
  constexpr const char* kContents = "/Contents <";
  const std::size_t contents = prepared.bytes.find(kContents, signature_at);
  const std::size_t range = prepared.bytes.find(kOpenRange, signature_at);
  if (contents == std::string::npos || range == std::string::npos) return fault("its place is lost");
  prepared.contents = contents + std::string(kContents).size() - 1;
  const std::size_t behind = prepared.contents + 2 * room + 2;
  char text[64];
  const int size = std::snprintf(text, sizeof text, "[0 %zu %zu %zu", prepared.contents, behind,
                                 prepared.bytes.size() - behind);
  const std::size_t width = std::string(kOpenRange).size();
  std::string closed(text, static_cast<std::size_t>(size));
  closed.append(width - 1 - closed.size(), ' ');
  prepared.bytes.replace(range, width, closed + ']');
  return prepared;
}

}  // namespace soakwright::signing
