// SPDX-License-Identifier: GPL-3.0-or-later
// The module as the command line opens it: its handshake, its answers, and the program that uses it.
#include <cstdlib>
#include <filesystem>
#include <string>

#include <catch2/catch.hpp>
#include <dlfcn.h>
#include <sys/wait.h>

#include "core/report/pdf_border.h"
#include "tests/app/cli/run_program.h"
#include "tests/app/pdf/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;
namespace fs = std::filesystem;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;

namespace {

const std::string job = std::string(SOAKWRIGHT_SOURCE_DIR) + "/sample-logs/w-117-stress-relief/job.toml";

template <typename Entry>
Entry* entry_of(const char* name) {
  void* handle = dlopen(SOAKWRIGHT_PDF_MODULE, RTLD_NOW | RTLD_LOCAL);
  INFO((handle == nullptr ? dlerror() : ""));
  REQUIRE(handle != nullptr);
  void* entry = dlsym(handle, name);
  REQUIRE(entry != nullptr);
  return reinterpret_cast<Entry*>(entry);
}

/// The program with another report writer beside it, for a run of its own.
Ran run_beside(const std::string& module_source, const std::string& report) {
  const TemporaryFolder folder;
  fs::copy_file(SOAKWRIGHT_PROGRAM, folder.file("soakwright"));
  const std::string source = folder.with("module.c", module_source);
  REQUIRE(std::system(
              ("cc -shared -fPIC -o '" + folder.file("soakwright-pdf.so") + "' '" + source + "'").c_str()) ==
          0);
  const std::string err = folder.file("err");
  const int status = std::system(("'" + folder.file("soakwright") + "' check --job '" + job + "' --report '" +
                                  report + "' > /dev/null 2> '" + err + "'")
                                     .c_str());
  return {WEXITSTATUS(status), {}, text_of(err)};
}

}  // namespace

TEST_CASE("the module says of which build it is, as this build does") {
  CHECK(std::string(entry_of<PdfModuleLayout>(kPdfModuleLayout)()) == pdf_module_layout(SOAKWRIGHT_VERSION));
  CHECK(pdf_module_layout("0.0.1") != pdf_module_layout("0.0.2"));
}

TEST_CASE("a module of another build, or none at all, is refused with 69 before any work") {
  const TemporaryFolder folder;
  for (const auto& [source, says] :
       {std::pair<std::string, std::string>{
            "const char* soakwright_pdf_layout(void) { return \"0.0.9, other\"; }\n"
            "int soakwright_write_report(void) { __builtin_trap(); }\n"
            "int soakwright_write_chart(void) { __builtin_trap(); }\n",
            "belongs to another build: it is '0.0.9, other', the program is '"},
        {"int soakwright_write_report(void) { __builtin_trap(); }\n",
         "is no report writer of this version"}}) {
    const Ran ran = run_beside(source, folder.file("r.pdf"));
    INFO(ran.err);
    CHECK(ran.exit_code == 69);
    CHECK_THAT(ran.err, StartsWith("soakwright: --report and --chart are not available: ") && Contains(says));
  }
  CHECK(folder.names().empty());
}

TEST_CASE("the module's entry writes a report") {
  need_application_and_font();
  auto* const write = entry_of<PdfModuleWriteReport>(kPdfModuleWriteReport);
  const ReportContents report{make_report(made_up_analysis())};
  const TemporaryFolder folder;
  const std::string path = folder.file("report.pdf");
  Problem problem;
  CHECK(write(&report, &path, &problem));
  CHECK(problem.what.empty());
  CHECK(output_of("pdftotext", {path, "-"}).find("W-117") != std::string::npos);
}

TEST_CASE("the module's entry answers why a report is not written") {
  need_application_and_font();
  auto* const write = entry_of<PdfModuleWriteReport>(kPdfModuleWriteReport);
  const ReportContents report{make_report(made_up_analysis())};
  const std::string path = "/nowhere/at/all.pdf";
  Problem problem;
  CHECK_FALSE(write(&report, &path, &problem));
  CHECK(problem.kind == ProblemKind::cannot_write);
  CHECK(problem.file == path);
}

TEST_CASE("the command line writes report and chart whole, and evaluates all the same") {
  const TemporaryFolder folder;
  const std::string report = folder.file("report.pdf");
  const std::string chart = folder.file("chart.png");
  const std::string drawing = folder.file("chart.svg");
  const Ran ran = run_soakwright({"check", "--job", job, "--report", report, "--chart", chart});
  CHECK(ran.exit_code == 0);
  CHECK(ran.err.empty());
  CHECK(output_of("pdftotext", {report, "-"}).find("W-117") != std::string::npos);
  CHECK(text_of(chart).starts_with("\x89PNG\r\n\x1a\n"));  // PNG (ISO/IEC 15948), 5.2
  CHECK(run_soakwright({"inspect", "--job", job, "--chart", drawing}).exit_code == 0);
  CHECK_THAT(text_of(drawing), Contains("<svg"));
  CHECK(run_soakwright({"inspect", "--job", job, "--chart", folder.file("no/chart.png")}).exit_code == 73);
}

TEST_CASE("a report keeps the old file where it cannot be written whole, whatever its name") {
  const TemporaryFolder folder;
  for (const std::string& name : {std::string("r.pdf"), std::string("caf\xE9.pdf")}) {
    const std::string path = folder.with(name, "old");
    const Ran ran = run_limited("-f 100", {"check", "--job", job, "--report", path});
    INFO(ran.err);
    CHECK(ran.exit_code == 73);
    CHECK_THAT(ran.err, Contains("cannot be written: "));
    CHECK(text_of(path) == "old");
    CHECK(run_soakwright({"check", "--job", job, "--report", path}).exit_code == 0);
    CHECK(text_of(path).starts_with("%PDF-"));  // PDF 1.4, 3.4.1
    CHECK_THAT(text_of(path), Contains("%%EOF"));
  }
  CHECK(folder.names().size() == 2);
}

TEST_CASE("without a usable font a report is refused, and no black boxes are printed") {
  const TemporaryFolder folder;
  const std::string fonts = folder.with("fonts.conf", "<?xml version=\"1.0\"?><fontconfig></fontconfig>\n");
  for (const char* option : {"--report", "--chart"}) {
    const std::string path = folder.file(std::string(option) == "--report" ? "r.pdf" : "c.png");
    const Ran ran = run_soakwright({"check", "--job", job, option, path}, {{"FONTCONFIG_FILE", fonts}});
    INFO(ran.err);
    CHECK(ran.exit_code == 70);
    CHECK_THAT(ran.err, Contains("no usable font is installed"));
  }
  CHECK(folder.names() == std::vector<std::string>{"fonts.conf"});
}

TEST_CASE("scarce means end in a message with a report too, and never in an abort") {
  const TemporaryFolder folder;
  const std::string path = folder.with("r.pdf", "old");
  const auto sound = [&](const Ran& ran) {
    INFO("exit " << ran.exit_code << "\n" << ran.err);
    CHECK(ran.exit_code < 128);
    if (ran.exit_code == 0) return;
    CHECK_THAT(ran.err, Contains("soakwright: ") || Contains("soakwright-pdf.so"));
    CHECK(text_of(path) == "old");
  };
  for (int files = 4; files < 12; ++files)
    sound(run_limited("-n " + std::to_string(files), {"check", "--job", job, "--report", path}));
#if !defined(SOAKWRIGHT_SANITIZED)
  // Qt does not check each of its allocations: what it ends is a process of its own.
  for (int kilobytes = 60'000; kilobytes <= 400'000; kilobytes += 20'000) {
    static_cast<void>(folder.with("r.pdf", "old"));
    sound(run_limited("-v " + std::to_string(kilobytes), {"check", "--job", job, "--report", path}));
  }
#endif
}
