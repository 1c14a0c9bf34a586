// SPDX-License-Identifier: GPL-3.0-or-later
// A log that could not be read: enough to settle on the import settings what the reader could not.
#pragma once

#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "app/gui/open_files.h"
#include "app/gui/texts/log_preview.h"
#include "core/analyse.h"
#include "core/problems/problem.h"

namespace soakwright::gui {

struct RefusedLog {
  OpenFiles kept, named;  ///< what was asked for
  QString path;
  QString sha256;  ///< empty where the file can no longer be read
  std::shared_ptr<const LogPreview> preview;
  std::vector<JobChange> given;  ///< by the job's [import]
};

/// Nothing where no log is to blame, or where `watch` was cancelled. Reads the whole file for its hash: long,
/// not for the GUI thread.
std::optional<RefusedLog> refused_log(const Problems& problems, const OpenFiles& kept, const OpenFiles& named,
                                      const Watch& watch);

}  // namespace soakwright::gui
