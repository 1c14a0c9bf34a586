// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/modules/pdf_loader.h"

#include <utility>

#include "app/cli/modules/separate_process.h"
#include "app/modules/module_file.h"

namespace soakwright::cli {
namespace {

modules::ModuleName pdf_module_name() {
  return {"soakwright-pdf", "--report and --chart are",
          "report writer",  "install the report writer of this build, or use --json",
          kPdfModuleLayout, pdf_module_layout(SOAKWRIGHT_VERSION)};
}

template <typename Entry>
bool take(const modules::ModuleFile& module, const char* name, Entry*& entry) {
  entry = reinterpret_cast<Entry*>(module.entry(name));
  return entry != nullptr;
}

}  // namespace

std::variant<PdfModule, Problem> PdfModule::open() {
  auto opened = modules::ModuleFile::open(pdf_module_name());
  if (auto* problem = std::get_if<Problem>(&opened)) return std::move(*problem);
  const auto& module = std::get<modules::ModuleFile>(opened);
  PdfModule pdf;
  if (!take(module, kPdfModuleWriteReport, pdf.write_report_) ||
      !take(module, kPdfModuleWriteChart, pdf.write_chart_) ||
      !take(module, kPdfModulePrintReport, pdf.print_report_) ||
      !take(module, kPdfModulePrintSignature, pdf.print_signature_))
    return modules::ModuleFile::not_whole(pdf_module_name());
  return pdf;
}

std::optional<Problem> PdfModule::write_report(const ReportContents& contents,
                                               const std::string& path) const {
  return in_separate_process(path, [&]() -> std::optional<Problem> {
    Problem problem;
    return write_report_(&contents, &path, &problem) ? std::nullopt : std::optional(std::move(problem));
  });
}

std::optional<Problem> PdfModule::write_chart(const Report& report, const std::string& path) const {
  return in_separate_process(path, [&]() -> std::optional<Problem> {
    Problem problem;
    return write_chart_(&report, &path, &problem) ? std::nullopt : std::optional(std::move(problem));
  });
}

Result<std::string> PdfModule::print_report(const ReportContents& contents) const {
  std::string document;
  Problem problem;
  if (!print_report_(&contents, &document, &problem)) return problem;
  return document;
}

Result<std::string> PdfModule::print_signature(const SignatureWords& words) const {
  std::string document;
  Problem problem;
  if (!print_signature_(&words, &document, &problem)) return problem;
  return document;
}

}  // namespace soakwright::cli
