// SPDX-License-Identifier: GPL-3.0-or-later
// The uncertainty budgets: one table for all channels that share one.
#include <algorithm>

#include "core/report/sections/sections.h"
#include "core/wording/sections/budget_words.h"
#include "core/wording/sections/certificate_words.h"

namespace soakwright {
namespace {

BudgetTable table_of(const ChannelBudget& budget, const PrintedNumbers& say) {
  BudgetTable table;
  table.names = {budget.channel};
  table.channels = budget.channel;
  table.rate = budget_words::of_rate(budget.rate_share);
  for (const BudgetPoint& point : budget.points) {
    table.columns.push_back(say.limit(Temperature::of_celsius(point.celsius)) + ", " +
                            certificate_words::budget_point(point.what));
    table.expanded.push_back(budget_words::contribution(point.expanded_k, say));
  }
  const std::size_t lines = budget.points.empty() ? 0 : budget.points.front().lines.size();
  for (std::size_t i = 0; i < lines; ++i) {
    const BudgetLine& line = budget.points.front().lines[i];
    BudgetTable::Row row{budget_words::name(line.source.kind),
                         budget_words::source(line.source),
                         {},
                         line.is_step ? "√12" : "√3",
                         {}};
    for (const BudgetPoint& point : budget.points) {
      const std::string size = budget_words::contribution(point.lines[i].half_width_k, say);
      // One half-width for all temperatures is said once.
      const bool first = row.half_width.empty();
      if (first || row.half_width.substr(row.half_width.rfind(' ') + 1) != size)
        row.half_width += (first ? "" : " / ") + size;
      row.standard.push_back(budget_words::contribution(point.lines[i].standard_k, say));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

bool same_figures(const BudgetTable& a, const BudgetTable& b) {
  return a.columns == b.columns && a.expanded == b.expanded && a.rate == b.rate &&
         std::equal(a.rows.begin(), a.rows.end(), b.rows.begin(), b.rows.end(),
                    [](const BudgetTable::Row& x, const BudgetTable::Row& y) {
                      return x.name == y.name && x.source == y.source && x.half_width == y.half_width &&
                             x.standard == y.standard;
                    });
}

}  // namespace

std::vector<BudgetTable> budget_tables(const ReportContext& context) {
  std::vector<BudgetTable> tables;
  if (!context.analysis.verdicts) return tables;
  for (const ChannelBudget& budget : context.analysis.verdicts->budgets) {
    BudgetTable table = table_of(budget, context.say);
    const auto same = std::find_if(tables.begin(), tables.end(),
                                   [&](const BudgetTable& other) { return same_figures(other, table); });
    if (same == tables.end()) {
      tables.push_back(std::move(table));
    } else {
      same->names.push_back(budget.channel);
      same->channels += ", " + budget.channel;
    }
  }
  return tables;
}

std::vector<std::size_t> budgets_behind(const Requirement& requirement,
                                        const std::vector<BudgetTable>& budgets) {
  std::vector<std::size_t> behind;
  if (!requirement.uncertainty && !requirement.certain_s) return behind;
  const auto has = [](const BudgetTable& table, const std::optional<std::string>& channel) {
    return channel && std::find(table.names.begin(), table.names.end(), *channel) != table.names.end();
  };
  for (std::size_t i = 0; i < budgets.size(); ++i)
    if (!requirement.channel || has(budgets[i], requirement.channel) ||
        has(budgets[i], requirement.channel_2))
      behind.push_back(i);
  return behind;
}

}  // namespace soakwright
