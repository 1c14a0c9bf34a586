// The module that a program without Qt opens when a report is asked for (soakwright-pdf beside the program,
// or in
// ../lib/soakwright). One call at a time, always from one thread.
#include <QGuiApplication>
#include <algorithm>
#include <cstdio>
#include <cstring>
#include <string>

#include "app/pdf/report_writer.h"
#include "core/evaluate/analysis.h"

#ifdef _WIN32
#define SOAKWRIGHT_MODULE_ENTRY extern "C" __declspec(dllexport)
#else
#define SOAKWRIGHT_MODULE_ENTRY extern "C" __attribute__((visibility("default")))
#endif

namespace {

using namespace soakwright;

/// Qt talks of its surroundings (runtime folders, plug-ins) on standard error, which belongs to the program.
void keep_quiet(QtMsgType type, const QMessageLogContext& /*where*/, const QString& words) {
  if (type == QtFatalMsg) std::fprintf(stderr, "soakwright: %s\n", qPrintable(words));
}

/// Fonts need an application object; pdf needs no display, so none is asked for even where there is one. It
/// stays until the program ends.
void bring_application() {
  if (QCoreApplication::instance() != nullptr) return;
  static int count = 3;
  static char program[] = "soakwright";
  static char platform[] = "-platform";
  static char offscreen[] = "offscreen";
  static char* arguments[] = {program, platform, offscreen, nullptr};
  qInstallMessageHandler(keep_quiet);
  static const auto* application = new QGuiApplication(count, arguments);
  static_cast<void>(application);
}

int answer(const std::optional<Problem>& problem, char* message, unsigned long size) {
  if (message != nullptr && size > 0) message[0] = '\0';
  if (!problem) return 0;
  if (message != nullptr && size > 0) {
    const std::string words = problem->text();
    const std::size_t length = std::min<std::size_t>(words.size(), size - 1);
    std::memcpy(message, words.data(), length);
    message[length] = '\0';
  }
  return static_cast<int>(problem->kind);
}

Report report_of(const Analysis& analysis, int fahrenheit) {
  ReportOptions options;
  options.program_version = SOAKWRIGHT_VERSION;
  if (fahrenheit >= 0)
    options.unit = fahrenheit == 0 ? TemperatureUnit::celsius : TemperatureUnit::fahrenheit;
  return make_report(analysis, options);
}

}  // namespace

/// Printed in F (1) or C (0), in the procedure's unit (-1): 0, or an exit code with the problem in `message`
/// (at most `size` bytes, ended by a zero).
SOAKWRIGHT_MODULE_ENTRY int soakwright_write_report(const soakwright::Analysis* analysis, int fahrenheit,
                                                    const char* path, char* message, unsigned long size) {
  bring_application();
  return answer(write_report(report_of(*analysis, fahrenheit), path), message, size);
}

/// The chart alone, as PNG.
SOAKWRIGHT_MODULE_ENTRY int soakwright_write_chart(const soakwright::Analysis* analysis, int fahrenheit,
                                                   const char* path, char* message, unsigned long size) {
  bring_application();
  return answer(write_chart_picture(report_of(*analysis, fahrenheit), path), message, size);
}
