// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/texts/line_changes.h"

#include <algorithm>
#include <vector>

namespace soakwright::gui {
namespace {

constexpr qsizetype kMostCells =
    4'000'000;  ///< of the table below; larger files are shown as wholly replaced

}  // namespace

QStringList line_changes(const QString& before, const QString& after) {
  QStringList old_lines = before.split(u'\n');
  QStringList new_lines = after.split(u'\n');
  qsizetype head = 0;
  while (head < old_lines.size() && head < new_lines.size() && old_lines[head] == new_lines[head]) ++head;
  while (old_lines.size() > head && new_lines.size() > head && old_lines.last() == new_lines.last()) {
    old_lines.removeLast();
    new_lines.removeLast();
  }
  old_lines = old_lines.mid(head);
  new_lines = new_lines.mid(head);
  const auto n = old_lines.size();
  const auto m = new_lines.size();
  // Longest common subsequence of lines, from the end.
  std::vector<qsizetype> longest;
  const auto at = [m](qsizetype i, qsizetype j) { return static_cast<std::size_t>(i * (m + 1) + j); };
  const bool small = (n + 1) * (m + 1) <= kMostCells;
  if (small) {
    longest.assign(static_cast<std::size_t>((n + 1) * (m + 1)), 0);
    for (qsizetype i = n; i-- > 0;)
      for (qsizetype j = m; j-- > 0;)
        longest[at(i, j)] = old_lines[i] == new_lines[j]
                                ? longest[at(i + 1, j + 1)] + 1
                                : std::max(longest[at(i + 1, j)], longest[at(i, j + 1)]);
  }
  QStringList changes;
  qsizetype i = 0;
  qsizetype j = 0;
  while (i < n || j < m) {
    if (small && i < n && j < m && old_lines[i] == new_lines[j]) {
      if (!changes.isEmpty() && changes.last() != QStringLiteral("…")) changes.append(QStringLiteral("…"));
      ++i;
      ++j;
    } else if (i < n && (j == m || !small || longest[at(i + 1, j)] >= longest[at(i, j + 1)])) {
      changes.append(QStringLiteral("− ") + old_lines[i++]);
    } else {
      changes.append(QStringLiteral("+ ") + new_lines[j++]);
    }
  }
  return changes;
}

}  // namespace soakwright::gui
