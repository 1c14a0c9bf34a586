// SPDX-License-Identifier: GPL-3.0-or-later
// Appends a signature field with its visible words to a report (ISO 32000-1, 12.7.4.5 and 12.8).
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>

#include "app/evidence/evidence_update.h"
#include "app/evidence/pdf_file.h"
#include "core/problems/problem.h"

namespace soakwright::signing {

struct SignatureField {
  evidence::SignatureBox box;
  std::string name;           ///< of the signer
  std::int64_t signed_s = 0;  ///< Unix time, of the signer's clock
  std::size_t number = 1;     ///< of the signature in the report
  std::string set_up;         ///< printing_set_up() of the program that prints the words
};

/// A report with a signature whose value is still to come.
struct PreparedReport {
  std::string bytes;
  std::size_t contents = 0;  ///< of the '<' before the value's digits
  std::size_t room = 0;      ///< bytes of a value; each takes two digits

  /// What is signed: all but the value between and with its brackets.
  [[nodiscard]] std::string signed_bytes() const;
  /// The value in its place, the rest of the room zero. False where it is too large.
  bool put_value(const std::string& der);
};

/// `words` is a PDF with one page: what the field shows.
Result<PreparedReport> with_signature_field(const evidence::PdfFile& report, const SignatureField& field,
                                            const evidence::PdfFile& words, std::size_t room);

/// "reviewed-2": the name of a signature field.
std::string field_name(Person::Role role, std::size_t number);

}  // namespace soakwright::signing
