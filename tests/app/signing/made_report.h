// SPDX-License-Identifier: GPL-3.0-or-later
// Reports of the samples, made and signed by the program.
#pragma once

#include <string>
#include <vector>

#include "tests/app/cli/run_program.h"
#include "tests/app/signing/test_authority.h"

/// What another program printed, on both outputs.
std::string printed_by(const std::string& command);

/// The report of a sample's job, in the folder.
std::string report_of(const TemporaryFolder& folder, const std::string& sample,
                      const std::string& name = "report.pdf", const std::vector<std::string>& more = {});

/// A signer's key and certificate as files.
struct SignerFiles {
  SignerFiles(const TemporaryFolder& folder, const std::string& stem, const Identity& identity);
  std::string key, certificate;
};

Ran sign(const std::string& report, const SignerFiles& signer, const std::string& name,
         const std::string& role, const std::vector<std::string>& more = {});

/// A report of the sample W-117 with three signatures, made once for all tests; and who vouches for them.
struct SignedReport {
  std::string bytes;
  std::string authority;
  std::string unsigned_bytes;
};
const SignedReport& signed_report();
