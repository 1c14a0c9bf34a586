// SPDX-License-Identifier: GPL-3.0-or-later
// The signatures in a report, one for each revision behind the evidence, and whether each revision adds a
// signature and nothing else.
//
// What a later revision may do to a page that somebody signed is decided here: put one visible signature into
// a box that waits for it. Anything else is a change.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/pdf_file.h"

namespace soakwright::signing {

struct FoundSignature {
  std::size_t revision = 0;
  /// Why the revision is no signature of Soakwright's, or does more than sign. Empty where it is one.
  std::string irregular;
  Person::Role role = Person::Role::performed;
  std::string name;
  std::int64_t signed_s = 0;
  std::string set_up;        ///< what its field was printed with
  std::size_t box = 0;       ///< index into TakenEvidence::boxes
  std::size_t contents = 0;  ///< of the '<' before the value
  std::size_t behind = 0;    ///< of the byte behind the value's '>'
  std::string value;         ///< DER, without padding
};

/// In the order in which they were made.
std::vector<FoundSignature> signatures_in(const evidence::PdfFile& file,
                                          const evidence::TakenEvidence& taken);

}  // namespace soakwright::signing
