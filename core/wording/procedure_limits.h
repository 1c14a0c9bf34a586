// SPDX-License-Identifier: GPL-3.0-or-later
// The procedure's requirements in words: every limit, worked out for the thickness of each weld, with its
// source.
#pragma once

#include <string>
#include <vector>

#include "core/wording/labelled_text.h"
#include "core/wording/wording_context.h"

namespace soakwright {

/// The limits of a stage; of the whole record; how it is evaluated. `context.analysis.procedure` must be
/// there.
std::vector<LabelledText> stage_limits(const Stage& stage, const WordingContext& context);
std::vector<LabelledText> record_limits(const WordingContext& context);
std::vector<LabelledText> evaluation_settings(const WordingContext& context);
/// Number, revision, title, thickness.
std::vector<LabelledText> procedure_facts(const Procedure& procedure, const PrintedNumbers& say);
/// "EN 13445-4, edition 2021, clause 10, seen in print"; empty where nothing is given.
std::string provenance_text(const Provenance& provenance);

}  // namespace soakwright
