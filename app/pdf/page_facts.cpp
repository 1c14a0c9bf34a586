// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/page_facts.h"

#include <QPainter>
#include <algorithm>

#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kColumnGap_mm = 6.0;
constexpr double kLead_mm = 0.7;

}  // namespace

void put_facts(PageFlow& flow, const std::vector<LabelledText>& facts, double name_mm, double points) {
  const QFont name_font = flow.scale().font(points);
  const QFont text_font = flow.scale().font(points);
  const double indent = flow.mm(name_mm);
  for (const LabelledText& fact : facts) {
    const TextBlock name(text(fact.name), name_font, indent - flow.mm(2.0));
    const TextBlock words(bound_text(fact.text), text_font, flow.width() - indent);
    // The name stands beside the first lines of what is said under it.
    flow.need(std::max(name.height(), std::min(2, words.lines()) * words.line_height()));
    const QPointF at(flow.left(), flow.y());
    flow.draw([=](QPainter& painter) {
      painter.setPen(colour::kFaintInk);
      name.draw(painter, at);
    });
    const double least = flow.y() + name.height();
    flow.paragraph(bound_text(fact.text), text_font, colour::kInk, indent);
    if (flow.y() < least && flow.y() > at.y()) flow.skip(least - flow.y());
    flow.skip(flow.mm(kLead_mm));
  }
}

void put_fact_columns(PageFlow& flow, const std::vector<LabelColumn>& columns, double name_mm) {
  const double gap = flow.mm(kColumnGap_mm);
  const auto count = static_cast<double>(columns.size());
  const double width = (flow.width() - gap * (count - 1.0)) / count;
  const double indent = flow.mm(name_mm);
  const QFont font = flow.scale().font(8.0);
  const QFont bold = flow.scale().font(9.0, true);

  struct Line {
    TextBlock name, words;
    [[nodiscard]] double height() const { return std::max(name.height(), words.height()); }
  };
  std::vector<std::vector<Line>> lines(columns.size());
  double tallest = 0.0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double height = 0.0;
    for (const LabelledText& fact : columns[c].facts) {
      lines[c].push_back({TextBlock(text(fact.name), font, indent - flow.mm(2.0)),
                          TextBlock(bound_text(fact.text), font, width - indent)});
      height += lines[c].back().height() + flow.mm(kLead_mm);
    }
    tallest = std::max(tallest, height);
  }
  const double head = 1.4 * bold.pixelSize() + flow.mm(0.8);
  if (tallest + head > flow.full_height()) {
    // Too much for one page: one list after the other, which break between pages.
    for (const LabelColumn& column : columns) {
      flow.subheading(column.heading, flow.mm(8.0));
      put_facts(flow, column.facts, name_mm);
    }
    return;
  }
  flow.need(tallest + head);
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const double x = flow.left() + static_cast<double>(c) * (width + gap);
    double y = flow.y();
    const TextBlock heading(columns[c].heading, bold, width);
    const QPointF heading_at(x, y);
    flow.draw([=](QPainter& painter) {
      painter.setPen(colour::kTitle);
      heading.draw(painter, heading_at);
    });
    y += head;
    for (const Line& line : lines[c]) {
      const QPointF at(x, y);
      flow.draw([=](QPainter& painter) {
        painter.setPen(colour::kFaintInk);
        line.name.draw(painter, at);
        painter.setPen(colour::kInk);
        line.words.draw(painter, at + QPointF(indent, 0.0));
      });
      y += line.height() + flow.mm(kLead_mm);
    }
  }
  flow.skip(tallest + head);
}

}  // namespace soakwright::pdf
