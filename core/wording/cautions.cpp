// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/cautions.h"

#include <algorithm>

namespace soakwright {
namespace {

bool any_flagged(const Procedure& procedure, Provenance::Flag flag) {
  return procedure.provenance.flag == flag ||
         std::any_of(procedure.stages.begin(), procedure.stages.end(),
                     [&](const Stage& stage) { return stage.provenance.flag == flag; });
}

bool any_inconclusive(const Verdicts& verdicts) {
  return std::any_of(
      verdicts.requirements.begin(), verdicts.requirements.end(),
      [](const Requirement& requirement) { return requirement.verdict == Verdict::inconclusive; });
}

/// What the job asks for beside the verdicts and only an evaluation gives: "[qualified] and [hydrogen]".
std::string heat_tables_of(const Job& job) {
  std::string tables = job.qualified ? "`[qualified]`" : "";
  if (job.hydrogen) tables += tables.empty() ? "`[hydrogen]`" : " and `[hydrogen]`";
  return tables;
}

}  // namespace

std::vector<std::string> caution_texts(const WordingContext& context) {
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
    if (any_flagged(*analysis.procedure, Provenance::Flag::memory))
      texts.emplace_back(
          "Limits marked as from memory were not compared with a published text by the person who wrote them "
          "down: check them against your edition.");
    if (any_flagged(*analysis.procedure, Provenance::Flag::proposal))
      texts.emplace_back(
          "Limits marked as proposed were taken from a recorded cycle. They are not a requirement, and "
          "meeting "
          "them shows nothing about the work.");
    if (analysis.procedure->evaluation.decision == Decision::simple)
      texts.emplace_back(
          "The decision rule is simple: the uncertainty of the measurement is not subtracted from any "
          "limit.");
  } else {
    texts.emplace_back("No procedure was given: this report shows the record as read, and no verdict.");
    if (const std::string tables = analysis.job ? heat_tables_of(*analysis.job) : ""; !tables.empty())
      texts.push_back("The job's " + tables + (tables.find(" and ") == std::string::npos ? " is" : " are") +
                      " not evaluated here, but where a procedure is given.");
  }
  texts.emplace_back(
      "The readings are those of the recorder. A log cannot show whether a thermocouple was attached to the "
      "work, or "
      "where.");
  if (analysis.verdicts && any_inconclusive(*analysis.verdicts))
    texts.emplace_back(
        "Inconclusive means that the record cannot show whether the requirement is met. It is neither met "
        "nor not "
        "met.");
  if (analysis.course && !analysis.course->suspects.empty())
    texts.emplace_back(
        "A suspect thermocouple is a warning: the program excludes nothing. But readings that are open, "
        "stuck, "
        "copied or clipped are no measurement unless the job confirms them.");
  return texts;
}

}  // namespace soakwright
