// The module as the command line opens it, in a process of its own each time: this program's own sources
// print by linking, so here only the entry is looked at.
#include <array>
#include <cstdio>
#include <filesystem>

#include <catch2/catch.hpp>
#include <dlfcn.h>

#include "tests/app/paper/printed.h"
#include "tests/core/report/made_up_run.h"

using namespace soakwright;

namespace {

using WriteReport = int (*)(const Analysis*, const char*, char*, unsigned long);

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
  const WriteReport write = entry_of(SOAKWRIGHT_PAPER_MODULE);
  const Analysis analysis = made_up_analysis();
  const std::string path = (std::filesystem::temp_directory_path() / "soakwright-module-test.pdf").string();
  std::array<char, 256> message{};
  CHECK(write(&analysis, path.c_str(), message.data(), message.size()) == 0);
  CHECK(std::string{message.data()}.empty());
  CHECK(output_of("pdftotext", {path, "-"}).find("W-117") != std::string::npos);
  std::filesystem::remove(path);
}

TEST_CASE("the module's entry answers an exit code and a message that fits") {
  need_application_and_font();
  const WriteReport write = entry_of(SOAKWRIGHT_PAPER_MODULE);
  const Analysis analysis = made_up_analysis();
  std::array<char, 24> message{};
  message.fill('x');
  CHECK(write(&analysis, "/nowhere/at/all.pdf", message.data(), message.size()) == 73);
  CHECK(std::string{message.data()} == "/nowhere/at/all.pdf: ca");
}
