// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <QFile>
#include <QImage>
#include <QXmlStreamReader>
#include <memory>

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

TEST_CASE("a path that ends in .svg gets the same chart as SVG, sound XML with its words as text") {
  need_application_and_font();
  const QString path = QStringLiteral("/tmp/soakwright-chart-%1.SVG").arg(QCoreApplication::applicationPid());
  Analysis analysis = made_up_analysis();
  auto job = std::make_shared<Job>(*analysis.job);
  job->work = "Drum <b>D-3</b> & \"nozzle\"";
  analysis.job = job;
  REQUIRE_FALSE(write_chart_picture(make_report(analysis), path.toStdString(), 1200, 800));
  QFile file(path);
  REQUIRE(file.open(QIODevice::ReadOnly));
  QXmlStreamReader xml(&file);
  int lines = 0;
  QString words;
  bool svg = false;
  while (!xml.atEnd()) {
    xml.readNext();
    if (xml.isStartElement()) {
      svg = svg || xml.name() == u"svg";  // SVG 1.1, 5.1
      if (xml.name() == u"polyline" || xml.name() == u"path") ++lines;
    }
    if (xml.isCharacters()) words += xml.text();
  }
  INFO(xml.errorString().toStdString());
  CHECK_FALSE(xml.hasError());
  CHECK(svg);
  CHECK(lines > 4);
  CHECK(words.contains(QStringLiteral("Drum <b>D-3</b> & \"nozzle\"")));
  file.remove();
}

TEST_CASE("a picture of no size is refused") {
  need_application_and_font();
  const auto problem = write_chart_picture(make_report(made_up_analysis()), "/tmp/never.png", 0, 0);
  REQUIRE(problem);
  CHECK(problem->kind == ProblemKind::fault);
  CHECK_FALSE(QFile::exists(QStringLiteral("/tmp/never.png")));
}
