// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/modules/signing_command.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "app/cli/modules/module_file.h"
#include "app/cli/modules/pdf_loader.h"
#include "app/cli/printing/output_paths.h"
#include "app/cli/printing/page_text.h"
#include "app/cli/printing/standard_output.h"
#include "core/units/printable_text.h"

namespace soakwright::cli {
namespace {

ModuleName signing_module_name(const char* wanted) {
  return {"soakwright-signing", wanted,
          "signing module",     "install the signing module of this build",
          kSigningModuleLayout, signing_module_layout(SOAKWRIGHT_VERSION)};
}

/// The report writer, opened when it is needed first.
class LentPrinter {
 public:
  LentPrinter() {
    lent_.report = [this](const ReportContents& contents) -> Result<std::string> {
      if (auto problem = opened()) return std::move(*problem);
      return pdf_->print_report(contents);
    };
    lent_.signature = [this](const SignatureWords& words) -> Result<std::string> {
      if (auto problem = opened()) return std::move(*problem);
      return pdf_->print_signature(words);
    };
  }
  LentPrinter(const LentPrinter&) = delete;
  LentPrinter& operator=(const LentPrinter&) = delete;
  [[nodiscard]] const ReportPrinter& lent() const { return lent_; }

 private:
  std::optional<Problem> opened() {
    if (pdf_) return std::nullopt;
    auto opened = PdfModule::open();
    if (auto* problem = std::get_if<Problem>(&opened)) return std::move(*problem);
    pdf_ = std::get<PdfModule>(opened);
    return std::nullopt;
  }

  std::optional<PdfModule> pdf_;
  ReportPrinter lent_;
};

Cell state_cell(CheckLine::State state) {
  switch (state) {
    case CheckLine::State::holds:
      return {"holds", Tint::good};
    case CheckLine::State::fails:
      return {"does not hold", Tint::bad};
    case CheckLine::State::open:
      return {"not shown", Tint::doubtful};
    case CheckLine::State::note:
      return {"note", Tint::faint};
  }
  return {""};
}

int exit_code_of(const std::vector<CheckLine>& lines) {
  const auto any = [&](CheckLine::State state) {
    return std::any_of(lines.begin(), lines.end(),
                       [state](const CheckLine& line) { return line.state == state; });
  };
  if (any(CheckLine::State::fails)) return 1;
  return any(CheckLine::State::open) ? 2 : 0;
}

}  // namespace

int run_sign(const SignOrder& order) {
  const std::string& out = order.out.empty() ? order.report : order.out;
  for (const std::string& input : {order.key, order.certificate, order.password_file})
    if (!input.empty() && one_file(out, input))
      return say(Problem{ProblemKind::usage, out, 0, "this is a file to be read, and would be written over",
                         "name another file"});
  const ModuleName name = signing_module_name("sign is");
  const auto opened = ModuleFile::open(name);
  if (const auto* problem = std::get_if<Problem>(&opened)) return say(*problem);
  auto* const sign =
      reinterpret_cast<SigningModuleSign*>(std::get<ModuleFile>(opened).entry(kSigningModuleSign));
  if (sign == nullptr) return say(ModuleFile::not_whole(name));
  LentPrinter printer;
  Problem problem;
  if (!sign(&order, &printer.lent(), &problem)) return say(problem);
  if (const auto failure = write_standard_output("Signed: " + printable(out) + "\n")) return say(*failure);
  return 0;
}

int run_verify(const VerifyOrder& order) {
  const ModuleName name = signing_module_name("verify is");
  const auto opened = ModuleFile::open(name);
  if (const auto* problem = std::get_if<Problem>(&opened)) return say(*problem);
  auto* const verify =
      reinterpret_cast<SigningModuleVerify*>(std::get<ModuleFile>(opened).entry(kSigningModuleVerify));
  if (verify == nullptr) return say(ModuleFile::not_whole(name));
  LentPrinter printer;
  Problem problem;
  std::vector<CheckLine> lines;
  if (!verify(&order, &printer.lent(), &lines, &problem)) return say(problem);
  PageText page(page_style());
  std::vector<Row> rows;
  for (const CheckLine& line : lines)
    rows.push_back({line.what, state_cell(line.state), printable(line.text)});
  page.table({"Check", "", ""}, rows);
  if (const auto failure = write_standard_output(page.str())) return say(*failure);
  return exit_code_of(lines);
}

}  // namespace soakwright::cli
