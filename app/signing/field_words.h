// SPDX-License-Identifier: GPL-3.0-or-later
// What a signature's field shows to a reader of the page, and whether it shows that.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "app/evidence/evidence_update.h"
#include "app/evidence/pdf_file.h"
#include "app/signing/found_signature.h"
#include "core/report/signature_words.h"
#include "core/report/signing_border.h"

namespace soakwright::signing {

/// Role and name, time, and whose certificate it is: "Reviewed by T. Lindqvist", "2031-04-10 09:12:00 UTC", …
SignatureWords field_words(const evidence::SignatureBox& box, const std::string& name, std::int64_t signed_s,
                           const std::string& subject, const std::string& issuer);

/// Names of the fonts, in the order in which the document holds them: Qt's own, which depends on where the
/// fonts are installed.
std::vector<std::string> fonts_in(std::string_view document);

/// What the bytes of pages and fields depend on beside their words: version, Qt, fonts.
std::string printing_set_up(const evidence::TakenEvidence& taken);

/// What comes of making a signature's revision again with its words, but for the value.
enum class FieldAgain {
  same,
  other_fonts,  ///< other fonts, or in another order: this machine cannot tell
  other,
};

/// Of the revision that added `found`, the signature of this number (from 1). A problem where it cannot be
/// made.
Result<FieldAgain> field_again(const SignatureWords& words, const evidence::PdfFile& file,
                               const FoundSignature& found, const evidence::SignatureBox& box,
                               std::size_t number, const ReportPrinter& printer);

}  // namespace soakwright::signing
