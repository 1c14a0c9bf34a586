// SPDX-License-Identifier: GPL-3.0-or-later
// The three numbers of a date as they stand in a stamp, and what day they are in each order.
#pragma once

#include <cstdint>
#include <optional>

#include "core/read/reading_settings.h"

namespace soakwright {

struct DateFields {
  int first = 0, second = 0, third = 0;
  int first_digits = 0, third_digits = 0;
  int month_place = -1;  ///< 0, 1 or 2 where the month is a word
  bool operator==(const DateFields&) const = default;
};

/// The orders that `fields` can have at all, by width of the year and by words, not by value.
bool order_is_possible(const DateFields& fields, FieldOrder order);
/// Days from 1970-01-01; nullopt if no such day exists in this order.
std::optional<std::int64_t> day_number(const DateFields& fields, FieldOrder order);

}  // namespace soakwright
