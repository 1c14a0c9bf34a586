// SPDX-License-Identifier: GPL-3.0-or-later
// The source files of this report, and who signs it.
#include <cstdint>

#include "core/report/sections/sections.h"
#include "core/wording/sections/review_words.h"
#include "core/wording/sections/work_words.h"

namespace soakwright {
namespace {

std::string base_name(const std::string& path) {
  const auto at = path.find_last_of("/\\");
  return at == std::string::npos ? path : path.substr(at + 1);
}

}  // namespace

std::vector<Fingerprint> fingerprint_rows(const ReportContext& context) {
  const Analysis& analysis = context.analysis;
  std::vector<Fingerprint> rows;
  rows.push_back({"Log", analysis.record->file, analysis.record->sha256,
                  count_text(static_cast<std::int64_t>(analysis.record->bytes)) +
                      (analysis.record->bytes == 1 ? " byte" : " bytes")});
  for (const PreviousRecord& one : analysis.previous_records)
    rows.push_back({work_words::log_of_cycle(one.cycle), one.record->file, one.record->sha256,
                    count_text(static_cast<std::int64_t>(one.record->bytes)) +
                        (one.record->bytes == 1 ? " byte" : " bytes")});
  if (analysis.procedure)
    rows.push_back({"Procedure", base_name(analysis.procedure->file), analysis.procedure->sha256, {}});
  if (analysis.job) rows.push_back({"Job", base_name(analysis.job->file), analysis.job->sha256, {}});
  if (analysis.review)
    rows.push_back({"Review", base_name(analysis.review->file), analysis.review->sha256, {}});
  if (!analysis.result_sha256.empty()) rows.push_back({"Result", "result.json", analysis.result_sha256, {}});
  return rows;
}

std::vector<SignaturePlace> signature_places(const ReportContext& context) {
  std::vector<SignaturePlace> places;
  for (const Person::Role role : {Person::Role::performed, Person::Role::reviewed, Person::Role::witnessed}) {
    const std::size_t before = places.size();
    if (context.analysis.review)
      for (const Person& person : context.analysis.review->people)
        if (person.role == role)
          places.push_back({person_role_text(role), person.name, person.company.value_or(std::string{}),
                            person.date ? date_text(*person.date) : std::string{},
                            person.remark.value_or(std::string{}), role});
    // A place to sign by hand, where the review names nobody.
    if (places.size() == before) places.push_back({person_role_text(role), {}, {}, {}, {}, role});
  }
  return places;
}

}  // namespace soakwright
