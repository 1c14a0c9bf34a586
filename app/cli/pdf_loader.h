// The writer of reports and charts, which needs Qt and is therefore a module of its own: soakwright-pdf
// beside the program or in
// ../lib/soakwright, opened when a report is asked for.
//
// The module's entries, soakwright_write_report and soakwright_write_chart, whose shape both sides keep:
//   extern "C" int ENTRY(const soakwright::Analysis* analysis, int fahrenheit, const char* path, char*
//   message,
//                        unsigned long size);
// fahrenheit: 1 prints in F, 0 in C, -1 in the procedure's unit. It answers 0, or an exit code with the
// problem, ended by a zero, in the `size` bytes of `message`. It writes the file whole or not at all.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/evaluate/analysis.h"
#include "core/problems/problem.h"
#include "core/units/temperature.h"

namespace soakwright {

class PdfModule {
 public:
  /// Opens the module; where there is none, the problem says so (69).
  static std::variant<PdfModule, Problem> open();

  /// What went wrong, if anything: the exit code and the words.
  struct Failure {
    int exit_code = 0;
    std::string text;
  };
  [[nodiscard]] std::optional<Failure> write_report(const Analysis& analysis,
                                                    std::optional<TemperatureUnit> unit,
                                                    const std::string& path) const;
  /// The chart alone, as PNG.
  [[nodiscard]] std::optional<Failure> write_chart(const Analysis& analysis,
                                                   std::optional<TemperatureUnit> unit,
                                                   const std::string& path) const;

 private:
  using Entry = int (*)(const Analysis*, int, const char*, char*, unsigned long);
  static std::optional<Failure> call(Entry entry, const Analysis& analysis,
                                     std::optional<TemperatureUnit> unit, const std::string& path);
  PdfModule(Entry report, Entry chart) : report_(report), chart_(chart) {}
  Entry report_;
  Entry chart_;
};

}  // namespace soakwright
