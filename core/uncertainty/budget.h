// SPDX-License-Identifier: GPL-3.0-or-later
// What makes a thermocouple's reading uncertain, and by how much: one budget per channel.
//
// A contribution known only by its limits ±a counts as rectangular, u = a/√3; a digital step q as u = q/√12
// (JCGM 100:2008, 4.3.7 and F.2.2.1). The expanded uncertainty is U = 2·√(Σu²), k = 2. What the job does not
// give is no contribution; the log's own last digit always is one.
#pragma once

#include <vector>

#include "core/procedure/job/job.h"
#include "core/record/record.h"
#include "core/uncertainty/tolerance_table.h"

namespace soakwright {

struct BudgetPart {
  BudgetSource source;  ///< with a, or the step q, as its size
  double divisor = 1.0;
  [[nodiscard]] bool is_step() const { return divisor > 2.0; }  ///< √12 rather than √3
};

/// Coverage factor of every U.
inline constexpr double kCoverage = 2.0;

class Budget {
 public:
  Budget() = default;
  explicit Budget(std::vector<BudgetPart> parts);

  [[nodiscard]] const std::vector<BudgetPart>& parts() const { return parts_; }
  /// U of a reading of `celsius`, in kelvin; infinite where the thermocouple's table says nothing.
  [[nodiscard]] double expanded_k(double celsius) const;
  /// U of a rate as a share of it, 2·p/√3: a constant error cancels in a rate, a tolerance in % does not.
  [[nodiscard]] double rate_share() const { return rate_share_; }
  /// The same for readings of up to `hottest_c`: a table that begins as a constant has no share before its
  /// line does.
  [[nodiscard]] double rate_share_up_to(double hottest_c) const {
    return varying_.line_from_c && hottest_c <= *varying_.line_from_c ? 0.0 : rate_share_;
  }
  /// Whether both give the same U everywhere.
  [[nodiscard]] bool same_size(const Budget& other) const {
    return varying_ == other.varying_ && varying_divisor_ == other.varying_divisor_ &&
           variance_ == other.variance_;
  }

 private:
  std::vector<BudgetPart> parts_;
  HalfWidth varying_;  ///< of the part that depends on the temperature or has a range
  double varying_divisor_ = 1.0;
  double variance_ = 0.0;  ///< of all the others
  double rate_share_ = 0.0;
};

/// Of one channel of the record that the job lists with a tolerance.
Budget budget_of(const Channel& channel, const Job& job);

/// Whether the channel counts: evaluated, spare or at the edge of the heated band.
bool needs_budget(const Channel& channel);

/// One for each channel of the record, empty for those that are not on the work.
std::vector<Budget> budgets_of(const Record& record, const Job& job);

}  // namespace soakwright
