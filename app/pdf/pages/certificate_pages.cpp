// SPDX-License-Identifier: GPL-3.0-or-later
// The certificate, a page by itself: what was done to what, required against recorded, the verdict, the
// whole cycle small, and who signs. Of several welds each has one more.
#include <QPainter>
#include <algorithm>

#include "app/pdf/chart/chart_of_weld.h"
#include "app/pdf/chart/chart_painter.h"
#include "app/pdf/page_table.h"
#include "app/pdf/pages/page_facts.h"
#include "app/pdf/pages/page_sections.h"
#include "app/pdf/pages/sign.h"
#include "app/pdf/text_block.h"

namespace soakwright::pdf {
namespace {

constexpr double kPicture_mm = 15.0;  // its greatest height
constexpr double kPictureWidth_mm = 45.0;
constexpr double kSmallestChart_mm = 40.0;
constexpr double kLargestChart_mm = 110.0;
constexpr std::size_t kMostMarks = 4;  // events on the small chart

/// Name, address and picture of the company, to the right; how far down they reach.
double put_company(PageFlow& flow, const Report& report, const QImage& picture, double width) {
  const double right = flow.left() + flow.width();
  double y = flow.y();
  if (!picture.isNull()) {
    const double shrink =
        std::min(flow.mm(kPicture_mm) / picture.height(), flow.mm(kPictureWidth_mm) / picture.width());
    const QRectF box(right - shrink * picture.width(), y, shrink * picture.width(),
                     shrink * picture.height());
    flow.draw([=](QPainter& painter) { painter.drawImage(box, picture); });
    y = box.bottom() + flow.mm(1.0);
  }
  QString address = text(report.company.address);
  address.replace(QLatin1Char('\n'), QChar::LineSeparator);
  const TextBlock name(text(report.company.name), flow.scale().font(9.5, true), width, Qt::AlignRight);
  const TextBlock below(address, flow.scale().font(kBodyPoints), width, Qt::AlignRight);
  for (const auto& [block, said] :
       {std::pair{name, !report.company.name.empty()}, std::pair{below, !address.isEmpty()}}) {
    if (!said) continue;
    const QPointF at(right - width, y);
    flow.draw([block = block, at](QPainter& painter) {
      painter.setPen(colour::kInk);
      block.draw(painter, at);
    });
    y += block.height();
  }
  return y;
}

void put_title(PageFlow& flow, const Report& report, const Certificate& certificate, const IssueFacts& issue,
               bool first) {
  if (first) flow.skip(-flow.mm(6.0));  // the first page has no running head
  const double top = flow.y();
  const bool company = !report.company.name.empty() || !issue.picture.isNull();
  const double company_width = company ? 0.36 * flow.width() : 0.0;
  const double width = flow.width() - company_width - (company ? flow.mm(4.0) : 0.0);
  double y = top;
  const auto put = [&](const QString& words, double points, bool bold, const QColor& ink) {
    if (words.isEmpty()) return;
    const TextBlock block(words, flow.scale().font(points, bold), width);
    const QPointF at(flow.left(), y);
    flow.draw([=](QPainter& painter) {
      painter.setPen(ink);
      block.draw(painter, at);
    });
    y += block.height() + flow.mm(0.6);
  };
  put(report.verdict ? QStringLiteral("Heat treatment report") : QStringLiteral("Temperature record"), 17.0,
      true, colour::kTitle);
  QString numbers = report.report_number.empty()
                        ? QStringLiteral("Report number not given")
                        : QStringLiteral("Report number ") + text(report.report_number);
  numbers += QStringLiteral("      Date of issue ") + issue.date;
  put(numbers, 9.0, false, colour::kInk);
  const QString weld = certificate.weld.empty()
                           ? QString()
                           : QStringLiteral("Weld ") + text(certificate.weld) + QStringLiteral(": ");
  put(weld + text(certificate.subject), 10.0, true, colour::kInk);
  const double reached = company ? put_company(flow, report, issue.picture, company_width) : y;
  flow.skip(std::max(y, reached) - top + flow.mm(1.6));
}

/// Across the page: what the verdict rests on is in none of the source files.
void put_unsaved(PageFlow& flow, const Report& report) {
  if (report.unsaved.empty()) return;
  QStringList changes;
  for (const std::string& change : report.unsaved) changes.append(text(change));
  const double pad = flow.mm(2.5);
  const double width = flow.width() - 2.0 * pad;
  const TextBlock head(QStringLiteral("NOT SAVED: this report rests on changes that are in no file"),
                       flow.scale().font(12.0, true), width);
  const TextBlock list(changes.join(QStringLiteral("; ")), flow.scale().font(8.5), width);
  const double height = head.height() + list.height() + 2.0 * pad;
  flow.need(height);
  const QRectF box(flow.left(), flow.y(), flow.width(), height);
  flow.draw([=](QPainter& painter) {
    painter.fillRect(box, colour::kNotMet);
    painter.setPen(colour::kPdf);
    head.draw(painter, box.topLeft() + QPointF(pad, pad));
    list.draw(painter, box.topLeft() + QPointF(pad, pad + head.height()));
  });
  flow.skip(height + flow.mm(3.0));
}

void put_verdict(PageFlow& flow, const Report& report, const Certificate& certificate) {
  const double pad = flow.mm(2.2);
  const double sign_column = report.verdict ? flow.mm(13.0) : 0.0;
  const double width = flow.width() - 2.0 * pad - sign_column;
  const QString word =
      report.verdict ? text(certificate.verdict_text) : QStringLiteral("Record only, not evaluated");
  std::string said = certificate.verdict_sentence;
  if (!report.draft.empty()) said += " " + report.draft;
  const TextBlock verdict(word, flow.scale().font(15.0, true), width);
  const TextBlock sentence(text(said), flow.scale().font(8.5), width);
  const QString caution = report.cautions.empty() ? QString() : text(report.cautions.front());
  const TextBlock below(caution, flow.scale().font(kBodyPoints), width);
  const double height = verdict.height() + sentence.height() + below.height() + 2.0 * pad;
  flow.need(height);
  const QRectF box(flow.left(), flow.y(), flow.width(), height);
  const double frame = flow.mm(0.6);
  const double radius = flow.mm(4.2);
  const auto sign = report.verdict ? std::optional{sign_of(certificate.verdict)} : std::nullopt;
  flow.draw([=](QPainter& painter) {
    const QColor ink = sign ? colour_of(*sign) : colour::kTitle;
    painter.setPen(QPen(ink, frame));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box.adjusted(0.5 * frame, 0.5 * frame, -0.5 * frame, -0.5 * frame));
    QPointF at = box.topLeft() + QPointF(pad + sign_column, pad);
    if (sign) draw_sign(painter, {box.left() + pad + 0.42 * sign_column, box.center().y()}, radius, *sign);
    painter.setPen(ink);
    verdict.draw(painter, at);
    at.ry() += verdict.height();
    painter.setPen(colour::kInk);
    sentence.draw(painter, at);
    at.ry() += sentence.height();
    painter.setPen(colour::kFaintInk);
    below.draw(painter, at);
  });
  flow.skip(height + flow.mm(2.6));
}

/// A figure, and in a line below it the same in the other unit.
QString in_both_units(const std::string& figure, const std::string& also) {
  return also.empty() ? bound_text(figure)
                      : bound_text(figure) + QChar(QChar::LineSeparator) + bound_text(also);
}

void put_summary(PageFlow& flow, const Certificate& certificate) {
  std::vector<TableRow> rows;
  for (const SummaryRow& row : certificate.summary)
    rows.push_back(
        {{{text(row.label), true, std::nullopt},
          {in_both_units(row.required, row.required_also), false, std::nullopt},
          {in_both_units(row.recorded, row.recorded_also), true, std::nullopt},
          {text(row.where), false, std::nullopt},
          {text(row.verdict_text), true, row.verdict ? std::optional{sign_of(*row.verdict)} : std::nullopt}},
         {},
         {}});
  put_table(flow,
            {{QStringLiteral("At a glance")},
             {QStringLiteral("Required"), true},
             {QStringLiteral("Recorded"), true},
             {QStringLiteral("Thermocouple")},
             {QStringLiteral("Verdict")}},
            std::move(rows), kBodyPoints, true);
  flow.skip(flow.mm(1.5));
}

void put_welds(PageFlow& flow, const Report& report) {
  std::vector<TableRow> rows;
  for (const WeldRow& weld : report.welds)
    rows.push_back({{{text(weld.number), true, std::nullopt},
                     plain_cell(weld.thickness),
                     {text(weld.material), false, std::nullopt},
                     {text(weld.verdict_text), true, sign_of(weld.verdict)}},
                    {},
                    {}});
  put_table(flow,
            {{QStringLiteral("Weld")},
             {QStringLiteral("Thickness"), true},
             {QStringLiteral("Material")},
             {QStringLiteral("Verdict")}},
            std::move(rows), kBodyPoints, true);
  flow.skip(flow.mm(1.5));
}

/// Without what only the large chart has room for.
Chart brief(Chart chart) {
  chart.phases.clear();
  chart.periods.clear();
  chart.remarks.clear();
  chart.takeovers.clear();
  chart.deviations.clear();
  // The worst come first.
  std::erase_if(chart.marks, [](const ChartMark& mark) {
    return mark.event > kMostMarks || mark.kind == Finding::Kind::note;
  });
  return chart;
}

/// As high as the page allows above the signatures, which stay on it.
void put_small_chart(PageFlow& flow, const std::shared_ptr<const Report>& report,
                     const Certificate& certificate) {
  const double below = signature_height(flow, *report) + flow.mm(3.0);
  if (flow.room() < below) flow.new_page();
  const double height = std::min(flow.room() - below, flow.mm(kLargestChart_mm));
  if (height < flow.mm(kSmallestChart_mm)) return;  // the large chart is on the next page
  const QRectF area(flow.left(), flow.y(), flow.width(), height - flow.mm(2.0));
  const auto chart = std::make_shared<const Chart>(brief(chart_of_weld(*report, certificate.weld)));
  flow.draw([chart, area, scale = flow.scale()](QPainter& painter) {
    paint_chart_with_legend(painter, area, scale, *chart, false);
  });
  flow.skip(height);
}

/// Of a record that nothing was required of.
Certificate of_record_only(const Report& report) {
  Certificate certificate;
  certificate.subject = report.subject;
  certificate.verdict_sentence = report.verdict_sentence;
  certificate.work = report.job;
  certificate.treatment = report.record;
  return certificate;
}

void put_certificate(PageFlow& flow, const std::shared_ptr<const Report>& report,
                     const Certificate& certificate, const IssueFacts& issue, bool first) {
  put_title(flow, *report, certificate, issue, first);
  put_unsaved(flow, *report);
  put_verdict(flow, *report, certificate);
  std::vector<LabelColumn> columns;
  if (!certificate.work.empty()) columns.push_back({QStringLiteral("Work"), certificate.work});
  columns.push_back({QStringLiteral("Treatment and record"), certificate.treatment});
  put_fact_columns(flow, columns);
  flow.skip(flow.mm(1.5));
  if (first && report->welds.size() > 1) put_welds(flow, *report);
  put_summary(flow, certificate);
  if (!report->chart.traces.empty()) put_small_chart(flow, report, certificate);
  const double rounding = 1.0;  // pixel
  flow.skip(std::max(0.0, flow.room() - signature_height(flow, *report) - rounding));
  put_signatures(flow, *report);
}

}  // namespace

void put_certificates(PageFlow& flow, const std::shared_ptr<const Report>& report, const IssueFacts& issue) {
  if (report->certificates.empty()) {
    put_certificate(flow, report, of_record_only(*report), issue, true);
    return;
  }
  for (std::size_t i = 0; i < report->certificates.size(); ++i) {
    if (i > 0) flow.new_page();
    put_certificate(flow, report, report->certificates[i], issue, i == 0);
  }
}

}  // namespace soakwright::pdf
