// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/signing/tampered_report.h"

#include <algorithm>

#include <catch2/catch.hpp>

#include "app/signing/signing.h"
#include "tests/app/cli/run_program.h"

using namespace soakwright;
using namespace soakwright::evidence;

bool caught_by_verify(const std::string& bytes) {
  const TemporaryFolder folder;
  const std::string path = folder.with("changed.pdf", bytes);
  const ReportPrinter none{[](const ReportContents&) -> Result<std::string> {
                             return Problem{ProblemKind::no_such_part, "", 0, "none", ""};
                           },
                           [](const SignatureWords&) -> Result<std::string> {
                             return Problem{ProblemKind::no_such_part, "", 0, "none", ""};
                           }};
  const auto lines = signing::verify_report({path, ""}, none);
  if (!lines) return lines.problems().front().kind == ProblemKind::bad_input;
  return std::any_of(lines.value().begin(), lines.value().end(),
                     [](const CheckLine& line) { return line.state == CheckLine::State::fails; });
}

PdfFile file_of(const std::string& bytes) {
  auto read = PdfFile::read(bytes, "test.pdf");
  INFO((read ? std::string{} : read.problems().front().text()));
  REQUIRE(read);
  return std::move(read).value();
}

std::string replaced(std::string bytes, const std::string& text, const std::string& by, bool last) {
  const std::size_t at = last ? bytes.rfind(text) : bytes.find(text);
  REQUIRE(at != std::string::npos);
  return bytes.replace(at, text.size(), by);
}

std::pair<std::size_t, std::size_t> last_value(const std::string& bytes) {
  const std::size_t begin = bytes.rfind("/Contents <") + 10;
  return {begin, bytes.find('>', begin)};
}
