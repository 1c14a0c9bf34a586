// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/imported_page.h"

#include <map>
#include <utility>

namespace soakwright::signing {
namespace {

using evidence::ObjectNumber;
using evidence::PdfFile;
using evidence::PdfUpdate;
using evidence::PdfValue;

class Import {
 public:
  Import(const PdfFile& source, PdfUpdate& update) : source_(source), update_(update) {}

  /// The value with every reference leading to a copy.
  PdfValue copied(PdfValue value) {
    if (value.is(PdfValue::Kind::reference)) return PdfValue::of_reference(copy(value.object));
    for (PdfValue& item : value.items) item = copied(std::move(item));
    return value;
  }

  [[nodiscard]] bool sound() const { return sound_; }

 private:
  ObjectNumber copy(ObjectNumber number) {
    const auto known = numbers_.find(number);
    if (known != numbers_.end()) return known->second;
    const ObjectNumber own = update_.new_number();
    numbers_[number] = own;  // before its values are followed: they may lead back to it
    if (const auto stream = source_.stream(number)) {
      PdfValue dictionary = stream->dictionary;
      dictionary.remove("Length");
      update_.put_stream(own, copied(std::move(dictionary)), stream->stored);
    } else if (auto value = source_.object(number)) {
      update_.put(own, copied(std::move(*value)));
    } else {
      sound_ = false;
    }
    return own;
  }

  const PdfFile& source_;
  PdfUpdate& update_;
  std::map<ObjectNumber, ObjectNumber> numbers_;
  bool sound_ = true;
};

}  // namespace

std::optional<ObjectNumber> import_page(const PdfFile& source, PdfUpdate& update) {
  const auto pages = source.pages();
  if (pages.empty()) return std::nullopt;
  const auto page = source.object(pages.front());
  const auto resources = page ? source.entry(*page, "Resources") : std::nullopt;
  const PdfValue* box = page ? page->find("MediaBox") : nullptr;
  const PdfValue* contents = page ? page->find("Contents") : nullptr;
  if (!resources || box == nullptr || contents == nullptr || !contents->is(PdfValue::Kind::reference))
    return std::nullopt;
  const auto drawing = source.stream(contents->object);
  if (!drawing) return std::nullopt;
  Import import(source, update);
  PdfValue form = drawing->dictionary;
  form.set("Type", PdfValue::of_name("XObject"));
  form.set("Subtype", PdfValue::of_name("Form"));
  form.set("BBox", *box);
  form.set("Resources", import.copied(*resources));
  const ObjectNumber number = update.new_number();
  update.put_stream(number, std::move(form), drawing->stored);
  if (!import.sound()) return std::nullopt;
  return number;
}

}  // namespace soakwright::signing
