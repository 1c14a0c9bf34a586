#include <QCoreApplication>
#include <QFile>
#include <QImage>

#include <catch2/catch.hpp>

#include "app/pdf/report_writer.h"
#include "tests/app/pdf/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;

TEST_CASE("the chart can be had as a picture, with traces on it") {
  need_application_and_font();
  const std::string path = QStringLiteral("%1/soakwright-chart-%2.png")
                               .arg(QStringLiteral("/tmp"))
                               .arg(QCoreApplication::applicationPid())
                               .toStdString();
  REQUIRE_FALSE(write_chart_picture(make_report(made_up_analysis()), path, 1200, 800));
  const QImage image(QString::fromStdString(path));
  QFile::remove(QString::fromStdString(path));
  REQUIRE(image.size() == QSize(1200, 800));
  // The first trace's own blue is drawn, and the sheet is mostly white.
  int blue = 0;
  int white = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) {
      const QColor c = image.pixelColor(x, y);
      if (c == QColor(Qt::white)) ++white;
      if (c.blue() > c.red() + 60 && c.blue() > c.green() + 30) ++blue;
    }
  CHECK(blue > 200);
  CHECK(white > image.width() * image.height() / 2);
}

TEST_CASE("a picture of no size is refused") {
  need_application_and_font();
  const auto problem = write_chart_picture(make_report(made_up_analysis()), "/tmp/never.png", 0, 0);
  REQUIRE(problem);
  CHECK(problem->kind == ProblemKind::no_such_part);
  CHECK_FALSE(QFile::exists(QStringLiteral("/tmp/never.png")));
}
