// SPDX-License-Identifier: GPL-3.0-or-later
// What is published about the preheat of the job's welds: carbon equivalents of their composition, and the
// minimum preheat by thickness, beside what the procedure maintains. Figures for a person to read; nothing of
// it decides.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/procedure/heat/composition.h"
#include "core/procedure/job/job.h"
#include "core/procedure/procedure.h"

namespace soakwright {

/// AWS D1.1, minimum preheat of category B: 3 to 20 mm 0 °C, to 38 mm 10 °C, to 65 mm 65 °C, above 110 °C.
/// Seen in print; the edition is not recorded. Nullopt below 3 mm: the table has no such thickness.
std::optional<Temperature> aws_category_b_preheat(Thickness thickness);
Provenance aws_category_b_provenance();

/// Of one weld; `weld` is nullopt where the record has only one and it has no number.
struct WeldPreheat {
  std::optional<std::string> weld;
  std::optional<Thickness> thickness;         ///< the weld's own, else the procedure's
  std::vector<CarbonEquivalent> equivalents;  ///< empty where no composition is given
  bool minimum_asked_for = false;             ///< the job names the published table
  std::optional<Temperature>
      published_minimum;  ///< nullopt if the thickness is not known or not in the table
  bool with_procedure = false;
  /// The lowest `low` of the procedure's maintain stages, and its stage.
  std::optional<Temperature> procedure_minimum;
  std::size_t procedure_stage = 0;
  [[nodiscard]] bool procedure_is_below() const {
    return published_minimum && procedure_minimum && *procedure_minimum < *published_minimum;
  }
};

/// Each weld about which the job says something; `procedure` may be null.
std::vector<WeldPreheat> preheat_of(const Job& job, const Procedure* procedure);

}  // namespace soakwright
