// What a reader must not take from this report.
#include <algorithm>

#include "core/report/sections.h"

namespace soakwright {
namespace {

bool from_memory(const Provenance& provenance) { return provenance.flag == Provenance::Flag::memory; }

bool any_from_memory(const Procedure& procedure) {
  return from_memory(procedure.provenance) ||
         std::any_of(procedure.stages.begin(), procedure.stages.end(),
                     [](const Stage& stage) { return from_memory(stage.provenance); });
}

bool any_inconclusive(const Verdicts& verdicts) {
  return std::any_of(
      verdicts.requirements.begin(), verdicts.requirements.end(),
      [](const Requirement& requirement) { return requirement.verdict == Verdict::inconclusive; });
}

}  // namespace

std::vector<std::string> caution_texts(const ReportContext& context) {
  const Analysis& analysis = context.analysis;
  std::vector<std::string> texts;
  texts.emplace_back("This report is evidence for a competent person. It is not a release of the work.");
  texts.emplace_back(
      "The governing code, the qualified procedure and licensed practice decide. Where they differ from this "
      "report, "
      "they are right.");
  if (analysis.procedure) {
    texts.emplace_back(
        "The limits are those of the procedure file. Check each limit against your own edition.");
    if (any_from_memory(*analysis.procedure))
      texts.emplace_back(
          "Limits marked as from memory were not compared with a published text by those who wrote them "
          "down.");
    if (analysis.procedure->evaluation.decision == Decision::simple)
      texts.emplace_back(
          "The decision rule is simple: the uncertainty of the measurement is not taken off any limit.");
  } else {
    texts.emplace_back("Nothing was asked of this record: it shows what was read, and no verdict.");
  }
  texts.emplace_back(
      "The readings are the recorder's. Whether a thermocouple sat on the work, and where, cannot be seen "
      "from its log.");
  if (analysis.verdicts && any_inconclusive(*analysis.verdicts))
    texts.emplace_back(
        "Inconclusive means that the record cannot show it either way. It is neither met nor not met.");
  if (analysis.course && !analysis.course->suspects.empty())
    texts.emplace_back(
        "Suspect channels are pointed out only. Nothing was left out of the evaluation because of them.");
  return texts;
}

}  // namespace soakwright
