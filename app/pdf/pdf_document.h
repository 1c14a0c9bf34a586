// SPDX-License-Identifier: GPL-3.0-or-later
// Pages as the bytes of a PDF/A-1b document.
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QString>
#include <vector>

#include "app/pdf/page_flow.h"

namespace soakwright::pdf {

struct DocumentFacts {
  QString title, author, subject, program;
  QDateTime created;  ///< UTC
  Paper paper = Paper::a4;
};

/// The resolution for which the pages must have been set.
Scale pdf_scale();

/// Empty where the pages could not be painted.
QByteArray pdf_document(const std::vector<Page>& pages, const DocumentFacts& facts);

}  // namespace soakwright::pdf
