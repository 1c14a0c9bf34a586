// SPDX-License-Identifier: GPL-3.0-or-later
// A thermocouple's curve in each record of its weld before this one.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/evaluate/weld_case.h"
#include "core/measure/tempering.h"

namespace soakwright {

class PreviousCurves {
 public:
  explicit PreviousCurves(const WeldCase& weld);

  struct Curves {
    int cycle = 1;
    std::string file;
    const Record* record = nullptr;
    const PreparedTraces* ground = nullptr;
    Span time;
    std::unique_ptr<Guard> guard;  ///< null where the decision is simple
    /// The evaluated trace of that name; null where the record does not have it.
    [[nodiscard]] const Trace* trace(const std::string& name) const;
  };
  [[nodiscard]] const std::vector<Curves>& records() const { return records_; }
  [[nodiscard]] bool empty() const { return records_.empty(); }

  /// The channel's curve in each of them, in order; `all_there` turns false where one does not have it.
  [[nodiscard]] std::vector<CurvePart> of(const std::string& name, bool& all_there) const;
  /// Evaluated channels of the weld in any of them that are not in the weld's group here, in order.
  [[nodiscard]] std::vector<std::string> not_here(const WeldCase& weld) const;

 private:
  std::vector<Curves> records_;
};

}  // namespace soakwright
