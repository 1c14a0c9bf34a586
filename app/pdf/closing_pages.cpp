// SPDX-License-Identifier: GPL-3.0-or-later
// How it was measured, what not to conclude from it, the source files, and places for names and signatures.
#include <QPainter>
#include <algorithm>

#include "app/pdf/page_facts.h"
#include "app/pdf/page_sections.h"
#include "app/pdf/page_table.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {

void put_methods(PageFlow& flow, const Report& report) {
  if (report.methods.empty()) return;
  flow.heading(QStringLiteral("How it was measured"), flow.mm(18.0));
  put_facts(flow, report.methods, 36.0, 7.5);
}

void put_cautions(PageFlow& flow, const Report& report) {
  if (report.cautions.empty()) return;
  const QFont font = flow.scale().font(8.0);
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

void put_signatures(PageFlow& flow, const Report& report) {
  const double row = flow.mm(14.0);
  const double wanted = row * static_cast<double>(report.signatures.size());
  flow.heading(QStringLiteral("Names and signatures"), std::min(wanted, flow.full_height() - flow.mm(20.0)));
  const double width = flow.width();
  const double role_width = 0.14 * width;
  const double name_width = 0.30 * width;
  const double date_width = 0.17 * width;
  const double gap = flow.mm(3.0);
  const QFont font = flow.scale().font(8.5);
  const QFont small = flow.scale().font(6.5);
  const double hair = flow.mm(0.2);
  for (const SignaturePlace& place : report.signatures) {
    const TextBlock role(text(place.role), flow.scale().font(8.5, true), role_width - gap);
    const TextBlock name(text(place.company.empty() ? place.name : place.name + ", " + place.company), font,
                         name_width - gap);
    const TextBlock date(text(place.date), font, date_width - gap);
    const TextBlock remark(text(place.remark), flow.scale().font(7.0), width - role_width);
    const double remark_height = place.remark.empty() ? 0.0 : remark.height();
    const double line = std::max(row - flow.mm(5.0), name.height() + flow.mm(1.0));
    flow.need(line + flow.mm(5.0) + remark_height);
    const double x = flow.left();
    const double y = flow.y();
    const double under = flow.mm(0.8);
    flow.draw([=](QPainter& painter) {
      painter.setPen(colour::kInk);
      role.draw(painter, {x, y + line - role.height()});
      const double name_x = x + role_width;
      const double date_x = name_x + name_width;
      const double sign_x = date_x + date_width;
      name.draw(painter, {name_x, y + line - name.height() - under});
      date.draw(painter, {date_x, y + line - date.height() - under});
      painter.setPen(QPen(colour::kFaintInk, hair));
      painter.drawLine(QPointF(name_x, y + line), QPointF(date_x - gap, y + line));
      painter.drawLine(QPointF(date_x, y + line), QPointF(sign_x - gap, y + line));
      painter.drawLine(QPointF(sign_x, y + line), QPointF(x + width, y + line));
      painter.setPen(colour::kFaintInk);
      TextBlock(QStringLiteral("Name and company"), small, name_width)
          .draw(painter, {name_x, y + line + under});
      TextBlock(QStringLiteral("Date"), small, date_width).draw(painter, {date_x, y + line + under});
      TextBlock(QStringLiteral("Signature"), small, width - role_width)
          .draw(painter, {sign_x, y + line + under});
      if (remark_height > 0.0) remark.draw(painter, {name_x, y + line + 5.0 * under});
    });
    flow.skip(line + flow.mm(5.0) + remark_height);
  }
}

}  // namespace soakwright::pdf
