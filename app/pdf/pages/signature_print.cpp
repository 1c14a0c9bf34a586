// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/pages/signature_print.h"

#include <QBuffer>
#include <QFontMetricsF>
#include <QPainter>
#include <QPdfWriter>
#include <algorithm>

#include "app/pdf/fixed_hash_order.h"
#include "app/pdf/pdf_document.h"
#include "app/pdf/sheet_style.h"

namespace soakwright {
namespace {

constexpr double kMillimetresPerPoint = 25.4 / 72.0;
constexpr double kLargest_pt = 7.5;

/// The letter size at which every line fits.
double letter_size(const SignatureWords& words, const pdf::Scale& scale, double width, double height) {
  const double rows = static_cast<double>(std::max<std::size_t>(words.lines.size(), 1));
  double size = std::min(kLargest_pt, height * 72.0 / 25.4 / scale.mm(1.0) / (1.25 * rows));
  for (std::size_t i = 0; i < words.lines.size(); ++i) {
    const double wide = QFontMetricsF(scale.font(size, i == 0)).horizontalAdvance(pdf::text(words.lines[i]));
    if (wide > width) size *= width / wide;
  }
  return size;
}

}  // namespace

Result<std::string> print_signature(const SignatureWords& words) {
  if (!pdf::usable_font())
    return Problem{ProblemKind::fault, "", 0, "no usable font is installed, so no letter can be printed",
                   "install one, such as the package fonts-dejavu-core"};
  const pdf::FixedHashOrder fixed;  // verifying prints the words again
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  const pdf::Scale scale = pdf::pdf_scale();
  {
    QPdfWriter writer(&buffer);
    writer.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
    writer.setResolution(pdf::kDotsPerInch);
    const QPageSize size(QSizeF(words.width_pt, words.height_pt), QPageSize::Point, QString(),
                         QPageSize::ExactMatch);
    writer.setPageLayout({size, QPageLayout::Portrait, QMarginsF(0, 0, 0, 0)});
    QPainter painter;
    if (!painter.begin(&writer))
      return Problem{ProblemKind::fault, "", 0, "the signature could not be painted",
                     "free some memory and try again"};
    const double margin = scale.mm(0.6);
    const double width = scale.mm(words.width_pt * kMillimetresPerPoint) - 2.0 * margin;
    const double height = scale.mm(words.height_pt * kMillimetresPerPoint) - 2.0 * margin;
    const double letters = letter_size(words, scale, width, height);
    const double row = height / static_cast<double>(std::max<std::size_t>(words.lines.size(), 1));
    painter.setPen(pdf::colour::kInk);
    for (std::size_t i = 0; i < words.lines.size(); ++i) {
      painter.setFont(scale.font(letters, i == 0));
      painter.drawText(QRectF(margin, margin + row * static_cast<double>(i), 2.0 * width, row),
                       static_cast<int>(Qt::AlignLeft | Qt::AlignVCenter), pdf::text(words.lines[i]));
    }
    if (!painter.end())
      return Problem{ProblemKind::fault, "", 0, "the signature could not be painted",
                     "free some memory and try again"};
  }
  return bytes.toStdString();
}

}  // namespace soakwright
