// SPDX-License-Identifier: GPL-3.0-or-later
// The options of `sign` and `verify`.
#pragma once

#include <optional>
#include <string>

#include "core/report/signing_border.h"

namespace CLI {
class App;
}

namespace soakwright::cli {

struct SigningArguments {
  SignOrder sign;
  VerifyOrder verify;
  std::string role;  ///< as written
};

void add_sign_options(CLI::App& command, SigningArguments& arguments);
void add_verify_options(CLI::App& command, SigningArguments& arguments);

/// Settles what is a choice of words in `sign`; says what is wrong with it.
std::optional<std::string> settle_sign(SigningArguments& arguments);

}  // namespace soakwright::cli
