// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/pdf_update.h"

#include <cstdio>
#include <utility>

#include "app/evidence/md5.h"

namespace soakwright::evidence {

PdfUpdate::PdfUpdate(const PdfFile& base) : base_(base), next_(base.size()) {}

void PdfUpdate::begin_object(ObjectNumber number) {
  offsets_[number] = position();
  bytes_ += std::to_string(number) + " 0 obj\n";
}

void PdfUpdate::put(ObjectNumber number, const PdfValue& value) {
  begin_object(number);
  bytes_ += value.written() + "\nendobj\n";
}

void PdfUpdate::put_stream(ObjectNumber number, PdfValue dictionary, std::string_view stored) {
  dictionary.set("Length", PdfValue::of_whole(stored.size()));
  begin_object(number);
  bytes_ += dictionary.written() + "\nstream\n";
  bytes_ += stored;
  bytes_ += "\nendstream\nendobj\n";
}

std::string PdfUpdate::finish() {
  const std::size_t xref = position();
  PdfValue trailer = base_.trailer();
  const std::string identifier = md5_of(bytes_);
  bytes_ += "xref\n";
  for (auto at = offsets_.begin(); at != offsets_.end();) {
    auto end = at;
    ObjectNumber count = 0;
    while (end != offsets_.end() && end->first == at->first + count) {
      ++end;
      ++count;
    }
    bytes_ += std::to_string(at->first) + ' ' + std::to_string(count) + '\n';
    for (; at != end; ++at) {
      char line[32];
      std::snprintf(line, sizeof line, "%010zu 00000 n \n", at->second);
      bytes_ += line;
    }
  }
  trailer.set("Size", PdfValue::of_whole(next_));
  trailer.set("Prev", PdfValue::of_whole(base_.revisions().back().xref));
  // The first half names the document, the second its latest state (ISO 32000-1, 14.4).
  if (const PdfValue* id = trailer.find("ID"); id != nullptr && id->items.size() == 2) {
    PdfValue both = *id;
    both.items[1] = PdfValue::of_bytes(identifier);
    trailer.set("ID", std::move(both));
  }
  bytes_ += "trailer\n" + trailer.written() + "\nstartxref\n" + std::to_string(xref) + "\n%%EOF\n";
  return std::move(bytes_);
}

}  // namespace soakwright::evidence
