// SPDX-License-Identifier: GPL-3.0-or-later
// Evaluates the files that were inside a report, and nothing else.
#pragma once

#include "app/evidence/evidence_reader.h"
#include "app/evidence/placed_files.h"
#include "core/analyse.h"
#include "core/problems/problem.h"

namespace soakwright::signing {

struct EvaluatedEvidence {
  evidence::PlacedFiles placed;  ///< the analysis names its files
  Analysis analysis;
};

/// With the settings that the report states. What the core says against the files comes back as it is.
Result<EvaluatedEvidence> evaluate_evidence(const evidence::TakenEvidence& taken, const Watch& watch = {});

}  // namespace soakwright::signing
