// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/signing.h"

#include <algorithm>
#include <ctime>
#include <utility>

#include "app/signing/cms_signature.h"
#include "app/signing/examination.h"
#include "app/signing/field_words.h"
#include "app/signing/signature_update.h"
#include "app/signing/signing_key.h"
#include "core/problems/caught.h"
#include "core/problems/command_line_problems.h"
#include "core/report/open_findings.h"
#include "core/system/atomic_file.h"
#include "core/wording/sections/review_words.h"

namespace soakwright::signing {
namespace {

Problem refusal(const std::string& path, std::string what, std::string help) {
  return {ProblemKind::bad_input, path, 0, std::move(what), std::move(help)};
}

/// "stage-1.heating-rate, weld W-118, TC2; suspect TC5": the findings that a person still has to decide on.
std::string open_findings_listed(const Analysis& analysis) {
  std::vector<std::string> names;
  for (const std::size_t index : open_findings(analysis)) {
    const Finding& finding = analysis.verdicts->findings[index];
    std::string name = finding.requirement.empty() ? "suspect thermocouple" : finding.requirement;
    if (finding.weld) name += ", weld " + *finding.weld;
    if (finding.channel) name += ", " + *finding.channel;
    if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(std::move(name));
  }
  std::string list;
  for (const std::string& name : names) list += (list.empty() ? "" : "; ") + name;
  return list;
}

/// The first line that fails.
const CheckLine* failing(const std::vector<CheckLine>& lines) {
  const auto found = std::find_if(lines.begin(), lines.end(), [](const CheckLine& line) {
    return line.state == CheckLine::State::fails;
  });
  return found == lines.end() ? nullptr : &*found;
}

Result<evidence::SignatureBox> free_box(const SignOrder& order, const Examination& report) {
  std::string named;
  bool of_role = false;
  for (std::size_t i = 0; i < report.taken.boxes.size(); ++i) {
    const evidence::SignatureBox& box = report.taken.boxes[i];
    if (box.role != order.role) continue;
    const bool taken = std::any_of(report.signatures.begin(), report.signatures.end(),
                                   [i](const FoundSignature& one) { return one.box == i; });
    if (!box.name.empty()) named += (named.empty() ? "" : ", ") + box.name;
    of_role = true;
    if (!taken && (box.name.empty() || box.name == order.name)) return box;
  }
  std::string role(1, '\'');
  role.append(person_role_text(order.role)).append(1, '\'');
  if (!named.empty() && named.find(order.name) == std::string::npos)
    return refusal(order.report, "the report names " + named + " for " + role + ", not " + order.name,
                   "sign under the name in the review, or name the person there and write the report again");
  if (of_role)
    return refusal(order.report, "the place for " + role + " is signed already",
                   "name each person who signs in the review, and write the report again");
  return refusal(order.report, "the report has no place for " + role, "write the report again");
}

Result<std::string> signed_report(const SignOrder& order, const Examination& report,
                                  const evidence::SignatureBox& box, const SigningKey& signing,
                                  std::int64_t now_s, const ReportPrinter& printer) {
  const X509* certificate = signing.certificate.get();
  const SignatureWords words =
      field_words(box, order.name, now_s, common_name(X509_get_subject_name(certificate)),
                  common_name(X509_get_issuer_name(certificate)));
  const auto printed = printer.signature(words);
  if (!printed) return printed.problems();
  const auto page = evidence::PdfFile::read(printed.value(), order.report);
  if (!page) return page.problems();

  const auto failed = [&] {
    return Problem{ProblemKind::fault, order.report, 0, "the signature cannot be made: " + openssl_reason(),
                   "check key and certificate with your own tools"};
  };
  // The length of an ECDSA signature changes by a few bytes from one to the next.
  constexpr std::size_t kSpare = 256;
  const std::string trial = cms_signature(signing, {});
  if (trial.empty()) return failed();
  auto prepared = with_signature_field(
      report.file, {box, order.name, now_s, report.signatures.size() + 1, report.set_up_here}, page.value(),
      trial.size() + kSpare);
  if (!prepared) return prepared.problems();
  const std::string value = cms_signature(signing, prepared.value().signed_bytes());
  if (value.empty() || !prepared.value().put_value(value)) return failed();
  return std::move(prepared.value().bytes);
}

Problems sign(const SignOrder& order, const ReportPrinter& printer) {
  const auto now_s = static_cast<std::int64_t>(std::time(nullptr));
  const auto signing = read_signing_key(order, now_s);
  if (!signing) return signing.problems();
  const auto examined = examine({order.report, {}}, printer);
  if (!examined) return examined.problems();
  const Examination& report = examined.value();
  if (const CheckLine* line = failing(report.lines))
    return {
        helped_by(refusal(order.report, "the report does not hold: " + line->what + ": " + line->text, {}),
                  CommandLineHelp::sign_report_as_written)};
  if (!report.analysis)
    return {refusal(order.report, "the files inside cannot be evaluated", "write the report again")};
  if (const std::string list = open_findings_listed(*report.analysis); !list.empty())
    return {helped_by(refusal(order.report, "the report is a draft: no disposition of " + list, {}),
                      CommandLineHelp::write_report_with_review)};
  const auto box = free_box(order, report);
  if (!box) return box.problems();
  const auto bytes = signed_report(order, report, box.value(), signing.value(), now_s, printer);
  if (!bytes) return bytes.problems();
  if (auto failure = write_file_whole(order.out.empty() ? order.report : order.out, bytes.value()))
    return {std::move(*failure)};
  return {};
}

}  // namespace

std::optional<Problem> sign_report(const SignOrder& order, const ReportPrinter& printer) {
  Problems problems = caught(order.report, [&] { return sign(order, printer); });
  if (problems.empty()) return std::nullopt;
  return std::move(problems.front());
}

Result<std::vector<CheckLine>> verify_report(const VerifyOrder& order, const ReportPrinter& printer,
                                             const Watch& watch) {
  return caught(order.report, [&]() -> Result<std::vector<CheckLine>> {
    auto examined = examine(order, printer, watch);
    if (!examined) return examined.problems();
    return std::move(examined.value().lines);
  });
}

}  // namespace soakwright::signing
