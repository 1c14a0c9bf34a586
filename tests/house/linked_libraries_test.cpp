// SPDX-License-Identifier: GPL-3.0-or-later
// The command line starts in milliseconds: what it links says so.
#include <array>
#include <cstdio>
#include <string>

#include <catch2/catch.hpp>

TEST_CASE("soakwright links neither Qt nor libcrypto") {
  std::FILE* pipe = popen("ldd '" SOAKWRIGHT_PROGRAM "'", "r");
  REQUIRE(pipe != nullptr);
  std::string libraries;
  std::array<char, 4096> part{};
  while (std::fgets(part.data(), part.size(), pipe) != nullptr) libraries += part.data();
  CHECK(pclose(pipe) == 0);
  INFO(libraries);
  CHECK(libraries.find("libc.so") != std::string::npos);
  CHECK(libraries.find("libQt") == std::string::npos);
  CHECK(libraries.find("libcrypto") == std::string::npos);
}
