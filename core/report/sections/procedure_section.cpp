// SPDX-License-Identifier: GPL-3.0-or-later
// The procedure's requirements, stage by stage.
#include "core/report/sections/sections.h"
#include "core/wording/procedure_limits.h"

namespace soakwright {

ProcedureSection procedure_section(const ReportContext& context) {
  const Procedure& procedure = *context.analysis.procedure;
  ProcedureSection section;
  section.facts = procedure_facts(procedure, context.say);
  section.source = provenance_text(procedure.provenance);
  section.evaluation = evaluation_settings(context);
  if (auto limits = record_limits(context); !limits.empty())
    section.stages.push_back({0, stage_title(&procedure, 0), std::move(limits), {}});
  for (const Stage& stage : procedure.stages)
    section.stages.push_back({stage.number, stage_title(&procedure, stage.number),
                              stage_limits(stage, context), provenance_text(stage.provenance)});
  return section;
}

}  // namespace soakwright
