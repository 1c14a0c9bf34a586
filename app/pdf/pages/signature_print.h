// SPDX-License-Identifier: GPL-3.0-or-later
// Entry point: the words of a visible signature as a PDF of one page as large as the signature's box.
#pragma once

#include <string>

#include "core/problems/problem.h"
#include "core/report/signature_words.h"

namespace soakwright {

/// Fonts embedded, so that any name can be read anywhere. Lines that are too long for the box are set
/// smaller.
Result<std::string> print_signature(const SignatureWords& words);

}  // namespace soakwright
