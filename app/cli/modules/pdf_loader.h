// SPDX-License-Identifier: GPL-3.0-or-later
// The writer of reports and charts, which needs Qt and is therefore a module of its own: soakwright-pdf
// beside the program or in ../lib/soakwright/modules, opened when a report or a chart is asked for. It prints
// the Report that it is given and analyses nothing. What both sides agree on: core/report/pdf_border.h.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "core/problems/problem.h"
#include "core/report/pdf_border.h"
#include "core/report/report.h"

namespace soakwright::cli {

class PdfModule {
 public:
  /// Opens the module; where there is none, or one of another build, the problem says so (69).
  static std::variant<PdfModule, Problem> open();

  /// The report with its files as PDF. Returns nullopt if it is written.
  [[nodiscard]] std::optional<Problem> write_report(const ReportContents& contents,
                                                    const std::string& path) const;
  /// The chart alone, as PNG or, where the path ends in .svg, as SVG.
  [[nodiscard]] std::optional<Problem> write_chart(const Report& report, const std::string& path) const;
  /// The bytes that writing the report would give.
  [[nodiscard]] Result<std::string> print_report(const ReportContents& contents) const;
  /// A PDF of one page with the words of a signature.
  [[nodiscard]] Result<std::string> print_signature(const SignatureWords& words) const;

 private:
  PdfModule() = default;
  PdfModuleWriteReport* write_report_ = nullptr;
  PdfModuleWriteChart* write_chart_ = nullptr;
  PdfModulePrintReport* print_report_ = nullptr;
  PdfModulePrintSignature* print_signature_ = nullptr;
};

}  // namespace soakwright::cli
