// SPDX-License-Identifier: GPL-3.0-or-later
// A published rule for heat treatment: stages as a procedure has them, each with the materials and
// thicknesses that it is for.
//
// Made by read_rule() (rule_file.h) from TOML; drafted_procedure() (rule_draft.h) makes a procedure of it.
// Temperatures, rates and times are in the core's units, whatever the file's.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/procedure/procedure.h"
#include "core/units/temperature.h"
#include "core/units/thickness.h"

namespace soakwright {

/// The thicknesses that a line of a table is for; a bound that is absent does not limit.
struct ThicknessRange {
  std::optional<Thickness> from;   ///< included
  std::optional<Thickness> above;  ///< not included
  std::optional<Thickness> to;     ///< included
  [[nodiscard]] bool contains(Thickness thickness) const;
  [[nodiscard]] bool bounded() const { return from || above || to; }
  bool operator==(const ThicknessRange&) const = default;
};

struct RuleStage {
  Stage stage;
  /// The rule leaves range and time of the hold to the user: `stage` is a hold with only the limits that the
  /// rule has for it.
  bool hold_is_left_open = false;
  std::optional<Temperature> highest_of_open_hold;
  std::vector<std::string> materials;  ///< empty: all of the rule's
  ThicknessRange range;
  std::optional<TemperatureDifference> lower_by;  ///< a hold at a lower temperature, for a longer time
  std::optional<std::string> remark;              ///< one or more sentences for the reader of the draft
};

struct PublishedRule {
  std::string file;  ///< as found
  std::string name;  ///< in small letters, digits and dashes
  std::string title;
  TemperatureUnit unit = TemperatureUnit::celsius;
  Provenance provenance;               ///< source, edition, clause and flag are all there
  std::vector<std::string> materials;  ///< empty: the rule does not depend on the material
  ThicknessRange range;
  std::optional<std::string> remark;
  RecordLimits record_limits;
  std::vector<RuleStage> stages;

  [[nodiscard]] bool hold_is_left_open() const;
  /// Some limit or choice of stages depends on the thickness.
  [[nodiscard]] bool needs_thickness() const;
};

/// "P-No. 1 Gr. 2", "p-no.1 gr.2" and "PNo1Gr2" are one material: only letters and digits count.
bool same_material(const std::string& a, const std::string& b);
bool applies_to(const RuleStage& stage, const std::string& material);

}  // namespace soakwright
