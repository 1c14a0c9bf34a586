// SPDX-License-Identifier: GPL-3.0-or-later
// Reports that somebody changed: reading them, and whether verifying catches the change.
#pragma once

#include <string>
#include <utility>

#include "app/evidence/pdf_file.h"

/// Verifies without a report writer: the pages cannot be compared then, so everything else must catch the
/// change.
bool caught_by_verify(const std::string& bytes);

/// The file that these bytes are; the test ends where they are none.
soakwright::evidence::PdfFile file_of(const std::string& bytes);

/// The text's first or last place written anew.
std::string replaced(std::string bytes, const std::string& text, const std::string& by, bool last = false);

/// From the last signature's '<' to its '>'.
std::pair<std::size_t, std::size_t> last_value(const std::string& bytes);
