// SPDX-License-Identifier: GPL-3.0-or-later
// A page of another PDF as a form (ISO 32000-1, 8.10) in this one, with all that it is drawn with.
#pragma once

#include <optional>

#include "app/evidence/pdf_file.h"
#include "app/evidence/pdf_update.h"

namespace soakwright::signing {

/// The first page of `source`, put into `update` under new numbers. Returns the form's number; nullopt where
/// the page is not built as the report writer builds it.
std::optional<evidence::ObjectNumber> import_page(const evidence::PdfFile& source,
                                                  evidence::PdfUpdate& update);

}  // namespace soakwright::signing
