// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/job/reason_problems.h"

namespace soakwright {

void check_reason(const ThermocoupleEntry& entry, TableReader& in) {
  const bool evaluated =
      (entry.role == ThermocoupleRole::control || entry.role == ThermocoupleRole::monitor) &&
      entry.zone == Zone::soak;
  if (!entry.reason || !evaluated) return;
  // A role or zone that could not be read has its own complaint.
  for (const char* key : {"role", "zone"})
    if (in.entry(key) != nullptr && !in.sound(key)) return;
  in.complain(in.line_of("reason"), "`reason` says why a thermocouple is not evaluated, and this one is",
              "take `reason` out, or give the `role`; readings are excluded with [[exclude]]");
}

}  // namespace soakwright
