// SPDX-License-Identifier: GPL-3.0-or-later
// The module that a program without Qt opens when a report is asked for. What both agree on:
// core/report/pdf_border.h.
#include <QGuiApplication>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string>
#include <utility>

#include "app/pdf/pages/signature_print.h"
#include "app/pdf/report_writer.h"
#include "core/problems/caught.h"
#include "core/report/pdf_border.h"
#include "core/units/printable_text.h"

#ifdef _WIN32
#define SOAKWRIGHT_MODULE_ENTRY extern "C" __declspec(dllexport)
#else
#define SOAKWRIGHT_MODULE_ENTRY extern "C" __attribute__((visibility("default")))
#endif

namespace {

using namespace soakwright;

/// Qt talks of its surroundings (runtime folders, plug-ins) on standard error, which belongs to the program.
/// After a fatal message it would abort: the program ends with an exit code instead. No part file can be
/// there, since files are written only once all is painted.
void keep_quiet(QtMsgType type, const QMessageLogContext& /*where*/, const QString& words) {
  if (type != QtFatalMsg) return;
  std::fprintf(stderr,
               "soakwright: the report writer cannot go on: %s; close other programs, or use --json\n",
               printable(words.toStdString()).c_str());
  std::_Exit(static_cast<int>(ProblemKind::fault));
}

/// Fonts need an application object; printing needs no display, so none is asked for even where there is one.
/// It stays until the program ends.
void bring_application() {
  if (QCoreApplication::instance() != nullptr) return;
  static int count = 3;
  static char program[] = "soakwright";
  static char platform[] = "-platform";
  static char offscreen[] = "offscreen";
  static char* arguments[] = {program, platform, offscreen, nullptr};
  // GLib's own event loop aborts where no file can be opened; Qt's says so.
  qputenv("QT_NO_GLIB", "1");
  qInstallMessageHandler(keep_quiet);
  static const auto* application = new QGuiApplication(count, arguments);
  static_cast<void>(application);
}

/// What `work` leaves behind: nothing, or the problem that it met.
template <typename Work>
bool done(const Work& work, const std::string& path, Problem& problem) {
  try {
    bring_application();
    std::optional<Problem> failed = work();
    if (!failed) return true;
    problem = std::move(*failed);
  } catch (...) {
    problem = caught_problem(path);
  }
  return false;
}

/// Hands the document over, or says why there is none.
std::optional<Problem> hand_over(Result<std::string> printed, std::string& document) {
  if (!printed) return printed.problems().front();
  document = std::move(printed).value();
  return std::nullopt;
}

}  // namespace

SOAKWRIGHT_MODULE_ENTRY const char* soakwright_pdf_layout() {
  static const std::string layout = pdf_module_layout(SOAKWRIGHT_VERSION);
  return layout.c_str();
}

SOAKWRIGHT_MODULE_ENTRY bool soakwright_write_report(const soakwright::ReportContents* contents,
                                                     const std::string* path, soakwright::Problem* problem) {
  return done([&] { return write_report(*contents, *path); }, *path, *problem);
}

/// PNG, or SVG where the path ends in .svg.
SOAKWRIGHT_MODULE_ENTRY bool soakwright_write_chart(const soakwright::Report* report, const std::string* path,
                                                    soakwright::Problem* problem) {
  return done([&] { return write_chart_picture(*report, *path); }, *path, *problem);
}

SOAKWRIGHT_MODULE_ENTRY bool soakwright_print_report(const soakwright::ReportContents* contents,
                                                     std::string* document, soakwright::Problem* problem) {
  return done([&] { return hand_over(report_document(*contents), *document); }, {}, *problem);
}

SOAKWRIGHT_MODULE_ENTRY bool soakwright_print_signature(const soakwright::SignatureWords* words,
                                                        std::string* document, soakwright::Problem* problem) {
  return done([&] { return hand_over(print_signature(*words), *document); }, {}, *problem);
}
