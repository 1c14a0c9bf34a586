// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pdf/pages/signature_boxes.h"

#include <QPageSize>
#include <QRawFont>
#include <set>

#include "app/pdf/pdf_document.h"
#include "app/pdf/sheet_style.h"

namespace soakwright::pdf {
namespace {

constexpr double kPointsPerMillimetre = 72.0 / 25.4;

/// As QPdfWriter has it: whole points.
double page_height(bool landscape, Paper paper) {
  const QPageSize size(paper == Paper::letter ? QPageSize::Letter : QPageSize::A4);
  const QSize points = size.sizePoints();
  return landscape ? points.width() : points.height();
}

std::string font_fingerprint(const QFont& font) {
  const QRawFont raw = QRawFont::fromFont(font);
  const QByteArray head = raw.fontTable("head");
  return raw.familyName().toStdString() + ' ' + raw.styleName().toStdString() + ' ' +
         head.mid(4, 8).toHex().toStdString();  // fontRevision, checksumAdjustment
}

}  // namespace

std::vector<evidence::SignatureBox> signature_boxes(const std::vector<Page>& pages, const Report& report) {
  const double points = kPointsPerMillimetre / pdf_scale().mm(1.0);
  std::vector<evidence::SignatureBox> boxes;
  std::set<std::size_t> seen;
  for (std::size_t page = 0; page < pages.size(); ++page) {
    const double height = page_height(pages[page].landscape, report.paper);
    for (const PlaceBox& one : pages[page].places) {
      // A report with a certificate for each weld is signed once, on the first.
      if (!seen.insert(one.place).second) continue;
      const SignaturePlace& place = report.signatures[one.place];
      boxes.push_back({place.kind,
                       place.name,
                       page,
                       {points * one.box.left(), height - points * one.box.bottom(), points * one.box.right(),
                        height - points * one.box.top()}});
    }
  }
  return boxes;
}

std::string printing_set_up() {
  const Scale scale = pdf_scale();
  return std::string("Qt ") + qVersion() + "; " + font_fingerprint(scale.font(9.0)) + "; " +
         font_fingerprint(scale.font(9.0, true));
}

}  // namespace soakwright::pdf
