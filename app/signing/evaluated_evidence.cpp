// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/evaluated_evidence.h"

#include <utility>

namespace soakwright::signing {

Result<EvaluatedEvidence> evaluate_evidence(const evidence::TakenEvidence& taken, const Watch& watch) {
  auto placed = evidence::place_files(taken);
  if (!placed) return placed.problems();
  const Request& request = placed.value().request;
  auto analysis = request.procedure.empty() ? inspect(request, watch) : check(request, watch);
  if (!analysis) return analysis.problems();
  return EvaluatedEvidence{std::move(placed).value(), std::move(analysis).value()};
}

}  // namespace soakwright::signing
