// SPDX-License-Identifier: GPL-3.0-or-later
// What `soakwright draft` is asked for. The log and job of --from are those of every command
// (Arguments::request).
#pragma once

#include <optional>
#include <string>

#include "core/draft.h"
#include "core/problems/problem.h"

namespace soakwright::cli {

struct DraftArguments {
  enum class Task { rule, list, from_log };
  Task task = Task::rule;
  DraftRequest request;
  std::string rules;  ///< a folder of rules besides the installed ones and the user's; may be empty
  std::string out;    ///< a path; empty or "-" for standard output
};

/// The options as typed.
struct RawDraft {
  std::string rule, thickness, material, lower_by, hold, hold_time, rules, out;
  bool list = false;
};

/// Settles what is a choice of words. `log`, `job` and `dates` are what was given for --from, --job and
/// --dates. Returns what is wrong with it; an option that would do nothing is wrong.
std::optional<Problem> settle_draft(const RawDraft& raw, const std::string& log, const std::string& job,
                                    const std::string& dates, std::optional<TemperatureUnit> unit,
                                    DraftArguments& arguments);

}  // namespace soakwright::cli
