// SPDX-License-Identifier: GPL-3.0-or-later
// What a PDF says about itself: title, author, subject, when and by what it was made.
//
// Qt writes neither author nor subject, stamps the present second and a random identifier. Its document
// information is therefore replaced, with the offsets of the objects behind it put right; the identifier
// becomes a digest of the document. ISO 19005-3 wants the same facts in the XMP packet.
#pragma once

#include <QByteArray>

#include "app/pdf/pdf_document.h"

namespace soakwright::pdf {

QByteArray xmp_of(const DocumentFacts& facts);

/// The document with `facts` as its information. Unchanged where it is not built as Qt builds it.
QByteArray with_information(const QByteArray& document, const DocumentFacts& facts);

}  // namespace soakwright::pdf
