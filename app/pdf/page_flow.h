// SPDX-License-Identifier: GPL-3.0-or-later
// Content put on pages from top to bottom; a page is a list of things to draw, so that the number of pages is
// known before the first is printed.
#pragma once

#include <QRectF>
#include <QString>
#include <functional>
#include <vector>

#include "app/pdf/sheet_style.h"

class QPainter;

namespace soakwright::pdf {

struct Page {
  bool landscape = false;
  std::vector<std::function<void(QPainter&)>> items;
};

class PageFlow {
 public:
  explicit PageFlow(Scale scale);

  [[nodiscard]] const Scale& scale() const { return scale_; }
  [[nodiscard]] double mm(double millimetres) const { return scale_.mm(millimetres); }
  [[nodiscard]] double left() const { return mm(kSideMargin); }
  [[nodiscard]] double width() const { return page_width() - mm(2.0 * kSideMargin); }
  [[nodiscard]] double top() const { return mm(kTopMargin); }
  [[nodiscard]] double bottom() const { return page_height() - mm(kBottomMargin); }
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const { return bottom() - y_; }
  [[nodiscard]] double full_height() const { return bottom() - top(); }
  [[nodiscard]] bool at_top() const { return y_ <= top() + 0.5; }

  void new_page(bool landscape = false);
  /// A new page unless `height` is left on this one.
  void need(double height);
  void skip(double height) { y_ += height; }
  void draw(std::function<void(QPainter&)> item) { pages_.back().items.push_back(std::move(item)); }

  /// A section's heading; it stays with at least `follows` of what comes after it.
  void heading(const QString& text, double follows);
  void subheading(const QString& text, double follows);
  /// Broken over pages between lines.
  void paragraph(const QString& text, const QFont& font, const QColor& ink, double indent = 0.0);

  /// What is drawn on every page; page numbers are filled in by finish().
  struct Frame {
    QString head_left, head_right, foot_left;
    bool draft = false;  ///< "DRAFT" across each page, and in words at its head
  };
  [[nodiscard]] std::vector<Page> finish(const Frame& frame);

 private:
  static constexpr double kSideMargin = 16.0;
  static constexpr double kTopMargin = 20.0;
  static constexpr double kBottomMargin = 18.0;
  void stamp_as_draft(Page& page, double page_width, double page_height) const;
  [[nodiscard]] double page_width() const { return mm(pages_.back().landscape ? 297.0 : 210.0); }
  [[nodiscard]] double page_height() const { return mm(pages_.back().landscape ? 210.0 : 297.0); }

  Scale scale_;
  std::vector<Page> pages_;
  double y_ = 0.0;
};

}  // namespace soakwright::pdf
