// SPDX-License-Identifier: GPL-3.0-or-later
// A paragraph broken into lines for a width; every line is kept, none is cut.
#pragma once

#include <QFont>
#include <QPointF>
#include <QString>
#include <QTextLayout>
#include <memory>

class QPainter;

namespace soakwright::pdf {

class TextBlock {
 public:
  /// `first_indent`: room left free at the start of the first line.
  TextBlock(const QString& text, const QFont& font, double width, Qt::Alignment alignment = Qt::AlignLeft,
            double first_indent = 0.0);

  [[nodiscard]] double height() const { return height_; }
  /// Of the widest line.
  [[nodiscard]] double width() const { return width_; }
  [[nodiscard]] int lines() const { return layout_->lineCount(); }
  [[nodiscard]] double line_height() const { return line_height_; }
  /// The lines [first, last) with their top left at `at`.
  void draw(QPainter& painter, QPointF at, int first, int last) const;
  void draw(QPainter& painter, QPointF at) const { draw(painter, at, 0, lines()); }

  /// The width of the longest word, and of the longest line that the text itself breaks.
  static double longest_word(const QString& text, const QFont& font);
  static double natural_width(const QString& text, const QFont& font);

 private:
  std::shared_ptr<QTextLayout> layout_;
  double height_ = 0.0, width_ = 0.0, line_height_ = 0.0;
};

}  // namespace soakwright::pdf
