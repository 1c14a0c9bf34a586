// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/page_table.h"

#include <QPainter>
#include <algorithm>
#include <numeric>

#include "app/pdf/sheet_style.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kPad_mm = 1.1;         // left and right of a cell's text
constexpr double kLead_mm = 0.9;        // above and below it
constexpr double kSign_mm = 4.2;        // kept for a sign
constexpr double kMostWord_mm = 42.0;   // a longer word is broken
constexpr double kKeptTogether = 0.33;  // of a page: a table no higher is not broken

struct Metrics {
  QFont body, bold, head, small;
};

/// A row ready to be drawn: its blocks, and the lines of which it can be broken where it must.
struct SetRow {
  std::vector<TextBlock> cells;
  std::vector<TextBlock> below;
};

double sign_width(const TableCell& cell, const PageFlow& flow) { return cell.sign ? flow.mm(kSign_mm) : 0.0; }

void drop_empty_columns(std::vector<TableColumn>& columns, std::vector<TableRow>& rows) {
  for (std::size_t c = columns.size(); c-- > 0;) {
    const bool empty = std::all_of(rows.begin(), rows.end(), [c](const TableRow& row) {
      return !row.group.isEmpty() || (row.cells[c].text.isEmpty() && !row.cells[c].sign);
    });
    if (!empty || rows.empty()) continue;
    columns.erase(columns.begin() + static_cast<std::ptrdiff_t>(c));
    for (TableRow& row : rows)
      if (row.group.isEmpty()) row.cells.erase(row.cells.begin() + static_cast<std::ptrdiff_t>(c));
  }
}

/// Each column gets at least its longest word, a verdict or a number all of itself; what is left goes to
/// those that would use it. A table that needs little is not drawn out over the whole page.
std::vector<double> column_widths(const PageFlow& flow, const std::vector<TableColumn>& columns,
                                  const std::vector<TableRow>& rows, const Metrics& fonts, bool whole_width) {
  const bool any_below =
      std::any_of(rows.begin(), rows.end(), [](const TableRow& row) { return !row.below.empty(); });
  const double longest_range = any_below || whole_width ? 1e9 : 1.6;  // small print wants the whole width
  const std::size_t count = columns.size();
  std::vector<double> least(count);
  std::vector<double> natural(count);
  const double padding = 2.0 * flow.mm(kPad_mm) + 1.0;
  const double most = flow.mm(kMostWord_mm);
  for (std::size_t c = 0; c < count; ++c) {
    const auto widen = [&](const QString& words, const QFont& font, double extra, bool whole) {
      const double width = TextBlock::natural_width(words, font);
      const double part = whole ? width : TextBlock::longest_word(words, font);
      least[c] = std::max(least[c], std::min(most, part) + padding + extra);
      natural[c] = std::max(natural[c], width + padding + extra);
    };
    widen(columns[c].heading, fonts.head, 0.0, false);
    for (const TableRow& row : rows) {
      if (!row.group.isEmpty()) continue;
      const TableCell& cell = row.cells[c];
      widen(cell.text, cell.bold ? fonts.bold : fonts.body, sign_width(cell, flow),
            columns[c].numbers || cell.sign.has_value());
    }
    natural[c] = std::max(natural[c], least[c]);
  }
  const double width = flow.width();
  const double least_sum = std::accumulate(least.begin(), least.end(), 0.0);
  const double natural_sum = std::accumulate(natural.begin(), natural.end(), 0.0);
  std::vector<double> widths(count);
  for (std::size_t c = 0; c < count; ++c) {
    if (natural_sum <= width)
      widths[c] = natural[c] * std::min(longest_range, width / natural_sum);
    else if (least_sum >= width)
      widths[c] = least[c] * width / least_sum;  // words break; nothing is cut
    else
      widths[c] = least[c] + (natural[c] - least[c]) * (width - least_sum) / (natural_sum - least_sum);
  }
  return widths;
}

class Setter {
 public:
  Setter(PageFlow& flow, std::vector<TableColumn> columns, std::vector<double> widths, Metrics fonts)
      : flow_(flow), columns_(std::move(columns)), widths_(std::move(widths)), fonts_(std::move(fonts)) {
    for (std::size_t c = 0; c < columns_.size(); ++c)
      head_.emplace_back(columns_[c].heading, fonts_.head, inner(c), alignment(c));
    table_width_ = std::accumulate(widths_.begin(), widths_.end(), 0.0);
  }

  void put(const std::vector<TableRow>& rows) {
    std::vector<double> heights;
    heights.reserve(rows.size());
    for (const TableRow& row : rows)
      heights.push_back(row.group.isEmpty() ? row_height(set_row(row)) : group_height(row));
    const double all = std::accumulate(heights.begin(), heights.end(), head_height());
    if (all <= kKeptTogether * flow_.full_height()) flow_.need(all);
    for (std::size_t r = 0; r < rows.size(); ++r) {
      if (kept_together(rows, heights, r) > flow_.room() && !flow_.at_top()) flow_.new_page();
      if (r == 0 || flow_.at_top()) put_head();
      if (!rows[r].group.isEmpty()) {
        put_group(rows[r], heights[r]);
        continue;
      }
      const SetRow set = set_row(rows[r]);
      if (heights[r] <= flow_.room())
        put_whole(rows[r], set, heights[r]);
      else
        put_in_parts(rows[r], set);
    }
  }

 private:
  /// What must stand on one page with row `r`: the header with the first two rows, a group's heading with
  /// its first row, the last row with the one before it. No more than a page.
  [[nodiscard]] double kept_together(const std::vector<TableRow>& rows, const std::vector<double>& heights,
                                     std::size_t r) const {
    double height = heights[r] + (r == 0 ? head_height() : 0.0);
    std::size_t last = r;
    const auto take_next = [&] {
      if (last + 1 < rows.size()) height += heights[++last];
    };
    if (r == 0) take_next();
    if (!rows[last].group.isEmpty()) take_next();
    if (last + 2 == rows.size()) take_next();
    const double most = flow_.full_height() - head_height();
    return height <= most ? height : std::min(heights[r] + (r == 0 ? head_height() : 0.0), most);
  }

  [[nodiscard]] TextBlock group_block(const TableRow& row) const {
    return TextBlock(row.group, fonts_.bold, table_width_ - 2.0 * flow_.mm(kPad_mm));
  }
  [[nodiscard]] double group_height(const TableRow& row) const {
    return group_block(row).height() + 2.0 * flow_.mm(kLead_mm);
  }

  void put_group(const TableRow& row, double height) {
    const TextBlock block = group_block(row);
    const QPointF at(flow_.left() + flow_.mm(kPad_mm), flow_.y() + 1.4 * flow_.mm(kLead_mm));
    flow_.draw([=](QPainter& painter) {
      painter.setPen(colour::kTitle);
      block.draw(painter, at);
    });
    flow_.skip(height);
    put_rule();
  }

  [[nodiscard]] double inner(std::size_t c) const { return widths_[c] - 2.0 * flow_.mm(kPad_mm); }
  [[nodiscard]] Qt::Alignment alignment(std::size_t c) const {
    return columns_[c].numbers ? Qt::AlignRight : Qt::AlignLeft;
  }

  [[nodiscard]] SetRow set_row(const TableRow& row) const {
    SetRow set;
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      const TableCell& cell = row.cells[c];
      set.cells.emplace_back(cell.text, cell.bold ? fonts_.bold : fonts_.body,
                             inner(c) - sign_width(cell, flow_), alignment(c));
    }
    for (const QString& words : row.below)
      if (!words.isEmpty())
        set.below.emplace_back(words, fonts_.small, table_width_ - 2.0 * flow_.mm(kPad_mm));
    return set;
  }

  [[nodiscard]] static double cells_height(const std::vector<TextBlock>& cells) {
    double height = 0.0;
    for (const TextBlock& cell : cells) height = std::max(height, cell.height());
    return height;
  }

  [[nodiscard]] double row_height(const SetRow& set) const {
    double height = cells_height(set.cells) + 2.0 * flow_.mm(kLead_mm);
    for (const TextBlock& block : set.below) height += block.height();
    return height;
  }

  [[nodiscard]] double head_height() const { return cells_height(head_) + 2.0 * flow_.mm(kLead_mm); }

  void put_head() {
    const double height = head_height();
    const QRectF box(flow_.left(), flow_.y(), table_width_, height);
    flow_.draw([box](QPainter& painter) { painter.fillRect(box, colour::kHeadRow); });
    double x = flow_.left();
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      const QPointF at(x + flow_.mm(kPad_mm), flow_.y() + height - flow_.mm(kLead_mm) - head_[c].height());
      flow_.draw([block = head_[c], at](QPainter& painter) {
        painter.setPen(colour::kTitle);
        block.draw(painter, at);
      });
      x += widths_[c];
    }
    flow_.skip(height);
  }

  void put_cells(const TableRow& row, const SetRow& set, double top, int first, int last) {
    double x = flow_.left();
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      const TableCell& cell = row.cells[c];
      const TextBlock& block = set.cells[c];
      const double shift = sign_width(cell, flow_);
      const QPointF at(x + flow_.mm(kPad_mm) + shift, top);
      if (cell.sign && first == 0) {
        const QPointF centre(x + flow_.mm(kPad_mm + 1.4), top + 0.5 * block.line_height());
        const double radius = flow_.mm(1.25);
        flow_.draw([=, sign = *cell.sign](QPainter& painter) { draw_sign(painter, centre, radius, sign); });
      }
      const QColor ink = cell.sign ? colour_of(*cell.sign) : colour::kInk;
      if (first < block.lines())
        flow_.draw([=](QPainter& painter) {
          painter.setPen(ink);
          block.draw(painter, at, first, last);
        });
      x += widths_[c];
    }
  }

  void put_rule() {
    const double x = flow_.left();
    const double right = x + table_width_;
    const double y = flow_.y();
    const double hair = flow_.mm(0.12);
    flow_.draw([=](QPainter& painter) {
      painter.setPen(QPen(colour::kRule, hair));
      painter.drawLine(QPointF(x, y), QPointF(right, y));
    });
  }

  void put_below(const TextBlock& block, int first, int last) {
    const QPointF at(flow_.left() + flow_.mm(kPad_mm), flow_.y());
    flow_.draw([=](QPainter& painter) {
      painter.setPen(colour::kFaintInk);
      block.draw(painter, at, first, last);
    });
    flow_.skip((last - first) * block.line_height());
  }

  void put_whole(const TableRow& row, const SetRow& set, double height) {
    const double end = flow_.y() + height;
    put_cells(row, set, flow_.y() + flow_.mm(kLead_mm), 0, 1'000'000);
    flow_.skip(flow_.mm(kLead_mm) + cells_height(set.cells));
    for (const TextBlock& block : set.below) put_below(block, 0, block.lines());
    flow_.skip(end - flow_.y());
    put_rule();
  }

  /// A row higher than a page: as many lines as fit, then the next page with its header.
  void put_in_parts(const TableRow& row, const SetRow& set) {
    int lines = 0;
    for (const TextBlock& cell : set.cells) lines = std::max(lines, cell.lines());
    const double line_height = set.cells.front().line_height();
    for (int first = 0; first < lines;) {
      const auto fits = static_cast<int>((flow_.room() - 2.0 * flow_.mm(kLead_mm)) / line_height);
      const int last = std::min(lines, first + std::max(1, fits));
      put_cells(row, set, flow_.y() + flow_.mm(kLead_mm), first, last);
      flow_.skip((last - first) * line_height + 2.0 * flow_.mm(kLead_mm));
      first = last;
      if (first < lines) turn_page();
    }
    for (const TextBlock& block : set.below)
      for (int first = 0; first < block.lines();) {
        if (flow_.room() < block.line_height()) turn_page();
        const int last =
            std::min(block.lines(), first + static_cast<int>(flow_.room() / block.line_height()));
        put_below(block, first, last);
        first = last;
      }
    put_rule();
  }

  void turn_page() {
    put_rule();
    flow_.new_page();
    put_head();
  }

  PageFlow& flow_;
  std::vector<TableColumn> columns_;
  std::vector<double> widths_;
  Metrics fonts_;
  std::vector<TextBlock> head_;
  double table_width_ = 0.0;
};

}  // namespace

TableCell plain_cell(const std::string& words) { return {bound_text(words), false, std::nullopt}; }

void put_table(PageFlow& flow, std::vector<TableColumn> columns, std::vector<TableRow> rows, double points,
               bool whole_width) {
  drop_empty_columns(columns, rows);
  if (rows.empty() || columns.empty()) return;
  const Metrics fonts{flow.scale().font(points), flow.scale().font(points, true),
                      flow.scale().font(points, true), flow.scale().font(points)};
  std::vector<double> widths = column_widths(flow, columns, rows, fonts, whole_width);
  Setter(flow, std::move(columns), std::move(widths), fonts).put(rows);
}

}  // namespace soakwright::pdf
