#include "app/pdf/report_writer.h"

#include <QBuffer>
#include <QImage>
#include <QPainter>
#include <memory>

#include "app/pdf/atomic_file.h"
#include "app/pdf/chart_painter.h"
#include "app/pdf/pdf_document.h"
#include "app/pdf/report_pages.h"

namespace soakwright {
namespace {

std::optional<Problem> cannot_paint(const std::string& path, const char* what, const char* help) {
  return Problem{ProblemKind::no_such_part, path, 0, what, help};
}

std::optional<Problem> no_font(const std::string& path) {
  return cannot_paint(path, "no font is installed, so nothing can be written on pdf",
                      "install one, such as the package fonts-dejavu-core");
}

/// For builds that can be repeated (reproducible-builds.org, SOURCE_DATE_EPOCH); else the present.
QDateTime creation_time() {
  bool ok = false;
  const qint64 seconds = qEnvironmentVariable("SOURCE_DATE_EPOCH").toLongLong(&ok);
  return ok ? QDateTime::fromSecsSinceEpoch(seconds, Qt::UTC) : QDateTime::currentDateTimeUtc();
}

}  // namespace

std::optional<Problem> write_report(const Report& report, const std::string& path) {
  if (!pdf::any_font()) return no_font(path);
  // The pages draw from the report until they are printed, all within this call.
  const std::shared_ptr<const Report> lent(&report, [](const Report*) {});
  const auto pages = pdf::report_pages(lent, pdf::pdf_scale());
  const pdf::DocumentFacts facts{pdf::text(report.title), pdf::text(report.author), pdf::text(report.subject),
                                 pdf::text(report.program), creation_time()};
  const QByteArray bytes = pdf::pdf_document(pages, facts);
  if (bytes.isEmpty())
    return cannot_paint(path, "the pages could not be painted", "free some memory and try again");
  return pdf::write_whole(bytes, path);
}

std::optional<Problem> write_chart_picture(const Report& report, const std::string& path, int width,
                                           int height) {
  if (!pdf::any_font()) return no_font(path);
  QImage image(width, height, QImage::Format_RGB32);
  if (image.isNull())
    return cannot_paint(path, "a picture of that size cannot be made",
                        "ask for one that is smaller and not empty");
  image.fill(Qt::white);
  {
    constexpr double kSheetWidth_mm =
        270.0;  // as the chart's page, so that letters have the same share of it
    const pdf::Scale scale(width / kSheetWidth_mm);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    const double margin = scale.mm(5.0);
    pdf::paint_chart_sheet(painter, QRectF(image.rect()).adjusted(margin, margin, -margin, -margin), scale,
                           report);
  }
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG"))
    return cannot_paint(path, "the picture could not be made", "ask for one that is smaller");
  return pdf::write_whole(bytes, path);
}

}  // namespace soakwright
