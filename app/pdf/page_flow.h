// SPDX-License-Identifier: GPL-3.0-or-later
// Content put on pages from top to bottom; a page is a list of things to draw, so that the number of pages is
// known before the first is printed.
#pragma once

#include <QRectF>
#include <QSizeF>
#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "app/pdf/sheet_style.h"
#include "core/report/report.h"

class QPainter;

namespace soakwright::pdf {

/// Where a place of Report::signatures (its index) waits for a signature.
struct PlaceBox {
  std::size_t place = 0;
  QRectF box;
};

struct Page {
  bool landscape = false;
  std::vector<std::function<void(QPainter&)>> items;
  double used = 0.0;  ///< how far down its content reaches, as a share of the height between the margins
  std::vector<PlaceBox> places = {};
};

/// Width and height of an upright sheet, in millimetres.
QSizeF sheet_mm(Paper paper);

class PageFlow {
 public:
  /// `stretch` is for what is free in height, charts and the space above headings: stretched_mm().
  explicit PageFlow(Scale scale, Paper paper = Paper::a4, double stretch = 1.0);

  [[nodiscard]] const Scale& scale() const { return scale_; }
  [[nodiscard]] double mm(double millimetres) const { return scale_.mm(millimetres); }
  [[nodiscard]] double stretched_mm(double millimetres) const { return scale_.mm(stretch_ * millimetres); }
  [[nodiscard]] double left() const { return mm(kSideMargin); }
  [[nodiscard]] double width() const { return page_width(pages_.back()) - mm(2.0 * kSideMargin); }
  [[nodiscard]] double top() const { return mm(kTopMargin); }
  [[nodiscard]] double bottom() const { return page_height(pages_.back()) - mm(kBottomMargin); }
  [[nodiscard]] double y() const { return y_; }
  [[nodiscard]] double room() const { return bottom() - y_; }
  [[nodiscard]] double full_height() const { return bottom() - top(); }
  [[nodiscard]] bool at_top() const { return y_ <= top() + 0.5; }

  /// Headings that would stay behind alone go along.
  void new_page();
  /// A new page unless `height` is left on this one.
  void need(double height);
  void skip(double height) { y_ += height; }
  /// What `put` puts stays on one page where it is no higher than `most`, a share of a page.
  void keep_together(double most, const std::function<void(PageFlow&)>& put);
  void draw(std::function<void(QPainter&)> item) { pages_.back().items.push_back(std::move(item)); }
  /// A page of its own, lying, behind the current one; the flow goes on where it is. `paint` gets the area
  /// between the margins.
  void insert_lying_page(std::function<void(QPainter&, const QRectF&)> paint);

  void mark_place(std::size_t place, const QRectF& box) { pages_.back().places.push_back({place, box}); }

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
  struct Title {
    QString text;
    bool main = true;
  };
  /// Headings with nothing below them yet.
  struct OpenTitles {
    std::vector<Title> titles;
    std::size_t items = 0;  ///< on the page before them
    double from_y = 0.0, end_y = 0.0;
  };

  void put_title(const Title& title, double follows);
  void close_page();
  void frame_page(std::size_t index, std::size_t count, const Frame& frame);
  void stamp_as_draft(Page& page) const;
  [[nodiscard]] double page_width(const Page& page) const;
  [[nodiscard]] double page_height(const Page& page) const;

  Scale scale_;
  Paper paper_;
  double stretch_;
  std::vector<Page> pages_;
  std::vector<Page> inserted_;  ///< behind the current page
  std::optional<OpenTitles> open_titles_;
  double y_ = 0.0;
};

}  // namespace soakwright::pdf
