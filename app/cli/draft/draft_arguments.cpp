// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/draft/draft_arguments.h"

#include <array>
#include <utility>

#include "core/units/number_text.h"
#include "core/units/quantity_text.h"

namespace soakwright::cli {
namespace {

Problem usage(const std::string& what, const std::string& help = "see `soakwright draft --help`") {
  return {ProblemKind::usage, "", 0, what, help};
}

/// The first option given that means nothing for what is asked.
std::optional<Problem> idle_option(const RawDraft& raw, const std::string& job, const std::string& dates,
                                   std::optional<TemperatureUnit> unit, DraftArguments::Task task) {
  using Task = DraftArguments::Task;
  const bool rule = task == Task::rule, list = task == Task::list, from = task == Task::from_log;
  struct Option {
    const char* name;
    bool given, of_use;
  };
  const std::array<Option, 9> options{{{"--thickness", !raw.thickness.empty(), rule},
                                       {"--material", !raw.material.empty(), rule},
                                       {"--lower-by", !raw.lower_by.empty(), rule},
                                       {"--hold", !raw.hold.empty() || !raw.hold_time.empty(), rule},
                                       {"--rules", !raw.rules.empty(), rule || list},
                                       {"--job", !job.empty(), from},
                                       {"--dates", !dates.empty(), from},
                                       {"--unit", unit.has_value(), rule || from},
                                       {"--out", !raw.out.empty(), rule || from}}};
  const char* what = rule ? "a rule" : list ? "--list" : "--from";
  for (const Option& option : options)
    if (option.given && !option.of_use)
      return usage(std::string(option.name) + " does nothing with " + what, "leave it out");
  return std::nullopt;
}

}  // namespace

std::optional<Problem> settle_draft(const RawDraft& raw, const std::string& log, const std::string& job,
                                    const std::string& dates, std::optional<TemperatureUnit> unit,
                                    DraftArguments& arguments) {
  using Task = DraftArguments::Task;
  const int tasks = (raw.rule.empty() ? 0 : 1) + (raw.list ? 1 : 0) + (log.empty() ? 0 : 1);
  if (tasks == 0)
    return usage("no rule is named", "name one, list them with --list, or give a log with --from");
  if (tasks > 1) return usage("a rule, --list and --from exclude each other", "keep one of them");
  arguments.task = raw.list ? Task::list : log.empty() ? Task::rule : Task::from_log;
  if (auto idle = idle_option(raw, job, dates, unit, arguments.task)) return idle;
  if (raw.hold.empty() != raw.hold_time.empty())
    return usage("--hold and --hold-time belong together", "give both, or neither");
  DraftRequest& request = arguments.request;
  request.rule = raw.rule;
  request.material = raw.material;
  request.hold = raw.hold;
  request.hold_time = raw.hold_time;
  request.unit = unit;
  arguments.rules = raw.rules;
  arguments.out = raw.out;
  if (!raw.thickness.empty()) {
    request.thickness = parse_thickness(raw.thickness);
    if (!request.thickness || !(request.thickness->millimetres() > 0.0))
      return usage("--thickness '" + raw.thickness + "' is no thickness",
                   R"(write --thickness "38 mm" or --thickness "1.5 in")");
  }
  if (!raw.lower_by.empty()) {
    request.lower_by = parse_number(raw.lower_by);
    if (!request.lower_by || !(*request.lower_by > 0.0))
      return usage("--lower-by '" + raw.lower_by + "' is no number above 0",
                   "write it in the unit of the rule: --lower-by 30");
  }
  return std::nullopt;
}

}  // namespace soakwright::cli
