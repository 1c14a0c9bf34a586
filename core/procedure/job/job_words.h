// SPDX-License-Identifier: GPL-3.0-or-later
// The words that job and review have for what the program keeps as enumerations; results and screens use the
// same.
#pragma once

#include "core/procedure/job/job.h"
#include "core/procedure/review/review.h"
#include "core/units/word_table.h"

namespace soakwright {

inline constexpr auto kRoleWords =
    word_table<ThermocoupleRole::off>("control", "monitor", "spare", "air", "set point", "off");
inline constexpr auto kZoneWords = word_table<Zone::edge>("soak", "edge");
inline constexpr auto kThermocoupleTypeWords =
    word_table<ThermocoupleType::B>("K", "J", "N", "E", "T", "R", "S", "B");
inline constexpr auto kChannelUnitWords = word_table<ChannelUnit::millivolt>("C", "F", "K", "mV");
inline constexpr auto kToleranceWords =
    word_table<Tolerance::Kind::fixed>("class 1", "class 2", "standard", "special", "fixed");
inline constexpr auto kPreheatTableWords =
    word_table<PreheatTable::aws_d1_1_category_b>("AWS D1.1 category B");
inline constexpr auto kDispositionWords =
    word_table<FindingReview::Disposition::rejected>("accepted", "repeat", "rejected");
inline constexpr auto kPersonRoleWords =
    word_table<Person::Role::witnessed>("performed", "reviewed", "witnessed");

}  // namespace soakwright
