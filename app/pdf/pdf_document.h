// SPDX-License-Identifier: GPL-3.0-or-later
// Pages as the bytes of a PDF document, built as PDF/A-3b (ISO 19005-3) asks: fonts embedded, an output
// intent, no transparency, and XMP that agrees with the document information.
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QString>
#include <vector>

#include "app/pdf/page_flow.h"
#include "core/system/watch.h"

namespace soakwright::pdf {

struct DocumentFacts {
  QString title, author, subject, program;
  QDateTime created;  ///< UTC
  Paper paper = Paper::a4;
};

constexpr int kDotsPerInch = 1200;
/// The resolution for which the pages must have been set.
Scale pdf_scale();

/// Empty where the pages could not be painted, or `watch` was cancelled meanwhile.
QByteArray pdf_document(const std::vector<Page>& pages, const DocumentFacts& facts, const Watch& watch = {});

}  // namespace soakwright::pdf
