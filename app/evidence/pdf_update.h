// SPDX-License-Identifier: GPL-3.0-or-later
// Appends to a PDF (incremental update, ISO 32000-1, 7.5.6): new objects and new versions of old ones, behind
// bytes that stay as they are.
#pragma once

#include <cstddef>
#include <map>
#include <string>
#include <string_view>

#include "app/evidence/pdf_file.h"
#include "app/evidence/pdf_value.h"

namespace soakwright::evidence {

class PdfUpdate {
 public:
  /// `base` must outlive this.
  explicit PdfUpdate(const PdfFile& base);

  /// A number that no object has.
  ObjectNumber new_number() { return next_++; }
  void put(ObjectNumber number, const PdfValue& value);
  /// `dictionary` gets its /Length here.
  void put_stream(ObjectNumber number, PdfValue dictionary, std::string_view stored);
  /// Where the next byte will be, in the whole file.
  [[nodiscard]] std::size_t position() const { return base_.bytes().size() + bytes_.size(); }
  /// Cross-reference table and trailer behind the objects; all bytes of the update. Call it once.
  std::string finish();

 private:
  void begin_object(ObjectNumber number);
  const PdfFile& base_;
  ObjectNumber next_;
  std::string bytes_;
  std::map<ObjectNumber, std::size_t> offsets_;
};

}  // namespace soakwright::evidence
