// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/found_signature.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include "app/evidence/pdf_date.h"
#include "app/signing/signature_update.h"
#include "core/wording/sections/review_words.h"

namespace soakwright::signing {
namespace {

using evidence::ObjectNumber;
using evidence::PdfFile;
using evidence::PdfValue;

constexpr double kSameEdge_pt = 0.006;  // boxes are written with two digits

PdfValue without(PdfValue dictionary, const char* key) {
  dictionary.remove(key);
  return dictionary;
}

std::vector<PdfValue> list_of(const PdfFile& file, const PdfValue& holder, const char* key,
                              std::size_t revision) {
  const auto list = file.entry(holder, key, revision);
  return list && list->is(PdfValue::Kind::array) ? list->items : std::vector<PdfValue>{};
}

/// The one reference that `now` has at its end and `before` has not. Returns nullopt if that is not the
/// difference.
std::optional<ObjectNumber> one_more(const std::vector<PdfValue>& before, const std::vector<PdfValue>& now) {
  if (now.size() != before.size() + 1 || !std::equal(before.begin(), before.end(), now.begin()))
    return std::nullopt;
  if (!now.back().is(PdfValue::Kind::reference)) return std::nullopt;
  return now.back().object;
}

/// Reads one revision; each step says what is wrong, or nothing.
class RevisionReader {
 public:
  RevisionReader(const PdfFile& file, const evidence::TakenEvidence& taken, std::size_t revision,
                 FoundSignature& found)
      : file_(file), taken_(taken), now_(revision), found_(found) {}

  std::string read() {
    if (std::string wrong = read_form(); !wrong.empty()) return wrong;
    if (std::string wrong = read_widget(); !wrong.empty()) return wrong;
    if (std::string wrong = read_page(); !wrong.empty()) return wrong;
    if (std::string wrong = read_objects(); !wrong.empty()) return wrong;
    return read_signature();
  }

 private:
  [[nodiscard]] const evidence::PdfRevision& revision() const { return file_.revisions()[now_]; }

  std::string read_form() {
    const auto before = file_.catalog(now_ - 1);
    const auto after = file_.catalog(now_);
    const PdfValue* root = revision().trailer.find("Root");
    const PdfValue* old_root = file_.revisions()[now_ - 1].trailer.find("Root");
    if (!before || !after || root == nullptr || old_root == nullptr || !(*root == *old_root))
      return "the catalogue cannot be read";
    if (!(without(*before, "AcroForm") == without(*after, "AcroForm")))
      return "the catalogue has been changed";
    root_ = root->object;
    const auto old_form = file_.entry(*before, "AcroForm", now_ - 1);
    const auto form = file_.entry(*after, "AcroForm", now_);
    if (!form || form->keys != std::vector<std::string>{"Fields", "SigFlags"}) return "it adds no signature";
    const auto widget =
        one_more(old_form ? list_of(file_, *old_form, "Fields", now_ - 1) : std::vector<PdfValue>{},
                 list_of(file_, *form, "Fields", now_));
    if (!widget) return "it adds no signature";
    widget_ = *widget;
    return {};
  }

  std::string read_widget() {
    const auto widget = file_.object(widget_, now_);
    const std::vector<std::string> keys{"Type", "Subtype", "FT", "T", "V", "P", "Rect", "F", "AP"};
    if (!widget || widget->keys != keys) return "its field is not as `soakwright sign` makes it";
    const PdfValue& value = *widget->find("V");
    const PdfValue& page = *widget->find("P");
    if (!widget->find("FT")->is_name("Sig") || !widget->find("Subtype")->is_name("Widget") ||
        !value.is(PdfValue::Kind::reference) || !page.is(PdfValue::Kind::reference))
      return "its field is not as `soakwright sign` makes it";
    signature_ = value.object;
    page_ = page.object;
    const auto pages = file_.pages(now_);
    const PdfValue& rectangle = *widget->find("Rect");
    for (std::size_t i = 0; i < taken_.boxes.size(); ++i) {
      const evidence::SignatureBox& box = taken_.boxes[i];
      if (box.page >= pages.size() || pages[box.page] != page_ || rectangle.items.size() != box.box.size())
        continue;
      bool same = true;
      for (std::size_t edge = 0; edge < box.box.size(); ++edge) {
        const auto at = rectangle.items[edge].real();
        same = same && at && std::fabs(*at - box.box[edge]) < kSameEdge_pt;
      }
      if (!same) continue;
      found_.box = i;
      found_.role = box.role;
      if (widget->find("T")->text != field_name(box.role, now_ - evidence::kEvidenceRevision))
        return "its field is not as `soakwright sign` makes it";
      return {};
    }
    return "it stands in no place for a signature";
  }

  std::string read_page() {
    const auto before = file_.object(page_, now_ - 1);
    const auto after = file_.object(page_, now_);
    if (!before || !after) return "its page cannot be read";
    if (!(without(*before, "Annots") == without(*after, "Annots"))) return "it changes its page";
    if (one_more(list_of(file_, *before, "Annots", now_ - 1), list_of(file_, *after, "Annots", now_)) !=
        widget_)
      return "it changes what is on its page";
    return {};
  }

  std::string read_objects() {
    const PdfValue* size = file_.revisions()[now_ - 1].trailer.find("Size");
    const auto first_new = size != nullptr ? size->whole() : std::nullopt;
    for (const auto& [number, offset] : revision().offsets) {
      const bool is_new = first_new && number >= *first_new;
      if (!is_new && number != root_ && number != page_) return "it changes what was there before";
    }
    PdfValue before = file_.revisions()[now_ - 1].trailer;
    PdfValue after = revision().trailer;
    for (const char* key : {"Size", "Prev", "ID"}) {
      before.remove(key);
      after.remove(key);
    }
    return before == after ? std::string{} : "it changes the trailer";
  }

  std::string read_signature() {
    const auto signature = file_.object(signature_, now_);
    const auto offset = revision().offsets.find(signature_);
    const std::vector<std::string> keys{"Type",   "Filter", "SubFilter", "Name",    "M",
                                        "Reason", "SetUp",  "ByteRange", "Contents"};
    if (!signature || offset == revision().offsets.end() || signature->keys != keys ||
        !signature->find("SubFilter")->is_name("ETSI.CAdES.detached"))
      return "its signature is not as `soakwright sign` makes it";
    found_.name = signature->find("Name")->words();
    const auto moment = evidence::unix_time(*signature->find("M"));
    if (!moment || signature->find("Reason")->words() != person_role_text(found_.role))
      return "its signature is not as `soakwright sign` makes it";
    found_.signed_s = *moment;
    found_.set_up = signature->find("SetUp")->text;
    const PdfValue& range = *signature->find("ByteRange");
    std::vector<std::uint64_t> edges;
    for (const PdfValue& item : range.items)
      if (const auto edge = item.whole()) edges.push_back(*edge);
    if (edges.size() != 4 || range.items.size() != 4 || edges[0] != 0 || edges[1] <= offset->second ||
        edges[2] <= edges[1] || edges[2] >= revision().xref || edges[2] + edges[3] != revision().end)
      return "it does not cover all bytes before it";
    found_.contents = static_cast<std::size_t>(edges[1]);
    found_.behind = static_cast<std::size_t>(edges[2]);
    return read_value(*signature->find("Contents"));
  }

  /// The value between the signed bytes: lower-case digits, one DER value, zeros behind it.
  std::string read_value(const PdfValue& contents) {
    constexpr const char* kBadValue = "the value of the signature is not as `soakwright sign` writes it";
    const std::string gap = file_.bytes().substr(found_.contents, found_.behind - found_.contents);
    // Only the value itself, written as it is written here, stands in the gap: no other byte is unsigned.
    if (gap != contents.written() || !contents.is(PdfValue::Kind::string)) return kBadValue;
    const std::string& bytes = contents.text;
    if (bytes.size() < 4 || bytes[0] != '\x30' || bytes[1] != '\x82') return kBadValue;
    const std::size_t size =
        4 + 256U * static_cast<unsigned char>(bytes[2]) + static_cast<unsigned char>(bytes[3]);
    if (size > bytes.size() || bytes.find_first_not_of('\0', size) != std::string::npos) return kBadValue;
    found_.value = bytes.substr(0, size);
    return {};
  }

  const PdfFile& file_;
  const evidence::TakenEvidence& taken_;
  std::size_t now_;
  FoundSignature& found_;
  ObjectNumber root_ = 0, widget_ = 0, page_ = 0, signature_ = 0;
};

}  // namespace

std::vector<FoundSignature> signatures_in(const PdfFile& file, const evidence::TakenEvidence& taken) {
  std::vector<FoundSignature> signatures;
  std::set<std::size_t> used;
  for (std::size_t i = evidence::kEvidenceRevision + 1; i < file.revisions().size(); ++i) {
    FoundSignature found;
    found.revision = i;
    found.irregular = RevisionReader(file, taken, i, found).read();
    if (found.irregular.empty() && !used.insert(found.box).second)
      found.irregular = "it stands on another signature";
    signatures.push_back(std::move(found));
  }
  return signatures;
}

}  // namespace soakwright::signing
