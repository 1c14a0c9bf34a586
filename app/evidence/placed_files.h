// SPDX-License-Identifier: GPL-3.0-or-later
// The files that were inside a report, on disk again in a private folder, to be evaluated there.
#pragma once

#include <memory>
#include <string>

#include "app/evidence/evidence_reader.h"
#include "app/evidence/private_folder.h"
#include "core/analyse.h"
#include "core/problems/problem.h"

namespace soakwright::evidence {

struct PlacedFiles {
  std::shared_ptr<const PrivateFolder> folder;  ///< the files are gone with it
  Request request;                              ///< names them, with the settings that the report states
  std::string company_picture;                  ///< where it was put; empty where there is none inside
};

/// Each file keeps its name and has a folder of its own. cannot_write where there is no room for them.
Result<PlacedFiles> place_files(const TakenEvidence& taken);

}  // namespace soakwright::evidence
