// SPDX-License-Identifier: GPL-3.0-or-later
// Signing and verifying reports, which need libcrypto and are therefore a module of their own:
// soakwright-signing beside the program or in ../lib/soakwright/modules, opened when a report is signed or
// verified. What both sides agree on: core/report/signing_border.h.
#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "core/problems/problem.h"
#include "core/report/signing_border.h"

namespace soakwright::modules {

class SigningModule {
 public:
  /// `wanted` is what is not to be had without it: "sign is". Looked for as ModuleFile::open() says.
  static Result<SigningModule> open(const char* wanted, const std::filesystem::path& folder = {});

  /// Returns nullopt if the signed report is written. An output that is also an input is refused.
  [[nodiscard]] std::optional<Problem> sign(const SignOrder& order, const ReportPrinter& printer) const;
  /// What was checked, one line each; a problem where the file is no report that can be looked at.
  [[nodiscard]] Result<std::vector<CheckLine>> verify(const VerifyOrder& order, const ReportPrinter& printer,
                                                      const Watch& watch = {}) const;

 private:
  SigningModule() = default;
  SigningModuleSign* sign_ = nullptr;
  SigningModuleVerify* verify_ = nullptr;
};

/// "does not hold"
const char* state_words(CheckLine::State state);

/// Of all lines together: one that fails makes them fail, one that is open leaves them open.
CheckLine::State state_of_all(const std::vector<CheckLine>& lines);

}  // namespace soakwright::modules
