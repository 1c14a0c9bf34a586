// SPDX-License-Identifier: GPL-3.0-or-later
// How long messages stand in the status bar.
#pragma once

namespace soakwright::gui {

inline constexpr int kDone_ms = 4000;     ///< something small was done
inline constexpr int kWritten_ms = 8000;  ///< a file was written: its path takes longer to read

}  // namespace soakwright::gui
