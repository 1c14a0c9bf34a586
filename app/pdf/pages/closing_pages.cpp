// SPDX-License-Identifier: GPL-3.0-or-later
// How it was measured, what not to conclude from it, and the source files.
#include <QPainter>
#include <algorithm>

#include "app/pdf/page_table.h"
#include "app/pdf/pages/page_facts.h"
#include "app/pdf/pages/page_sections.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {

void put_methods(PageFlow& flow, const Report& report) {
  if (report.methods.empty()) return;
  flow.heading(QStringLiteral("How it was measured"), flow.mm(18.0));
  put_facts(flow, report.methods);
}

void put_cautions(PageFlow& flow, const Report& report) {
  if (report.cautions.empty()) return;
  const QFont font = flow.scale().font(kBodyPoints);
  double height = 0.0;
  for (const std::string& caution : report.cautions)
    height += TextBlock(text(caution), font, flow.width() - flow.mm(4.0)).height() + flow.mm(0.6);
  // Together, so that none is overlooked on the next page.
  flow.heading(QStringLiteral("Cautions"), std::min(height, flow.full_height() - flow.mm(20.0)));
  for (const std::string& caution : report.cautions) {
    flow.need(1.3 * font.pixelSize());
    const QPointF at(flow.left() + flow.mm(1.4), flow.y() + 0.61 * font.pixelSize());
    const double radius = flow.mm(0.5);
    flow.draw([=](QPainter& painter) {
      painter.setPen(Qt::NoPen);
      painter.setBrush(colour::kInk);
      painter.drawEllipse(at, radius, radius);
      painter.setBrush(Qt::NoBrush);
    });
    flow.paragraph(text(caution), font, colour::kInk, flow.mm(4.0));
    flow.skip(flow.mm(0.6));
  }
}

void put_files(PageFlow& flow, const Report& report) {
  flow.heading(QStringLiteral("Source files"), flow.mm(16.0));
  std::vector<TableRow> rows;
  for (const Fingerprint& file : report.fingerprints)
    rows.push_back({{{text(file.what), true, std::nullopt},
                     {text(file.file), false, std::nullopt},
                     {text(file.bytes), false, std::nullopt}},
                    {QStringLiteral("SHA-256 ") + text(file.sha256)},
                    {}});
  put_table(flow, {{QStringLiteral("What")}, {QStringLiteral("File")}, {QStringLiteral("Size"), true}},
            std::move(rows));
}

}  // namespace soakwright::pdf
