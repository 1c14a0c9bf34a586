// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/pdf/printed.h"

#include <QFontDatabase>
#include <QGuiApplication>
#include <QProcess>
#include <filesystem>

#include <catch2/catch.hpp>

#include "app/pdf/report_writer.h"

namespace soakwright {

void need_application_and_font() {
  if (QCoreApplication::instance() == nullptr) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    static int count = 1;
    static char name[] = "pdf_tests";
    static char* arguments[] = {name, nullptr};
    static QGuiApplication application(count, arguments);
  }
  INFO("no font is installed: install fonts-dejavu-core");
  REQUIRE_FALSE(QFontDatabase::families().isEmpty());
}

std::string output_of(const std::string& program, const std::vector<std::string>& arguments) {
  QProcess process;
  QStringList list;
  for (const std::string& argument : arguments) list << QString::fromStdString(argument);
  process.start(QString::fromStdString(program), list);
  INFO(program);
  REQUIRE(process.waitForFinished(60'000));
  INFO(process.readAllStandardError().toStdString());
  REQUIRE(process.exitCode() == 0);
  return process.readAllStandardOutput().toStdString();
}

Printed::Printed(const Report& report, const std::string& name) {
  need_application_and_font();
  static int number = 0;
  folder_ = (std::filesystem::temp_directory_path() /
             ("soakwright-pdf-" + std::to_string(QCoreApplication::applicationPid()) + "-" +
              std::to_string(++number)))
                .string();
  std::filesystem::create_directories(folder_);
  path_ = folder_ + "/" + name;
  const auto problem = write_report({report}, path_);
  INFO((problem ? problem->text() : std::string{}));
  REQUIRE_FALSE(problem);
}

Printed::~Printed() {
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

int Printed::pages() const {
  const QString info = QString::fromStdString(output_of("pdfinfo", {path_}));
  return info.section(QStringLiteral("Pages:"), 1).section(QLatin1Char('\n'), 0, 0).trimmed().toInt();
}

std::string Printed::text(int page) const {
  std::vector<std::string> arguments;
  if (page > 0) arguments = {"-f", std::to_string(page), "-l", std::to_string(page)};
  arguments.insert(arguments.end(), {"-layout", "-enc", "UTF-8", path_, "-"});
  return QString::fromStdString(output_of("pdftotext", arguments)).simplified().toStdString();
}

}  // namespace soakwright
