// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/pages/page_facts.h"

#include <QPainter>
#include <algorithm>

#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kColumnGap_mm = 6.0;
constexpr double kFactLead_mm = 0.7;
constexpr double kFactHeadingPoints = 9.0;

/// Name and words in one paragraph: a reader of the text alone, whom no columns guide, finds them together.
class FactBlock {
 public:
  FactBlock(const PageFlow& flow, const LabelledText& fact, double width)
      : name_(fact.name.empty() ? QString() : text(fact.name) + QLatin1Char(':'),
              flow.scale().font(kBodyPoints, true), width),
        words_(bound_text(fact.text), flow.scale().font(kBodyPoints), width, Qt::AlignLeft,
               indent(flow, fact, width)) {
    below_ = fact.name.empty() || shares_line(flow, fact, width) ? 0.0 : name_.height();
  }
  [[nodiscard]] double height() const { return below_ + words_.height(); }
  void draw(QPainter& painter, QPointF at) const {
    painter.setPen(colour::kInk);
    name_.draw(painter, at);
    words_.draw(painter, at + QPointF(0.0, below_));
  }

 private:
  /// A name that is long stands above what is said under it.
  static bool shares_line(const PageFlow& flow, const LabelledText& fact, double width) {
    constexpr double kLongest = 0.6;
    return indent_of(flow, fact) < kLongest * width;
  }
  static double indent_of(const PageFlow& flow, const LabelledText& fact) {
    return TextBlock::natural_width(text(fact.name) + QStringLiteral(": "),
                                    flow.scale().font(kBodyPoints, true));
  }
  static double indent(const PageFlow& flow, const LabelledText& fact, double width) {
    return !fact.name.empty() && shares_line(flow, fact, width) ? indent_of(flow, fact) : 0.0;
  }

  TextBlock name_, words_;
  double below_ = 0.0;
};

}  // namespace

void put_facts(PageFlow& flow, const std::vector<LabelledText>& facts) {
  for (const LabelledText& fact : facts) {
    const FactBlock block(flow, fact, flow.width());
    if (block.height() > flow.full_height()) {
      flow.paragraph(text(fact.name) + QStringLiteral(": ") + bound_text(fact.text),
                     flow.scale().font(kBodyPoints), colour::kInk);
    } else {
      flow.need(block.height());
      const QPointF at(flow.left(), flow.y());
      flow.draw([=](QPainter& painter) { block.draw(painter, at); });
      flow.skip(block.height());
    }
    flow.skip(flow.mm(kFactLead_mm));
  }
}

void put_fact_columns(PageFlow& flow, const std::vector<LabelColumn>& columns) {
  const double gap = flow.mm(kColumnGap_mm);
  const auto count = static_cast<double>(columns.size());
  const double width = (flow.width() - gap * (count - 1.0)) / count;
  const QFont bold = flow.scale().font(kFactHeadingPoints, true);
  std::vector<std::vector<FactBlock>> blocks(columns.size());
  double tallest = 0.0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double height = 0.0;
    for (const LabelledText& fact : columns[c].facts) {
      blocks[c].emplace_back(flow, fact, width);
      height += blocks[c].back().height() + flow.mm(kFactLead_mm);
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
    for (const FactBlock& block : blocks[c]) {
      flow.draw([=](QPainter& painter) { block.draw(painter, at); });
      at.ry() += block.height() + flow.mm(kFactLead_mm);
    }
  }
  flow.skip(tallest + head);
}

}  // namespace soakwright::pdf
