// SPDX-License-Identifier: GPL-3.0-or-later
// Preheat and bands: published figures beside the job's.
#include "core/report/sections/sections.h"
#include "core/wording/sections/preheat_words.h"

namespace soakwright {

std::vector<LabelledText> preheat_section(const ReportContext& context) {
  const Job* const job = context.analysis.job.get();
  if (job == nullptr) return {};
  return preheat_facts(preheat_of(*job, context.analysis.procedure.get()), context.say);
}

std::vector<LabelledText> band_section(const ReportContext& context) {
  const Job* const job = context.analysis.job.get();
  if (job == nullptr) return {};
  const Record& record = *context.analysis.record;
  return band_facts(bands_of(*job, context.analysis.procedure.get(), record), record);
}

}  // namespace soakwright
