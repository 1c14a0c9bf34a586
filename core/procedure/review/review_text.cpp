// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/review/review_text.h"

#include <string_view>

#include <fmt/format.h>

#include "core/procedure/job/job_words.h"
#include "core/procedure/toml/toml_text.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

void put(std::string& text, std::string_view key, std::string_view value) {
  text.append(key).append(" = ").append(toml_text(value)).append("\n");
}

}  // namespace

std::string review_text(const Review& review) {
  std::string text;
  put(text, "soakwright", "review 1");
  if (review.result_sha256) put(text, "result_sha256", *review.result_sha256);
  for (const FindingReview& finding : review.findings) {
    text += "\n[[finding]]\n";
    if (!finding.requirement.empty()) put(text, "requirement", finding.requirement);
    if (finding.weld) put(text, "weld", *finding.weld);
    if (finding.channel) put(text, "channel", *finding.channel);
    if (finding.from_s) text += "from_s = " + toml_number(*finding.from_s) + "\n";
    put(text, "disposition", kDispositionWords.of(finding.disposition));
    put(text, "reason", finding.reason);
  }
  for (const Person& person : review.people) {
    if (person.name.empty()) continue;
    text += "\n[[person]]\n";
    put(text, "role", kPersonRoleWords.of(person.role));
    put(text, "name", person.name);
    if (person.company) put(text, "company", *person.company);
    if (person.date)
      text +=
          fmt::format("date = {:04}-{:02}-{:02}\n", person.date->year, person.date->month, person.date->day);
    if (person.remark) put(text, "remark", *person.remark);
  }
  return text;
}

}  // namespace soakwright
