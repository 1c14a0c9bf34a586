// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/report_writer.h"

#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QImageReader>
#include <QPainter>
#include <QSvgGenerator>
#include <functional>
#include <future>
#include <memory>

#include "app/evidence/evidence_update.h"
#include "app/pdf/chart/chart_painter.h"
#include "app/pdf/pages/signature_boxes.h"
#include "app/pdf/pdf_document.h"
#include "app/pdf/report_pages.h"
#include "core/system/atomic_file.h"

namespace soakwright {
namespace {

std::optional<Problem> cannot_paint(const std::string& path, const char* what, const char* help) {
  return Problem{ProblemKind::fault, path, 0, what, help};
}

std::optional<Problem> no_font(const std::string& path) {
  return cannot_paint(path, "no usable font is installed, so no letter can be printed",
                      "install one, such as the package fonts-dejavu-core");
}

/// For builds that can be repeated (reproducible-builds.org, SOURCE_DATE_EPOCH); else the present.
QDateTime creation_time() {
  bool ok = false;
  const qint64 seconds = qEnvironmentVariable("SOURCE_DATE_EPOCH").toLongLong(&ok);
  return ok ? QDateTime::fromSecsSinceEpoch(seconds, Qt::UTC) : QDateTime::currentDateTimeUtc();
}

/// The day on which the report is made, by this computer's clock.
QString issue_date() {
  const QDateTime now = creation_time();
  const bool repeated = qEnvironmentVariableIsSet("SOURCE_DATE_EPOCH");
  return (repeated ? now : now.toLocalTime()).date().toString(Qt::ISODate);
}

/// The company's picture on white, since the document knows no transparency, and no larger than print can
/// show. Untouched where none is named.
std::optional<Problem> read_picture(const Letterhead& company, QImage& picture) {
  constexpr int kMostPixels = 1200;
  if (company.picture.empty()) return std::nullopt;
  QImageReader reader(QString::fromStdString(company.picture));
  reader.setDecideFormatFromContent(true);
  const QByteArray format = reader.format();
  QImage read = format == "png" || format == "jpeg" ? reader.read() : QImage();
  if (read.isNull()) {
    const bool there = QFile::exists(QString::fromStdString(company.picture));
    return Problem{there ? ProblemKind::bad_input : ProblemKind::cannot_open, company.picture, 0,
                   there ? "the company's picture is no PNG or JPEG that can be read"
                         : "the company's picture is not there",
                   "`picture` in [company] of the job names a PNG or JPEG file"};
  }
  if (read.width() > kMostPixels || read.height() > kMostPixels)
    read = read.scaled(kMostPixels, kMostPixels, Qt::KeepAspectRatio, Qt::SmoothTransformation);
  QImage flat(read.size(), QImage::Format_RGB32);
  flat.fill(Qt::white);
  QPainter(&flat).drawImage(0, 0, read);
  picture = flat;
  return std::nullopt;
}

std::optional<Problem> write_bytes(const std::string& path, const QByteArray& bytes) {
  return write_file_whole(path, {bytes.constData(), static_cast<std::size_t>(bytes.size())});
}

QString text_below_title(const Report& report) {
  const QString verdict = report.verdict ? pdf::text(report.verdict_text) + QStringLiteral(". ") : QString();
  return verdict + pdf::text(report.verdict_sentence);
}

void paint_chart(QPaintDevice& device, const Report& report, const QSize& size) {
  constexpr double kSheetWidth_mm = 270.0;  // as the chart's page, so that letters have the same share of it
  const pdf::Scale scale(size.width() / kSheetWidth_mm);
  QPainter painter(&device);
  painter.setRenderHint(QPainter::Antialiasing);
  const double margin = scale.mm(5.0);
  pdf::paint_chart_sheet(painter, QRectF(QPointF(0, 0), size).adjusted(margin, margin, -margin, -margin),
                         scale, report.chart, text_below_title(report));
}

/// Empty where a picture of that size cannot be made.
QByteArray png_of(const Report& report, const QSize& size) {
  QImage image(size, QImage::Format_RGB32);
  if (image.isNull()) return {};
  image.fill(Qt::white);
  paint_chart(image, report, size);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  return image.save(&buffer, "PNG") ? bytes : QByteArray();
}

QByteArray svg_of(const Report& report, const QSize& size) {
  if (size.isEmpty()) return {};
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QSvgGenerator svg;
  svg.setOutputDevice(&buffer);
  svg.setSize(size);
  svg.setViewBox(QRect(QPoint(0, 0), size));
  paint_chart(svg, report, size);
  return bytes;
}

bool wants_svg(const std::string& path) {
  return QString::fromStdString(path).endsWith(QLatin1String(".svg"), Qt::CaseInsensitive);
}

}  // namespace

std::optional<Problem> issue_facts(const Report& report, pdf::IssueFacts& issue) {
  issue.date = issue_date();
  return read_picture(report.company, issue.picture);
}

Result<std::string> report_document(const ReportContents& contents, const Watch& watch) {
  if (!pdf::usable_font()) return *no_font({});
  const Report& report = contents.report;
  // The pages draw from the report until they are printed, all within this call.
  const std::shared_ptr<const Report> lent(&report, [](const Report*) {});
  const QDateTime created =
      contents.created_s ? QDateTime::fromSecsSinceEpoch(*contents.created_s, Qt::UTC) : creation_time();
  const std::string issued = contents.issued.empty() ? issue_date().toStdString() : contents.issued;
  pdf::IssueFacts issue{QString::fromStdString(issued), {}};
  if (auto unreadable = read_picture(report.company, issue.picture)) return std::move(*unreadable);
  // Both take about as long. Where no thread can be started, the files are packed when they are needed.
  auto files = std::async(std::launch::async | std::launch::deferred, evidence::packed,
                          std::cref(contents.files), std::cref(watch));
  const auto pages = pdf::report_pages(lent, pdf::pdf_scale(), issue, watch);
  const pdf::DocumentFacts facts{pdf::text(report.title),
                                 pdf::text(report.author),
                                 pdf::text(report.subject),
                                 pdf::text(report.program),
                                 created,
                                 report.paper};
  const QByteArray bytes = pdf::pdf_document(pages, facts, watch);
  const std::vector<evidence::PackedFile> packed = files.get();
  if (watch.stopped()) return Problems{};
  if (bytes.isEmpty())
    return *cannot_paint({}, "the pages could not be painted", "free some memory and try again");
  return evidence::with_evidence({bytes.toStdString(), pdf::signature_boxes(pages, report),
                                  pdf::printing_set_up(), issued, created.toSecsSinceEpoch()},
                                 contents, packed);
}

std::optional<Problem> write_report(const ReportContents& contents, const std::string& path) {
  auto document = report_document(contents);
  if (document) return write_file_whole(path, document.value());
  Problem problem = document.problems().front();
  if (problem.file.empty()) problem.file = path;
  return problem;
}

std::optional<Problem> write_chart_picture(const Report& report, const std::string& path, int width,
                                           int height) {
  if (!pdf::usable_font()) return no_font(path);
  const QSize size(width, height);
  const QByteArray bytes = wants_svg(path) ? svg_of(report, size) : png_of(report, size);
  if (bytes.isEmpty())
    return cannot_paint(path, "a picture of that size cannot be made",
                        "ask for one that is smaller and not empty");
  return write_bytes(path, bytes);
}

}  // namespace soakwright
