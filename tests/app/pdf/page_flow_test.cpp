// SPDX-License-Identifier: GPL-3.0-or-later
// Common practice of typesetting, no source: no heading without what follows it, no row alone.
#include "app/pdf/page_flow.h"

#include <QTemporaryDir>
#include <fstream>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "app/pdf/chart/label_layout.h"
#include "app/pdf/page_table.h"
#include "app/pdf/pdf_document.h"
#include "tests/app/pdf/printed.h"

using namespace soakwright;
using namespace soakwright::pdf;

namespace {

/// The text of each page.
std::vector<std::string> texts_of(PageFlow& flow) {
  const QByteArray bytes = pdf_document(flow.finish({}), {});
  const QTemporaryDir folder;
  const std::string path = folder.filePath(QStringLiteral("pages.pdf")).toStdString();
  std::ofstream(path, std::ios::binary).write(bytes.constData(), bytes.size());
  std::vector<std::string> pages;
  const QString all = QString::fromStdString(output_of("pdftotext", {"-layout", path, "-"}));
  for (const QString& page : all.split(QChar(u'\f'), Qt::SkipEmptyParts))
    pages.push_back(page.simplified().toStdString());
  return pages;
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++count;
  return count;
}

}  // namespace

TEST_CASE("wherever on a page a table begins, its heading is with it and no row is alone") {
  need_application_and_font();
  constexpr std::size_t kRows = 24;
  for (int offset = 60; offset <= 258; offset += 6) {
    PageFlow flow(pdf_scale());
    flow.skip(flow.mm(offset));
    flow.heading(QStringLiteral("Main title"), 0.0);
    flow.subheading(QStringLiteral("Second title"), 0.0);
    std::vector<TableRow> rows;
    for (std::size_t i = 0; i < kRows; ++i)
      rows.push_back({{{QStringLiteral("cell-%1").arg(i), false, std::nullopt}}, {}, {}});
    put_table(flow, {{QStringLiteral("Column")}}, std::move(rows));
    std::size_t all = 0;
    for (const std::string& page : texts_of(flow)) {
      INFO(offset << " mm: " << page);
      const std::size_t cells = count_of(page, "cell-");
      all += cells;
      CHECK(cells != 1);
      CHECK((page.find("title") != std::string::npos) == (page.find("cell-0") != std::string::npos));
      CHECK(count_of(page, "Column") == (cells > 0 ? 1U : 0U));
    }
    CHECK(all == kRows);
  }
}

TEST_CASE("a small table is not broken over pages") {
  need_application_and_font();
  for (int offset = 200; offset <= 250; offset += 10) {
    PageFlow flow(pdf_scale());
    flow.skip(flow.mm(offset));
    std::vector<TableRow> rows;
    for (int i = 0; i < 8; ++i)
      rows.push_back({{{QStringLiteral("cell-%1").arg(i), false, std::nullopt}}, {}, {}});
    put_table(flow, {{QStringLiteral("Column")}}, std::move(rows));
    for (const std::string& page : texts_of(flow)) {
      INFO(page);
      const std::size_t cells = count_of(page, "cell-");
      CHECK((cells == 0 || cells == 8));
    }
  }
}

TEST_CASE("a lying page goes behind the current one, and the flow goes on where it was") {
  need_application_and_font();
  PageFlow flow(pdf_scale(), Paper::letter);
  const double y = flow.y();
  flow.insert_lying_page([](QPainter&, const QRectF&) {});
  CHECK(flow.y() == y);
  flow.new_page();
  const std::vector<Page> pages = flow.finish({});
  REQUIRE(pages.size() == 3);
  CHECK_FALSE(pages[0].landscape);
  CHECK(pages[1].landscape);
  CHECK_FALSE(pages[2].landscape);
  CHECK(pages[1].used == 1.0);
}

TEST_CASE("a label is put where it meets no other, or left out") {
  const QRectF area(0, 0, 100, 40);
  LabelLayout places(area);
  const QRectF box(10, 10, 30, 8);
  std::vector<QRectF> placed;
  for (int i = 0; i < 40; ++i) {
    const auto place = places.place({box});
    if (!place) continue;
    CHECK(area.contains(*place));
    for (const QRectF& other : placed) CHECK_FALSE(other.intersects(*place));
    placed.push_back(*place);
  }
  CHECK(placed.size() >= 6);
  CHECK(placed.size() < 40);  // there is no room for so many
}
