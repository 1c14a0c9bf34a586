// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/text_block.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QRegularExpression>
#include <QTextOption>
#include <algorithm>
#include <cmath>

namespace soakwright::pdf {

TextBlock::TextBlock(const QString& text, const QFont& font, double width, Qt::Alignment alignment,
                     double first_indent)
    : layout_(std::make_shared<QTextLayout>(text, font)) {
  QTextOption option(alignment);
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  option.setUseDesignMetrics(true);
  layout_->setTextOption(option);
  layout_->setCacheEnabled(true);
  line_height_ = std::ceil(1.22 * font.pixelSize());
  layout_->beginLayout();
  for (QTextLine line = layout_->createLine(); line.isValid(); line = layout_->createLine()) {
    const double indent = height_ == 0.0 ? first_indent : 0.0;
    line.setLineWidth(std::max(width - indent, 1.0));
    line.setPosition(QPointF(indent, height_ + 0.5 * (line_height_ - line.height())));
    width_ = std::max(width_, indent + line.naturalTextWidth());
    height_ += line_height_;
  }
  layout_->endLayout();
}

void TextBlock::draw(QPainter& painter, QPointF at, int first, int last) const {
  const QPointF origin = at - QPointF(0.0, first * line_height_);
  for (int i = first; i < std::min(last, lines()); ++i) layout_->lineAt(i).draw(&painter, origin);
}

double TextBlock::longest_word(const QString& text, const QFont& font) {
  const QFontMetricsF metrics(font);
  double longest = 0.0;
  // A no-break space is none of them.
  static const QRegularExpression spaces(QStringLiteral("[ \\n\\t]+"));
  for (const QString& word : text.split(spaces, Qt::SkipEmptyParts))
    longest = std::max(longest, metrics.horizontalAdvance(word));
  return longest;
}

double TextBlock::natural_width(const QString& text, const QFont& font) {
  const QFontMetricsF metrics(font);
  double longest = 0.0;
  for (const QString& line : text.split(QLatin1Char('\n')))
    longest = std::max(longest, metrics.horizontalAdvance(line));
  return longest;
}

}  // namespace soakwright::pdf
