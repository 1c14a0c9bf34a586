// SPDX-License-Identifier: GPL-3.0-or-later
// The main of every test program. Tests run in surroundings that a careless program trips over: a comma for
// the decimal point and a time zone half an hour off, as a program that calls setlocale(LC_ALL, "") would see
// them.
#define CATCH_CONFIG_RUNNER
#include <clocale>
#include <cstdlib>
#include <ctime>
#include <locale>

#include <catch2/catch.hpp>

// glibc's setlocale() keeps the text of LOCPATH, which tests/run sets, for good.
extern "C" const char*
__lsan_default_suppressions();  // NOLINT(bugprone-reserved-identifier): the sanitizer's name
extern "C" const char* __lsan_default_suppressions() { return "leak:__argz_add_sep\n"; }  // NOLINT

int main(int argc, char** argv) {
  setenv("LC_ALL", "de_DE.UTF-8", 1);
  setenv("TZ", "Asia/Kolkata", 1);
  tzset();
  // Where the machine lacks the locale, tests run in "C"; tests/run sees to it that it is there.
  if (std::setlocale(LC_ALL, "") != nullptr) std::locale::global(std::locale(""));
  return Catch::Session().run(argc, argv);
}
