// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/record/channels.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>
#include <variant>

#include "core/procedure/job/job_words.h"
#include "core/record/column_notices.h"
#include "core/record/column_readings.h"
#include "core/record/its90_reference.h"
#include "core/record/job_columns.h"
#include "core/record/record_problems.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

constexpr std::size_t kNoEntry = static_cast<std::size_t>(-1);

/// One column while it becomes what it is.
struct ChannelCandidate {
  ColumnKind kind;
  std::size_t entry = kNoEntry;  ///< index into Job::thermocouples
  bool is_cold_junction = false;
  std::string name;
};

class ChannelMaker {
 public:
  ChannelMaker(LogTable& table, std::vector<ColumnKind> kinds, const std::string& path, const Job* job)
      : table_(table), kinds_(std::move(kinds)), path_(path), job_(job) {}

  Result<Channels> make() {
    if (Problems problems = name_columns(); !problems.empty()) return problems;
    read_cold_junctions();
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      if (is_trailing_delimiter(i)) continue;
      if (candidates_[i].kind.temperature)
        add_channel(i);
      else
        add_other(i, candidates_[i].kind.why);
    }
    if (Problems problems = link_spares(); !problems.empty()) return problems;
    if (out_.channels.empty()) return no_channel();
    add_table_notices();
    return std::move(out_);
  }

 private:
  [[nodiscard]] const ThermocoupleEntry* entry_of(std::size_t column) const {
    const std::size_t entry = candidates_[column].entry;
    return entry == kNoEntry ? nullptr : &job_->thermocouples[entry];
  }
  /// Every line ends with a delimiter: nothing stands behind it, and nothing is meant by it.
  [[nodiscard]] bool is_trailing_delimiter(std::size_t i) const {
    const LogColumn& column = table_.columns[i];
    return i + 1 == table_.columns.size() && candidates_[i].entry == kNoEntry && column.header.empty() &&
           column.unit.empty() && column.numbers == 0 && column.texts.count == 0 && column.grouped.count == 0;
  }
  [[nodiscard]] std::size_t names_line() const {
    return table_.header_line.value != 0 ? table_.header_line.value : table_.first_row_line;
  }

  /// Which column is what, by the log and then by the job.
  Problems name_columns() {
    for (std::size_t i = 0; i < table_.columns.size(); ++i)
      candidates_.push_back({kinds_[i], kNoEntry, false, table_.columns[i].name});
    if (job_ == nullptr) return {};
    const auto entries = columns_of_entries(table_, *job_);
    if (!entries) return entries.problems();
    Problems problems;
    for (std::size_t e = 0; e < entries.value().size(); ++e) {
      ChannelCandidate& candidate = candidates_[entries.value()[e]];
      const ThermocoupleEntry& entry = job_->thermocouples[e];
      candidate.entry = e;
      candidate.kind.temperature = true;
      candidate.kind.name_unclear = false;
      if (entry.name) candidate.name = *entry.name;
      if (entry.unit) {
        note_unit_clash(table_.columns[entries.value()[e]], candidate, entry);
        candidate.kind.unit = *entry.unit;
        candidate.kind.unit_assumed = false;
      } else if (!candidate.kind.is_degrees && candidate.kind.unit != ChannelUnit::millivolt) {
        candidate.kind.unit_assumed = !job_->reading.unit;
      }
    }
    refuse_names_of_others(entries.value(), problems);
    for (const ThermocoupleEntry& entry : job_->thermocouples) {
      if (!entry.cold_junction || !std::holds_alternative<std::string>(*entry.cold_junction)) continue;
      const auto column = find_column(table_, std::get<std::string>(*entry.cold_junction), *job_, entry.line);
      if (!column) {
        problems.insert(problems.end(), column.problems().begin(), column.problems().end());
        continue;
      }
      ChannelCandidate& candidate = candidates_[column.value()];
      candidate.is_cold_junction = true;
      if (candidate.entry != kNoEntry) continue;
      candidate.kind.temperature = false;
      candidate.kind.is_degrees = true;
      candidate.kind.why = {ColumnContent::cold_junction};
    }
    return problems;
  }

  /// A name that the job gives must not be another thermocouple's in the log: nobody could tell them apart.
  void refuse_names_of_others(const std::vector<std::size_t>& columns, Problems& problems) const {
    for (std::size_t e = 0; e < columns.size(); ++e) {
      const ThermocoupleEntry& entry = job_->thermocouples[e];
      if (!entry.name) continue;
      for (std::size_t i = 0; i < candidates_.size(); ++i) {
        const bool another = i != columns[e] && candidates_[i].kind.temperature;
        if (!another || candidates_[i].name != *entry.name) continue;
        problems.push_back(name_of_another_column(*job_, entry, table_.columns[i].number));
      }
    }
  }

  /// The job is followed, but not in silence.
  void note_unit_clash(const LogColumn& column, const ChannelCandidate& candidate,
                       const ThermocoupleEntry& entry) {
    if (column.unit.empty() || candidate.kind.unit_assumed || said_unit(column) == entry.unit) return;
    add_notice("given-against-found", candidate.name,
               state(Sentence::unit_against_job, AsWritten{std::string{kChannelUnitWords.of(*entry.unit)}},
                     AsWritten{column.unit}));
  }

  /// Before any column is taken apart: the terminals' temperature in each row.
  void read_cold_junctions() {
    cold_columns_.resize(table_.columns.size());
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      if (!candidates_[i].is_cold_junction) continue;
      LogColumn copy = table_.columns[i];
      const ChannelUnit unit = candidates_[i].kind.unit;
      const Readings readings =
          degrees_of(table_, copy, unit == ChannelUnit::millivolt ? ChannelUnit::celsius : unit).readings;
      for (std::size_t row = 0; row < table_.rows(); ++row)
        cold_columns_[i].push_back(readings.celsius(row).value_or(std::numeric_limits<double>::quiet_NaN()));
    }
  }

  /// One value, or one for each row; empty where the job names none.
  [[nodiscard]] std::vector<double> cold_junction(const ThermocoupleEntry* entry) const {
    if (entry == nullptr || !entry->cold_junction) return {};
    if (const auto* fixed = std::get_if<Temperature>(&*entry->cold_junction)) return {fixed->celsius()};
    const auto column = find_column(table_, std::get<std::string>(*entry->cold_junction), *job_, entry->line);
    return cold_columns_[column.value()];
  }

  void add_channel(std::size_t i) {
    LogColumn& column = table_.columns[i];
    const ChannelCandidate& candidate = candidates_[i];
    const ThermocoupleEntry* const entry = entry_of(i);
    ColumnReadings readings;
    if (candidate.kind.unit == ChannelUnit::millivolt) {
      const std::vector<double> cold = cold_junction(entry);
      if (cold.empty()) return add_other(i, {ColumnContent::emf_without_cold_junction});
      readings = degrees_of_emf(table_, column, entry->type.value_or(ThermocoupleType::K), cold);
      if (!entry->type) add_notice("type-assumed", candidate.name, state(Sentence::emf_type_assumed));
    } else {
      readings = degrees_of(table_, column, candidate.kind.unit);
    }
    if (entry != nullptr && !entry->correction.empty()) {
      readings.readings = readings.readings.corrected(entry->correction);
      find_extremes(readings);
    }
    Channel channel;
    channel.column = column.number;
    channel.name = candidate.name;
    channel.unit = candidate.kind.unit;
    if (entry != nullptr) {
      channel.role = entry->role;
      channel.zone = entry->zone;
      channel.weld = entry->weld;
      channel.position_m = entry->position_m;
      channel.angle_deg = entry->angle_deg;
      channel.entry = candidate.entry;
    }
    channel.readings = std::move(readings.readings);
    channel.min_c = readings.min_c;
    channel.max_c = readings.max_c;
    add_cell_notices(column, candidate, readings.out_of_range);
    if (candidate.kind.unit_assumed) {
      ++units_assumed_;
      assumed_name_ = candidate.name;
    }
    if (candidate.kind.name_unclear) out_.notices.push_back(unclear_name_notice(column, names_line()));
    if (entry == nullptr && job_ != nullptr && !job_->thermocouples.empty()) {
      if (job_->reading.unlisted_off.value_or(false)) {
        channel.role = ThermocoupleRole::off;
        add_notice("not-evaluated", candidate.name, state(Sentence::column_off_in_job));
      } else {
        add_notice("not-in-job", candidate.name, state(Sentence::column_not_in_job));
      }
    }
    channel_of_column_.emplace_back(i, out_.channels.size());
    out_.channels.push_back(std::move(channel));
  }

  void add_other(std::size_t i, ColumnReason why) {
    LogColumn& column = table_.columns[i];
    OtherColumn other{column.number, candidates_[i].name, std::move(why)};
    if (candidates_[i].entry != kNoEntry) other.entry = candidates_[i].entry;
    const ColumnKind& kind = candidates_[i].kind;
    if (kind.is_degrees && kind.unit != ChannelUnit::millivolt && column.numbers != 0)
      other.readings = degrees_of(table_, column, kind.unit).readings;
    add_notice("not-evaluated", other.name,
               other.why.content == ColumnContent::other_unit
                   ? state(Sentence::column_of_other_unit, AsWritten{other.why.unit})
                   : state(Sentence::column_not_evaluated, other.why.content));
    out_.other_columns.push_back(std::move(other));
  }

  void add_notice(std::string code, const std::string& channel, Statement what) {
    out_.notices.push_back({std::move(code), names_line(), 1, channel, std::move(what)});
  }

  void add_cell_notices(const LogColumn& column, const ChannelCandidate& candidate,
                        const LineIssue& out_of_range) {
    for (Notice& notice : cell_notices(column, candidate.name, out_of_range))
      out_.notices.push_back(std::move(notice));
  }

  void add_table_notices() {
    for (Notice& notice : duplicate_name_notices(table_, names_line()))
      out_.notices.push_back(std::move(notice));
    if (units_assumed_ == 0) return;
    Notice notice{"unit-assumed", names_line(), units_assumed_, std::nullopt,
                  state(Sentence::unit_of_columns_assumed)};
    if (units_assumed_ == 1) {
      notice.channel = assumed_name_;
      notice.what = state(Sentence::unit_of_column_assumed);
    }
    out_.notices.push_back(std::move(notice));
  }

  Problems link_spares() {
    Problems problems;
    if (job_ == nullptr) return problems;
    for (Channel& channel : out_.channels) {
      if (!channel.entry) continue;
      const ThermocoupleEntry& entry = job_->thermocouples[*channel.entry];
      if (!entry.spare_for) continue;
      const auto main = channel_named(*entry.spare_for, entry.line);
      if (!main) {
        problems.insert(problems.end(), main.problems().begin(), main.problems().end());
        continue;
      }
      if (&out_.channels[main.value()] == &channel) problems.push_back(spare_for_itself(*job_, entry));
      channel.spare_for = main.value();
    }
    return problems;
  }

  /// A channel by its name in the job or by its column.
  Result<std::size_t> channel_named(const std::string& said, std::size_t line) const {
    for (std::size_t c = 0; c < out_.channels.size(); ++c)
      if (out_.channels[c].name == said) return c;
    const auto column = find_column(table_, said, *job_, line);
    if (!column) return column.problems();
    for (const auto& [index, channel] : channel_of_column_)
      if (index == column.value()) return channel;
    return column_is_no_thermocouple(*job_, line, said);
  }

  [[nodiscard]] Problem no_channel() const {
    const bool emf =
        std::any_of(out_.other_columns.begin(), out_.other_columns.end(), [](const OtherColumn& column) {
          return column.why.content == ColumnContent::emf_without_cold_junction;
        });
    return emf ? emf_without_cold_junction(path_, names_line())
               : no_temperatures(path_, names_line(), out_.other_columns);
  }

  LogTable& table_;
  std::vector<ColumnKind> kinds_;
  const std::string& path_;
  const Job* job_;
  std::vector<ChannelCandidate> candidates_;
  std::vector<std::vector<double>> cold_columns_;
  std::vector<std::pair<std::size_t, std::size_t>> channel_of_column_;
  std::size_t units_assumed_ = 0;
  std::string assumed_name_;
  Channels out_;
};

}  // namespace

Result<Channels> make_channels(LogTable& table, std::vector<ColumnKind> kinds, const std::string& path,
                               const Job* job) {
  return ChannelMaker{table, std::move(kinds), path, job}.make();
}

}  // namespace soakwright
