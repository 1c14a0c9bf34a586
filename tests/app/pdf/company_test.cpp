// SPDX-License-Identifier: GPL-3.0-or-later
// The company's name and picture at the head of the report.
#include <QImage>
#include <QTemporaryDir>
#include <fstream>

#include <catch2/catch.hpp>

#include "app/pdf/report_writer.h"
#include "tests/app/pdf/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;
using Catch::Matchers::Contains;

namespace {

Report report_of(const QTemporaryDir& folder, const char* picture) {
  Report report = make_report(made_up_analysis());
  report.company = {"Brackwater Fabrication", "Quay Road 4\nPort Ellery",
                    folder.filePath(QString::fromUtf8(picture)).toStdString()};
  return report;
}

}  // namespace

TEST_CASE("the company's picture and name are on page 1, and what was see-through is white") {
  need_application_and_font();
  const QTemporaryDir folder;
  QImage picture(400, 200, QImage::Format_ARGB32);
  picture.fill(Qt::transparent);
  REQUIRE(picture.save(folder.filePath(QStringLiteral("mark.png"))));
  const Printed printed(report_of(folder, "mark.png"));
  const std::string images = output_of("pdfimages", {"-list", printed.path()});
  CHECK_THAT(images, Contains("   1     0 image"));
  CHECK_THAT(images, !Contains("smask"));  // ISO 19005-1, 6.4: no transparency
  CHECK_THAT(printed.text(1), Contains("Brackwater Fabrication") && Contains("Quay Road 4"));
}

TEST_CASE("a picture that is not there, or is none, is refused with what helps") {
  need_application_and_font();
  const QTemporaryDir folder;
  std::ofstream(folder.filePath(QStringLiteral("text.png")).toStdString()) << "no picture";
  const std::string target = folder.filePath(QStringLiteral("report.pdf")).toStdString();
  const auto missing = write_report({report_of(folder, "never.png")}, target);
  REQUIRE(missing);
  CHECK(missing->kind == ProblemKind::cannot_open);
  const auto broken = write_report({report_of(folder, "text.png")}, target);
  REQUIRE(broken);
  CHECK(broken->kind == ProblemKind::bad_input);
  CHECK_THAT(broken->text(), Contains("PNG or JPEG") && Contains("[company]"));
  CHECK_FALSE(std::ifstream(target).good());
}
