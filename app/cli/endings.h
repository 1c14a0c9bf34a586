// SPDX-License-Identifier: GPL-3.0-or-later
// How a run ends that cannot go on: by a signal, or by a fault that nothing caught.
#pragma once

namespace soakwright::cli {

/// From now on: a signal that ends the program first removes the part file of an output; a limit on the size
/// of files is a problem of the write and not the program's end; std::terminate says what happened and exits
/// with 70.
void prepare_endings();

}  // namespace soakwright::cli
