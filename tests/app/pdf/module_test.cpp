// The module as the command line opens it, in a process of its own each time: this program's own sources
// print by linking, so here only the entry is looked at.
#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string_view>

#include <catch2/catch.hpp>
#include <dlfcn.h>

#include "tests/app/cli/run_program.h"
#include "tests/app/pdf/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;

namespace {

using WriteReport = int (*)(const Analysis*, int, const char*, char*, unsigned long);

WriteReport entry_of(const char* module) {
  void* handle = dlopen(module, RTLD_NOW | RTLD_LOCAL);
  INFO((handle == nullptr ? dlerror() : ""));
  REQUIRE(handle != nullptr);
  void* entry = dlsym(handle, "soakwright_write_report");
  REQUIRE(entry != nullptr);
  return reinterpret_cast<WriteReport>(entry);
}

}  // namespace

TEST_CASE("the module's entry writes a report and answers 0") {
  need_application_and_font();
  const WriteReport write = entry_of(SOAKWRIGHT_PDF_MODULE);
  const Analysis analysis = made_up_analysis();
  const std::string path = (std::filesystem::temp_directory_path() / "soakwright-module-test.pdf").string();
  std::array<char, 256> message{};
  CHECK(write(&analysis, -1, path.c_str(), message.data(), message.size()) == 0);
  CHECK(std::string{message.data()}.empty());
  CHECK(output_of("pdftotext", {path, "-"}).find("W-117") != std::string::npos);
  std::filesystem::remove(path);
}

TEST_CASE("the module's entry answers an exit code and a message that fits") {
  need_application_and_font();
  const WriteReport write = entry_of(SOAKWRIGHT_PDF_MODULE);
  const Analysis analysis = made_up_analysis();
  std::array<char, 24> message{};
  message.fill('x');
  CHECK(write(&analysis, -1, "/nowhere/at/all.pdf", message.data(), message.size()) == 73);
  CHECK(std::string{message.data()} == "/nowhere/at/all.pdf: ca");
}

TEST_CASE("the command line writes report and chart whole, and evaluates all the same") {
  const std::string job = std::string(SOAKWRIGHT_SOURCE_DIR) + "/sample-logs/w-117-stress-relief/job.toml";
  const auto folder = std::filesystem::temp_directory_path() / "soakwright-report-and-chart";
  std::filesystem::create_directories(folder);
  const std::string report = (folder / "report.pdf").string();
  const std::string chart = (folder / "chart.png").string();
  const Ran ran = run_soakwright({"check", "--job", job, "--report", report, "--chart", chart});
  CHECK(ran.exit_code == 0);
  CHECK(ran.err.empty());
  CHECK(output_of("pdftotext", {report, "-"}).find("W-117") != std::string::npos);
  std::ifstream picture(chart, std::ios::binary);
  std::array<char, 8> head{};
  picture.read(head.data(), head.size());
  CHECK(std::string_view(head.data(), head.size()) == "\x89PNG\r\n\x1a\n");  // PNG (ISO/IEC 15948), 5.2
  CHECK(run_soakwright({"check", "--job", job, "--report", report, "--chart", report}).exit_code == 64);
  CHECK(run_soakwright({"inspect", "--job", job, "--chart", (folder / "no" / "chart.png").string()})
            .exit_code == 73);
  std::filesystem::remove_all(folder);
}
