// SPDX-License-Identifier: GPL-3.0-or-later
// Text from the core as a page or a window shows it.
#pragma once

#include <QString>
#include <string>

namespace soakwright::pdf {

/// printable() text in which every run of words written from right to left stands between isolates (U+2068,
/// U+2069; UAX #9), so that it cannot change the order of the figures beside it.
QString shown_text(const std::string& utf8);

}  // namespace soakwright::pdf
