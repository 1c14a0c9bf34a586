// SPDX-License-Identifier: GPL-3.0-or-later
// A made record held against a procedure that is written as a user would write it.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "core/explain/shortfall.h"
#include "core/wording/requirement_text.h"
#include "core/wording/statement_words.h"
#include "tests/core/measure/made_procedure.h"
#include "tests/core/measure/traced.h"

namespace soakwright {

inline std::string say(Verdict verdict) {
  return verdict == Verdict::met ? "met" : verdict == Verdict::inconclusive ? "inconclusive" : "not met";
}

class Evaluated {
 public:
  explicit Evaluated(const MadeRecord& made, const std::string& procedure, const std::string& job = {},
                     const std::string& unit = "C") {
    specified = procedure_of(procedure, unit);
    std::optional<Job> with;
    if (!job.empty()) with = job_of(job);
    const Problems clashes = check_compatibility(specified, with ? &*with : nullptr);
    if (!clashes.empty()) FAIL(clashes.front().text());
    record = made.record();
    all = evaluate(record, specified, with ? &*with : nullptr);
  }

  [[nodiscard]] const Requirement& operator[](const std::string& id) const { return of(id, std::nullopt); }
  [[nodiscard]] const Requirement& of(const std::string& id, const std::optional<std::string>& weld) const {
    for (const Requirement& requirement : all.requirements)
      if (requirement.id == id && (!weld || requirement.weld == weld)) return requirement;
    FAIL("no requirement " << id);
    return all.requirements.front();
  }
  [[nodiscard]] bool has(const std::string& id) const {
    for (const Requirement& requirement : all.requirements)
      if (requirement.id == id) return true;
    return false;
  }
  [[nodiscard]] std::string verdict(const std::string& id) const { return say((*this)[id].verdict); }
  /// "9.5 met", "none inconclusive".
  [[nodiscard]] std::string told(const std::string& id) const {
    std::string text = say((*this)[id].measured);
    text += ' ';
    text += verdict(id);
    return text;
  }
  [[nodiscard]] std::vector<Finding> findings(const std::string& id) const {
    std::vector<Finding> found;
    for (const Finding& finding : all.findings)
      if (finding.requirement == id) found.push_back(finding);
    return found;
  }
  /// "not met TC1 60..120, note 180..240".
  [[nodiscard]] std::string places(const std::string& id) const {
    std::string text;
    for (const Finding& finding : findings(id)) {
      if (!text.empty()) text += ", ";
      text += finding.kind == Finding::Kind::not_met        ? "not met"
              : finding.kind == Finding::Kind::inconclusive ? "inconclusive"
                                                            : "note";
      if (finding.channel) {
        text += ' ';
        text += *finding.channel;
      }
      if (finding.from_s && finding.to_s) {
        text += ' ';
        text += say(Span{*finding.from_s, *finding.to_s});
      }
    }
    return text;
  }
  [[nodiscard]] const StageCourse& stage(std::size_t number,
                                         const std::optional<std::string>& weld = std::nullopt) const {
    for (const StageCourse& course : all.stages)
      if (course.number == number && (!weld || course.weld == weld)) return course;
    FAIL("no stage " << number);
    return all.stages.front();
  }

  /// The words of a requirement, of a finding, of a shortfall.
  [[nodiscard]] std::string text(const std::string& id) const {
    return requirement_text((*this)[id], specified, numbers());
  }
  [[nodiscard]] std::string text(const Finding& finding) const {
    const Requirement* own = nullptr;
    for (const Requirement& requirement : all.requirements)
      if (requirement.id == finding.requirement && requirement.weld == finding.weld) own = &requirement;
    return finding_text(finding, own, specified, numbers());
  }
  [[nodiscard]] std::string short_of(const std::string& id) const {
    return words(shortfall(specified, (*this)[id]), numbers());
  }

  Procedure specified;
  Record record;
  Verdicts all;

 private:
  [[nodiscard]] PrintedNumbers numbers() const { return {TemperatureUnit::celsius, record}; }
};

/// A hold at 500 to 600 with these further keys.
inline std::string hold_500_600_with(const std::string& keys) {
  return "[[stage]]\nkind = \"hold\"\nlow = 500\nhigh = 600\n" + keys + "\n";
}

/// 9 K a minute from 20 to 560 (60 min), level to 120 min, 9 K a minute down to 20 (180 min): 500 is crossed
/// at 53 min 20 s (3,200 s) and at 126 min 40 s (7,600 s); 300 at 31 min 6.7 s and 148 min 53.3 s.
inline Knots plain_run() { return {{0, 20}, {60, 560}, {120, 560}, {180, 20}}; }
inline MadeRecord plain_record() { return MadeRecord::every(60, 181).course("TC1", plain_run()); }

}  // namespace soakwright
