// SPDX-License-Identifier: GPL-3.0-or-later
// Any bytes as a report: the source files and signatures in it, or problems that say something. What is taken
// out lies within the file.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/pdf_file.h"
#include "app/signing/cms_frame.h"
#include "app/signing/field_words.h"
#include "app/signing/found_signature.h"

namespace {

using namespace soakwright;

void require(bool holds) {
  if (!holds) std::abort();
}

void require_said(const Problems& problems) {
  require(!problems.empty() && std::all_of(problems.begin(), problems.end(),
                                           [](const Problem& problem) { return !problem.what.empty(); }));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string bytes{reinterpret_cast<const char*>(data), size};
  const Result<evidence::PdfFile> file = evidence::PdfFile::read(bytes, "fuzzed.pdf");
  if (!file) {
    require_said(file.problems());
    return 0;
  }
  require(!file.value().revisions().empty() && file.value().trailing_bytes() <= size);
  (void)signing::fonts_in(file.value().bytes());
  const Result<evidence::TakenEvidence> taken = evidence::evidence_of(file.value(), "fuzzed.pdf");
  if (!taken) {
    require_said(taken.problems());
    return 0;
  }
  require(taken.value().file(AttachedFile::Kind::log) != nullptr);
  for (const signing::FoundSignature& found : signing::signatures_in(file.value(), taken.value())) {
    require(found.revision < file.value().revisions().size());
    if (!found.irregular.empty()) continue;
    require(found.contents < found.behind && found.behind <= size);
    (void)signing::plain_frame(found.value);
  }
  return 0;
}
