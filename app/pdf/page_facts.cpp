// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/page_facts.h"

#include <QPainter>
#include <algorithm>

#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kColumnGap_mm = 6.0;
constexpr double kLead_mm = 0.7;
constexpr double kHeadingPoints = 9.0;

/// Name and words in one paragraph: a reader of the text alone, whom no columns guide, finds them together.
TextBlock block_of(const PageFlow& flow, const LabelledText& fact, double width) {
  const QString name = fact.name.empty() ? QString() : text(fact.name) + QStringLiteral(": ");
  return TextBlock(name + bound_text(fact.text), flow.scale().font(kBodyPoints), width, Qt::AlignLeft,
                   static_cast<int>(name.size()));
}

}  // namespace

void put_facts(PageFlow& flow, const std::vector<LabelledText>& facts) {
  for (const LabelledText& fact : facts) {
    const TextBlock block = block_of(flow, fact, flow.width());
    for (int first = 0; first < block.lines();) {
      // Two lines at least stay together at either end of a page.
      flow.need(std::min(2, block.lines() - first) * block.line_height());
      const int fits = std::max(1, static_cast<int>(flow.room() / block.line_height()));
      const int last = std::min(block.lines(), first + fits);
      const QPointF at(flow.left(), flow.y());
      flow.draw([=](QPainter& painter) {
        painter.setPen(colour::kInk);
        block.draw(painter, at, first, last);
      });
      flow.skip((last - first) * block.line_height());
      first = last;
    }
    flow.skip(flow.mm(kLead_mm));
  }
}

void put_fact_columns(PageFlow& flow, const std::vector<LabelColumn>& columns) {
  const double gap = flow.mm(kColumnGap_mm);
  const auto count = static_cast<double>(columns.size());
  const double width = (flow.width() - gap * (count - 1.0)) / count;
  const QFont bold = flow.scale().font(kHeadingPoints, true);
  std::vector<std::vector<TextBlock>> blocks(columns.size());
  double tallest = 0.0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double height = 0.0;
    for (const LabelledText& fact : columns[c].facts) {
      blocks[c].push_back(block_of(flow, fact, width));
      height += blocks[c].back().height() + flow.mm(kLead_mm);
    }
    tallest = std::max(tallest, height);
  }
  const double head = 1.4 * bold.pixelSize() + flow.mm(0.8);
  if (tallest + head > flow.full_height()) {
    // Too much for one page: one list after the other, which break between pages.
    for (const LabelColumn& column : columns) {
      flow.subheading(column.heading, flow.mm(8.0));
      put_facts(flow, column.facts);
    }
    return;
  }
  flow.need(tallest + head);
  for (std::size_t c = 0; c < columns.size(); ++c) {
    QPointF at(flow.left() + static_cast<double>(c) * (width + gap), flow.y());
    const TextBlock heading(columns[c].heading, bold, width);
    flow.draw([=](QPainter& painter) {
      painter.setPen(colour::kTitle);
      heading.draw(painter, at);
    });
    at.ry() += head;
    for (const TextBlock& block : blocks[c]) {
      flow.draw([=](QPainter& painter) {
        painter.setPen(colour::kInk);
        block.draw(painter, at);
      });
      at.ry() += block.height() + flow.mm(kLead_mm);
    }
  }
  flow.skip(tallest + head);
}

}  // namespace soakwright::pdf
