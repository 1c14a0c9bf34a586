// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/pdf_document.h"

#include <QBuffer>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>

#include "app/pdf/fixed_hash_order.h"
#include "app/pdf/pdf_information.h"

namespace soakwright::pdf {
namespace {

constexpr double kMillimetresPerInch = 25.4;

QPageLayout layout_of(const Page& page, Paper paper) {
  return {QPageSize(paper == Paper::letter ? QPageSize::Letter : QPageSize::A4),
          page.landscape ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF(0, 0, 0, 0)};
}

}  // namespace

Scale pdf_scale() { return Scale(kDotsPerInch / kMillimetresPerInch); }

QByteArray pdf_document(const std::vector<Page>& pages, const DocumentFacts& facts, const Watch& watch) {
  const FixedHashOrder fixed;
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setResolution(kDotsPerInch);
    writer.setTitle(facts.title);
    writer.setCreator(facts.program);
    writer.setDocumentXmpMetadata(xmp_of(facts));
    writer.setPageLayout(layout_of(pages.front(), facts.paper));
    QPainter painter;
    if (!painter.begin(&writer)) return {};
    painter.setRenderHint(QPainter::Antialiasing);
    for (std::size_t i = 0; i < pages.size(); ++i) {
      if (i > 0) {
        writer.setPageLayout(layout_of(pages[i], facts.paper));
        if (!writer.newPage()) return {};
      }
      for (const auto& item : pages[i].items) {
        if (watch.stopped()) return {};
        painter.save();
        item(painter);
        painter.restore();
      }
      watch.report(static_cast<double>(i + 1) / static_cast<double>(pages.size()));
    }
    if (!painter.end()) return {};
  }
  return with_information(bytes, facts);
}

}  // namespace soakwright::pdf
