// SPDX-License-Identifier: GPL-3.0-or-later
// What a person decided about a result: dispositions of findings, and who signs.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/units/local_time.h"

namespace soakwright {

struct FindingReview {
  enum class Disposition { accepted, repeat, rejected };
  std::string requirement;  ///< empty: of a suspect thermocouple, which is no requirement's finding
  std::optional<std::string> weld;
  std::optional<std::string> channel;
  std::optional<double> from_s;
  Disposition disposition = Disposition::accepted;
  std::string reason;
  std::size_t line = 0;
  bool operator==(const FindingReview&) const = default;
};

struct Person {
  enum class Role { performed, reviewed, witnessed };
  Role role = Role::performed;
  std::string name;
  std::optional<CivilDate> date;
  std::optional<std::string> remark;
  std::optional<std::string> company;
  bool operator==(const Person&) const = default;
};

struct Review {
  std::string file;
  std::string sha256;
  std::optional<std::string> result_sha256;  ///< the result that was reviewed
  std::size_t result_line = 0;
  std::vector<FindingReview> findings;
  std::vector<Person> people;
  bool operator==(const Review&) const = default;
};

}  // namespace soakwright
