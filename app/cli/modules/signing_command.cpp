// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/modules/signing_command.h"

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "app/cli/modules/pdf_loader.h"
#include "app/cli/printing/page_text.h"
#include "app/cli/printing/standard_output.h"
#include "app/modules/signing_loader.h"
#include "core/units/printable_text.h"

namespace soakwright::cli {
namespace {

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
  const char* const words = modules::state_words(state);
  switch (state) {
    case CheckLine::State::holds:
      return {words, Tint::good};
    case CheckLine::State::fails:
      return {words, Tint::bad};
    case CheckLine::State::open:
      return {words, Tint::doubtful};
    case CheckLine::State::note:
      break;
  }
  return {words, Tint::faint};
}

std::string text_of(const CheckLine& line, const VerifyOrder& order) {
  std::string text = printable(line.text);
  // The notes are of certificates that nobody vouches for.
  if (line.state == CheckLine::State::note && order.trust.empty()) text.append(" Name it with --trust.");
  return text;
}

int exit_code_of(const std::vector<CheckLine>& lines) {
  const CheckLine::State all = modules::state_of_all(lines);
  if (all == CheckLine::State::fails) return 1;
  return all == CheckLine::State::open ? 2 : 0;
}

}  // namespace

int run_sign(const SignOrder& order) {
  const auto opened = modules::SigningModule::open("sign is");
  if (!opened) return say(opened.problems().front());
  LentPrinter printer;
  if (const auto problem = opened.value().sign(order, printer.lent())) return say(*problem);
  const std::string& out = order.out.empty() ? order.report : order.out;
  if (const auto failure = write_standard_output("Signed: " + printable(out) + "\n")) return say(*failure);
  return 0;
}

int run_verify(const VerifyOrder& order) {
  const auto opened = modules::SigningModule::open("verify is");
  if (!opened) return say(opened.problems().front());
  LentPrinter printer;
  const auto lines = opened.value().verify(order, printer.lent());
  if (!lines) return say(lines.problems().front());
  PageText page(page_style());
  std::vector<Row> rows;
  for (const CheckLine& line : lines.value())
    rows.push_back({line.what, state_cell(line.state), text_of(line, order)});
  page.table({"Check", "", ""}, rows);
  if (const auto failure = write_standard_output(page.str())) return say(*failure);
  return exit_code_of(lines.value());
}

}  // namespace soakwright::cli
