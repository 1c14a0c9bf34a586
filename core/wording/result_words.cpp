// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/result_words.h"

#include <fmt/format.h>

#include "core/phases/suspects/suspect_word.h"
#include "core/procedure/job/job_words.h"

namespace soakwright {

// Every switch names all values, so that the compiler tells where one is added; the last return is never
// reached.

std::string_view result_word(Verdict verdict) {
  switch (verdict) {
    case Verdict::met:
      return "met";
    case Verdict::inconclusive:
      return "inconclusive";
    case Verdict::not_met:
      return "not met";
  }
  return "";
}

std::string_view result_word(Finding::Kind kind) {
  switch (kind) {
    case Finding::Kind::not_met:
      return "not met";
    case Finding::Kind::inconclusive:
      return "inconclusive";
    case Finding::Kind::note:
      return "note";
  }
  return "";
}

std::string_view result_word(QuantityKind kind) {
  switch (kind) {
    case QuantityKind::temperature:
    case QuantityKind::difference:
      return "C";
    case QuantityKind::rate:
      return "C/h";
    case QuantityKind::duration:
      return "s";
    case QuantityKind::ratio:
    case QuantityKind::count:
      return "1";
  }
  return "";
}

std::string_view result_word(Phase::Kind kind) {
  switch (kind) {
    case Phase::Kind::heat:
      return "heat";
    case Phase::Kind::hold:
      return "hold";
    case Phase::Kind::cool:
      return "cool";
    case Phase::Kind::idle:
      return "idle";
  }
  return "";
}

std::string_view result_word(Suspect::Code code) { return suspect_word(code); }

std::string_view result_word(ThermocoupleRole role) { return kRoleWords.of(role); }

std::string_view result_word(Zone zone) { return kZoneWords.of(zone); }

std::string_view result_word(ChannelUnit unit) { return kChannelUnitWords.of(unit); }

std::string_view result_word(SettingBy by) { return by == SettingBy::given ? "given" : "found"; }

std::string_view result_word(Decision decision) {
  return decision == Decision::guarded ? "guarded" : "simple";
}

std::string rate_basis_word(std::optional<int> window_minutes) {
  return window_minutes ? fmt::format("{} min", *window_minutes) : "overall";
}

}  // namespace soakwright
