// SPDX-License-Identifier: GPL-3.0-or-later
#include <optional>
#include <set>
#include <string>
#include <tuple>

#include "core/procedure/job/job_file.h"
#include "core/procedure/job/job_words.h"
#include "core/procedure/review/review_problems.h"
#include "core/procedure/toml/table_reader.h"
#include "core/procedure/toml/text_file.h"
#include "core/procedure/toml/value_readers.h"
#include "core/units/sha256.h"

namespace soakwright {
namespace {

std::optional<std::string> sha256_text(const FoundValue& found) {
  constexpr std::size_t kDigits = 64;
  const auto* const written = found.value.as<std::string>();
  if (!written || written->size() != kDigits ||
      written->find_first_not_of("0123456789abcdef") != std::string::npos)
    return found.refuse(review_problems::not_a_digest(found));
  return *written;
}

void read_finding(TableReader& in, FindingReview& finding) {
  finding.line = in.line();
  in.may("requirement", name_text, finding.requirement);
  in.may("weld", name_text, finding.weld);
  in.may("channel", name_text, finding.channel);
  in.may("from_s", number, finding.from_s);
  if (!in.entry("requirement") && !in.entry("channel") && !in.entry("from_s"))
    in.complain(in.line(), review_problems::names_no_finding());
  in.must("disposition", one_of(kDispositionWords), finding.disposition);
  in.must("reason", name_text, finding.reason);
}

void read_person(TableReader& in, Person& person) {
  in.must("role", one_of(kPersonRoleWords), person.role);
  in.must("name", name_text, person.name);
  in.may("company", name_text, person.company);
  in.may("date", date, person.date);
  in.may("remark", text, person.remark);
}

void read_review_keys(TableReader& in, Review& review) {
  if (in.may("result_sha256", sha256_text, review.result_sha256))
    review.result_line = in.line_of("result_sha256");
  using Place =
      std::tuple<std::string, std::optional<std::string>, std::optional<std::string>, std::optional<double>>;
  std::set<Place> seen;
  in.each("finding", "[[finding]]", [&](TableReader& inner) {
    FindingReview& finding = review.findings.emplace_back();
    read_finding(inner, finding);
    const bool first =
        seen.emplace(finding.requirement, finding.weld, finding.channel, finding.from_s).second;
    if (!first && (inner.sound("requirement") || inner.sound("channel") || inner.sound("from_s")))
      inner.complain(inner.line(), review_problems::second_disposition());
  });
  in.each("person", "[[person]]",
          [&](TableReader& inner) { read_person(inner, review.people.emplace_back()); });
}

}  // namespace

Result<Review> parse_review(std::string_view source, const std::string& file) {
  auto review = read_document<Review>(source, file, TomlFileKind::review, read_review_keys);
  if (!review) return review;
  review.value().file = file;
  review.value().sha256 = sha256_hex(source);
  return review;
}

Result<Review> read_review(const std::string& path) {
  const auto bytes = read_text_file(path);
  if (!bytes) return bytes.problems();
  return parse_review(bytes.value(), path);
}

}  // namespace soakwright
