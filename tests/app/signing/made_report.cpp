// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/app/signing/made_report.h"

#include <array>
#include <cstdio>

#include <catch2/catch.hpp>

std::string printed_by(const std::string& command) {
  std::FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string text;
  std::array<char, 4096> part{};
  while (const std::size_t got = std::fread(part.data(), 1, part.size(), pipe)) text.append(part.data(), got);
  pclose(pipe);
  return text;
}

std::string report_of(const TemporaryFolder& folder, const std::string& sample, const std::string& name,
                      const std::vector<std::string>& more) {
  const std::string path = folder.file(name);
  std::vector<std::string> words{"check", "--job", source_file("sample-logs/" + sample + "/job.toml"),
                                 "--report", path};
  words.insert(words.end(), more.begin(), more.end());
  const Ran ran = run_soakwright(words);
  INFO(ran.err);
  REQUIRE(ran.exit_code <= 2);
  return path;
}

SignerFiles::SignerFiles(const TemporaryFolder& folder, const std::string& stem, const Identity& identity)
    : key(folder.with(stem + "-key.pem", identity.key_pem)),
      certificate(folder.with(stem + "-certificate.pem", identity.certificate_pem)) {}

Ran sign(const std::string& report, const SignerFiles& signer, const std::string& name,
         const std::string& role, const std::vector<std::string>& more) {
  std::vector<std::string> words{"sign",   report, "--key",  signer.key, "--certificate", signer.certificate,
                                 "--name", name,   "--role", role};
  words.insert(words.end(), more.begin(), more.end());
  return run_soakwright(words);
}

const SignedReport& signed_report() {
  static const SignedReport made = [] {
    const TemporaryFolder folder;
    const TestAuthority authority;
    const std::string path = report_of(folder, "w-117-stress-relief");
    SignedReport report;
    report.unsigned_bytes = text_of(path);
    report.authority = authority.certificate_pem();
    for (const auto& [name, role, key] : {std::tuple{"O. Ferris", "performed", Issue::Key::rsa},
                                          {"T. Lindqvist", "reviewed", Issue::Key::p256},
                                          {"Ž. Šarić (Ærø)", "witnessed", Issue::Key::p256}}) {
      Issue issue;
      issue.name = name;
      issue.key = key;
      const Ran ran = sign(path, SignerFiles(folder, role, authority.issue(issue)), name, role);
      INFO(ran.err);
      REQUIRE(ran.exit_code == 0);
    }
    report.bytes = text_of(path);
    return report;
  }();
  return made;
}
