// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/settled_columns.h"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

#include "core/read/unit_name.h"
#include "core/record/job_columns.h"
#include "core/record/record_problems.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

/// "TC3 F" as "TC3" and "F".
struct LastLetter {
  std::string stem;
  char letter = ' ';
  char before = ' ';  ///< what parts them
};

std::optional<LastLetter> last_letter(const std::string& name) {
  if (name.size() < 3) return std::nullopt;
  const char letter = name.back();
  const char before = name[name.size() - 2];
  if (letter < 'A' || letter > 'Z' || (before != ' ' && before != '_')) return std::nullopt;
  std::string stem{trimmed(std::string_view{name}.substr(0, name.size() - 2))};
  if (stem.empty()) return std::nullopt;
  return LastLetter{std::move(stem), letter, before};
}

bool may_be_unit(char letter) { return letter == 'C' || letter == 'F' || letter == 'K'; }

class ColumnSettler {
 public:
  ColumnSettler(LogTable& table, std::span<const double> times_s, const std::string& path, const Job* job)
      : table_(table), times_s_(times_s), path_(path), job_(job) {}

  Result<std::vector<ColumnKind>> settle() {
    kinds_ = kinds_of(table_, times_s_, unit_of_unnamed());
    if (auto problem = settle_last_letters()) return *problem;
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
      LogColumn& column = table_.columns[i];
      if (!kinds_[i].temperature || column.unit.empty() || said_unit(column)) continue;
      column.name = column.header;
      column.unit.clear();
    }
    if (auto problem = unit_without_column()) return *problem;
    return std::move(kinds_);
  }

 private:
  [[nodiscard]] std::optional<ChannelUnit> unit_of_unnamed() const {
    return job_ != nullptr ? job_->reading.unit : std::nullopt;
  }

  /// Columns whose unit the job gives in their own entry.
  [[nodiscard]] std::set<std::size_t> given_their_unit() const {
    std::set<std::size_t> out;
    if (job_ == nullptr) return out;
    for (const ThermocoupleEntry& entry : job_->thermocouples)
      if (entry.unit)
        if (const auto column = find_column(table_, entry.column, *job_, entry.line))
          out.insert(column.value());
    return out;
  }

  /// "Zone C" beside "Zone A" and "Zone B" is a label.
  [[nodiscard]] std::set<std::string> labelled_stems() const {
    std::set<std::string> stems;
    for (const LogColumn& column : table_.columns)
      if (const auto last = last_letter(column.name); last && !may_be_unit(last->letter))
        stems.insert(lower_case(last->stem));
    return stems;
  }

  std::optional<Problem> settle_last_letters() {
    if (unit_of_unnamed()) return std::nullopt;
    const std::set<std::string> labelled = labelled_stems();
    const std::set<std::size_t> given = given_their_unit();
    std::vector<std::size_t> ending;
    std::optional<std::size_t> after_a_space;
    std::optional<std::size_t> another;
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      const LogColumn& column = table_.columns[i];
      if (!column.unit.empty() || column.numbers == 0) continue;
      const auto last = last_letter(column.name);
      const bool ends = last && may_be_unit(last->letter) && labelled.count(lower_case(last->stem)) == 0;
      if (ends) ending.push_back(i);
      if (!kinds_[i].temperature || given.count(i) != 0) continue;
      if (!ends && !another) another = i;
      if (ends && last->before == ' ' && !after_a_space) after_a_space = i;
    }
    if (ending.empty()) return std::nullopt;
    if (another) {
      if (!after_a_space) return std::nullopt;
      return only_some(*after_a_space, *another);
    }
    for (const std::size_t i : ending) {
      LastLetter last = *last_letter(table_.columns[i].name);
      table_.columns[i].name = std::move(last.stem);
      table_.columns[i].unit = std::string(1, last.letter);
    }
    kinds_ = kinds_of(table_, times_s_, std::nullopt);
    return std::nullopt;
  }

  [[nodiscard]] Problem only_some(std::size_t ending, std::size_t another) const {
    const std::size_t line = table_.header_line.value != 0 ? table_.header_line.value : table_.first_row_line;
    return unit_in_some_names_only(path_, line, table_.columns[ending], table_.columns[another]);
  }

  /// A choice that changes nothing was meant for something else.
  [[nodiscard]] std::optional<Problem> unit_without_column() const {
    if (!unit_of_unnamed()) return std::nullopt;
    const std::set<std::size_t> given = given_their_unit();
    for (std::size_t i = 0; i < kinds_.size(); ++i)
      if (kinds_[i].is_degrees && !said_unit(table_.columns[i]) && given.count(i) == 0) return std::nullopt;
    // "(K)" that is a type leaves the unit open too.
    for (std::size_t i = 0; i < kinds_.size(); ++i)
      if (kinds_[i].temperature && said_unit(table_.columns[i]) != kinds_[i].unit) return std::nullopt;
    return unit_for_no_column(*job_);
  }

  LogTable& table_;
  std::span<const double> times_s_;
  const std::string& path_;
  const Job* job_;
  std::vector<ColumnKind> kinds_;
};

}  // namespace

Result<std::vector<ColumnKind>> settle_columns(LogTable& table, std::span<const double> times_s,
                                               const std::string& path, const Job* job) {
  return ColumnSettler{table, times_s, path, job}.settle();
}

}  // namespace soakwright
