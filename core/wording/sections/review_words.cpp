// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/review_words.h"

#include <fmt/format.h>

namespace soakwright {
namespace {

const char* word_of(FindingReview::Disposition disposition) {
  switch (disposition) {
    case FindingReview::Disposition::accepted:
      return "Accepted";
    case FindingReview::Disposition::repeat:
      return "To be repeated";
    case FindingReview::Disposition::rejected:
      return "Rejected";
  }
  return "";
}

}  // namespace

std::string person_role_text(Person::Role role) {
  switch (role) {
    case Person::Role::performed:
      return "Performed by";
    case Person::Role::reviewed:
      return "Reviewed by";
    case Person::Role::witnessed:
      return "Witnessed by";
  }
  return {};
}

std::string disposition_text(const FindingReview& review) {
  return review.reason.empty() ? word_of(review.disposition)
                               : fmt::format("{}: {}", word_of(review.disposition), review.reason);
}

std::string draft_text(std::size_t open) {
  if (open == 0) return {};
  return open == 1 ? "Draft: one finding has no disposition yet."
                   : fmt::format("Draft: {} findings have no disposition yet.", open);
}

}  // namespace soakwright
