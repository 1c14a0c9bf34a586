// SPDX-License-Identifier: GPL-3.0-or-later
// Who performed, reviewed and witnessed the work: names from the review, and places to sign by hand.
#include <QPainter>
#include <algorithm>
#include <array>

#include "app/pdf/pages/page_sections.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kRow_mm = 9.0;
constexpr double kPoints = 8.5;
constexpr double kCaptionPoints = 8.0;
constexpr std::array<double, 5> kShares{0.15, 0.23, 0.24, 0.14,
                                        0.24};  // role, name, company, date, signature

struct Line {
  std::array<TextBlock, 4> words;
  TextBlock remark;
  bool has_remark = false;
  double height = 0.0;
};

double column_x(const PageFlow& flow, std::size_t column) {
  double share = 0.0;
  for (std::size_t c = 0; c < column; ++c) share += kShares[c];
  return flow.left() + share * flow.width();
}

std::vector<Line> lines_of(const PageFlow& flow, const Report& report) {
  const double gap = flow.mm(2.5);
  const auto block = [&](const std::string& words, std::size_t column) {
    return TextBlock(text(words), flow.scale().font(kPoints, column == 0),
                     kShares[column] * flow.width() - gap);
  };
  std::vector<Line> lines;
  for (const SignaturePlace& place : report.signatures) {
    Line line{
        {block(place.role, 0), block(place.name, 1), block(place.company, 2), block(place.date, 3)},
        TextBlock(text(place.remark), flow.scale().font(kCaptionPoints), (1.0 - kShares[0]) * flow.width()),
        !place.remark.empty(),
        flow.mm(kRow_mm)};
    for (const TextBlock& words : line.words)
      line.height = std::max(line.height, words.height() + flow.mm(1.6));
    if (line.has_remark) line.height += line.remark.height() + flow.mm(0.6);
    lines.push_back(std::move(line));
  }
  return lines;
}

double caption_height(const PageFlow& flow) { return 1.3 * flow.scale().font(kCaptionPoints).pixelSize(); }

}  // namespace

double signature_height(const PageFlow& flow, const Report& report) {
  double height = caption_height(flow);
  for (const Line& line : lines_of(flow, report)) height += line.height;
  return height;
}

void put_signatures(PageFlow& flow, const Report& report) {
  flow.need(std::min(signature_height(flow, report), flow.full_height()));
  const QFont small = flow.scale().font(kCaptionPoints);
  constexpr std::array<const char*, 5> kCaptions{"", "Name", "Company", "Date", "Signature"};
  for (std::size_t c = 1; c < kCaptions.size(); ++c) {
    const TextBlock caption(QString::fromUtf8(kCaptions[c]), small, flow.width());
    const QPointF at(column_x(flow, c), flow.y());
    flow.draw([=](QPainter& painter) {
      painter.setPen(colour::kFaintInk);
      caption.draw(painter, at);
    });
  }
  flow.skip(caption_height(flow));
  const double hair = flow.mm(0.2);
  const double gap = flow.mm(2.5);
  const std::vector<Line> lines = lines_of(flow, report);
  for (std::size_t place = 0; place < lines.size(); ++place) {
    const Line& line = lines[place];
    flow.need(line.height);
    const double remark = line.has_remark ? line.remark.height() + flow.mm(0.6) : 0.0;
    const double base = flow.y() + line.height - remark - flow.mm(0.8);
    const double sign_x = column_x(flow, kCaptions.size() - 1);
    flow.mark_place(place,
                    QRectF(sign_x, flow.y(), flow.left() + flow.width() - sign_x, base - hair - flow.y()));
    for (std::size_t c = 0; c < kCaptions.size(); ++c) {
      const double x = column_x(flow, c);
      const double right =
          c + 1 < kCaptions.size() ? column_x(flow, c + 1) - gap : flow.left() + flow.width();
      flow.draw([=](QPainter& painter) {
        painter.setPen(colour::kInk);
        if (c < line.words.size())
          line.words[c].draw(painter, {x, base - line.words[c].height() - (c == 0 ? 0.0 : hair)});
        painter.setPen(QPen(colour::kFaintInk, hair));
        if (c > 0) painter.drawLine(QPointF(x, base), QPointF(right, base));
      });
    }
    if (line.has_remark) {
      const QPointF at(column_x(flow, 1), base + flow.mm(0.6));
      flow.draw([=](QPainter& painter) {
        painter.setPen(colour::kInk);
        line.remark.draw(painter, at);
      });
    }
    flow.skip(line.height);
  }
}

}  // namespace soakwright::pdf
