// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that evaluating a record against a procedure gives: requirements, findings, and the course of
// each stage, for every weld, and the verdict.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/evaluate/heat_facts.h"
#include "core/evaluate/requirement.h"
#include "core/uncertainty/tolerance_table.h"

namespace soakwright {

using TimeSpan = std::pair<double, double>;  ///< from, to in seconds

struct StageChannel {
  std::string name;
  std::optional<double> in_s, out_s;  ///< first entry into the range, last exit from it (holds only)
  std::optional<double> min_c, max_c, mean_c;
};

/// What one evaluated channel's whole curve, from the record's start to its end, comes to.
struct ChannelTempering {
  std::optional<std::string> weld;
  std::string channel;
  std::optional<double> parameter;   ///< Hollomon-Jaffe parameter / 1000; nullopt if no step is known
  std::optional<double> hours_at_c;  ///< `low` of the procedure's last hold
  std::optional<double> hours;       ///< at `hours_at_c`, worth the same
};

struct StageCourse {
  std::optional<std::string> weld;
  std::size_t number = 0;
  std::string kind;  ///< heat, hold, cool, maintain
  std::optional<double> start_s, end_s;
  std::optional<TimeSpan> continuous;
  std::vector<TimeSpan> in_range;
  std::vector<TimeSpan> edge_crossings;
  /// Of in_range and edge_crossings together, in time order: the thermocouple that ended each; nullopt if
  /// the record's end did.
  std::vector<std::optional<std::string>> ended_by;
  std::vector<StageChannel> channels;
  std::vector<HoldAlternative> by_excursion_allowed;  ///< holds only
};

struct WeldVerdict {
  std::optional<std::string> number;
  std::optional<double> thickness_mm;
  Verdict verdict = Verdict::met;
};

/// A spare that took over.
struct Replacement {
  std::string channel;
  std::string by;
  double from_s = 0.0;
  std::optional<double> step_k;
};

/// One contribution to a channel's uncertainty at one temperature.
struct BudgetLine {
  BudgetSource source;                 ///< what it is, and where its size is from
  bool is_step = false;                ///< `half_width_k` is the step q of a digital reading
  std::optional<double> half_width_k;  ///< ±a; nullopt if the table says nothing at that temperature
  double divisor = 1.0;                ///< √3 for ±a, √12 for q
  std::optional<double> standard_k;    ///< u
};
struct BudgetPoint {
  std::string what;  ///< "stage-2 low", "temperature_max"
  double celsius = 0.0;
  std::vector<BudgetLine> lines;
  std::optional<double> expanded_k;  ///< U = 2·√(Σu²)
};
struct ChannelBudget {
  std::string channel;
  std::vector<BudgetPoint> points;
  double rate_share = 0.0;  ///< U of a rate as a share of it
};

struct PreparedTraces;
struct Record;
struct Job;

/// A previous record of the welds, evaluated by itself against the same procedure.
struct PreviousCycle {
  int cycle = 1;
  std::vector<Requirement> requirements;
  /// For what is carried along from record to record; null where nothing is.
  std::shared_ptr<const Record> record = nullptr;
  std::shared_ptr<const Job> job = nullptr;
  std::shared_ptr<const PreparedTraces> ground = nullptr;
};

struct Verdicts {
  std::vector<ChannelBudget> budgets;  ///< only where the decision is guarded
  std::vector<Replacement> replaced;
  std::vector<WeldVerdict> welds;
  std::vector<StageCourse> stages;
  std::vector<ChannelTempering> tempering;
  Heat heat;
  std::vector<Requirement> requirements;
  std::vector<Finding> findings;
  Verdict verdict = Verdict::met;
};

}  // namespace soakwright
