// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/report_print.h"

#include <QPageLayout>
#include <QPaintEngine>
#include <QPainter>
#include <QPrinter>
#include <algorithm>
#include <vector>

#include "app/gui/background/report_printer.h"
#include "app/pdf/report_pages.h"
#include "app/pdf/report_writer.h"

namespace soakwright::gui {
namespace {

constexpr double kMillimetresPerInch = 25.4;
constexpr int kFinest = 1200;  ///< dots per inch; a page has no finer lines

void lay_out(QPrinter& printer, bool landscape, Paper paper) {
  printer.setPageSize(QPageSize(paper == Paper::letter ? QPageSize::Letter : QPageSize::A4));
  printer.setPageOrientation(landscape ? QPageLayout::Landscape : QPageLayout::Portrait);
  printer.setPageMargins(QMarginsF(0, 0, 0, 0));
}

/// Whether the sheet lies as the page does. A preview turns none once it has begun.
bool turned(QPrinter& printer, bool landscape, Paper paper, bool begun) {
  const auto lies = [&] {
    return landscape == (printer.pageLayout().orientation() == QPageLayout::Landscape);
  };
  const bool fixed = begun && printer.paintEngine()->type() == QPaintEngine::Picture;
  if (!lies() && !fixed) lay_out(printer, landscape, paper);
  return lies();
}

/// The page on its side, to be read from the right.
void put_on_its_side(QPainter& painter, const QPrinter& printer) {
  painter.translate(0.0, printer.pageLayout().fullRectPixels(printer.resolution()).height());
  painter.rotate(-90.0);
}

Problem failed(const char* what, const char* help) { return {ProblemKind::cannot_write, {}, 0, what, help}; }

}  // namespace

void prepare_sheet(const Report& report, QPrinter& printer) {
  printer.setFullPage(true);
  printer.setResolution(std::min(std::max(printer.resolution(), 300), kFinest));
  lay_out(printer, false, report.paper);
}

Problems print_report(const std::shared_ptr<const Report>& report, QPrinter& printer) {
  prepare_sheet(*report, printer);
  // An export or a verification may be printing on another thread.
  const auto turn = printing_turn();
  pdf::IssueFacts issue;
  if (const auto unreadable = issue_facts(*report, issue)) return {*unreadable};
  const std::vector<pdf::Page> pages =
      pdf::report_pages(report, pdf::Scale(printer.resolution() / kMillimetresPerInch), issue);
  const int first = printer.fromPage() > 0 ? printer.fromPage() : 1;
  const int last = printer.toPage() > 0 ? printer.toPage() : static_cast<int>(pages.size());
  QPainter painter;
  bool begun = false;
  for (int number = first; number <= std::min(last, static_cast<int>(pages.size())); ++number) {
    const pdf::Page& page = pages[static_cast<std::size_t>(number - 1)];
    const bool lies = turned(printer, page.landscape, report->paper, begun);
    if (begun ? !printer.newPage() : !painter.begin(&printer))
      return {failed("the printer takes no page", "see whether it is ready, or choose another")};
    begun = true;
    painter.setRenderHint(QPainter::Antialiasing);
    for (const auto& item : page.items) {
      painter.save();
      if (!lies) put_on_its_side(painter, printer);
      item(painter);
      painter.restore();
    }
  }
  if (!begun) return {failed("no page was chosen", "choose pages that the report has")};
  if (!painter.end()) return {failed("the report was not printed to its end", "print it again")};
  return {};
}

}  // namespace soakwright::gui
