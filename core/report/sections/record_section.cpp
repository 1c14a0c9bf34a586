// SPDX-License-Identifier: GPL-3.0-or-later
// The log as it was read: its time axis, its channels, the reader's settings and notices.
#include <algorithm>
#include <cstdint>
#include <utility>

#include <fmt/format.h>

#include "core/report/sections/sections.h"
#include "core/units/printed_quantity.h"
#include "core/wording/column_words.h"
#include "core/wording/notice_words.h"
#include "core/wording/sections/certificate_words.h"
#include "core/wording/sections/record_words.h"

namespace soakwright {
namespace {

struct NamedColumn {
  std::string name;
  std::size_t column = 0;
};

/// Neighbouring columns of a log with many are named by the first and the last of them.
std::vector<std::string> runs_of(const std::vector<NamedColumn>& columns) {
  constexpr std::size_t kNamedOneByOne = 6;
  std::vector<std::string> names;
  for (std::size_t i = 0; i < columns.size();) {
    std::size_t end = i + 1;
    while (end < columns.size() && columns[end].column == columns[end - 1].column + 1) ++end;
    if (end - i > kNamedOneByOne) {
      names.push_back(certificate_words::run_of_columns(columns[i].name, columns[end - 1].name,
                                                        columns[i].column, columns[end - 1].column));
      i = end;
    } else {
      names.push_back(columns[i++].name);
    }
  }
  return names;
}

/// Every column without a part in the evaluation, by reason: "set point: SP 1, SP 2; text: Remark". Empty if
/// there is none.
std::string columns_left_out(const Record& record) {
  struct Group {
    std::string reason;
    std::vector<NamedColumn> columns;
  };
  std::vector<Group> groups;
  const auto add = [&groups](const std::string& reason, const std::string& name, std::size_t column) {
    const auto known = std::find_if(groups.begin(), groups.end(),
                                    [&](const Group& group) { return group.reason == reason; });
    if (known == groups.end())
      groups.push_back({reason, {{name, column}}});
    else
      known->columns.push_back({name, column});
  };
  for (const OtherColumn& column : record.other_columns)
    add(reason_text(column.why), column.name, column.column);
  for (const Channel& channel : record.channels)
    if (!channel.evaluated())
      add(record_words::why_not_evaluated(channel, record), channel.name, channel.column);
  constexpr std::size_t kMostNamed = 300;
  std::string text;
  for (const Group& group : groups) {
    std::vector<std::string> names = runs_of(group.columns);
    const std::size_t more = names.size() - std::min(names.size(), kMostNamed);
    names.resize(names.size() - more);
    text += fmt::format("{}{}: {}", text.empty() ? "" : "; ", group.reason, fmt::join(names, ", "));
    if (more != 0) text += record_words::and_more(more);
  }
  return text;
}

}  // namespace

std::vector<LabelledText> record_facts(const ReportContext& context, bool brief) {
  const Record& record = *context.analysis.record;
  const PrintedNumbers& say = context.say;
  std::vector<LabelledText> facts;
  facts.push_back(record_words::log(record.file));
  if (record.rows() == 0) return facts;
  if (brief) {
    facts.push_back(certificate_words::recorded(
        say.span(record.times_s.front(), record.times_s.back()), say.duration(record.duration_s()),
        count_text(static_cast<std::int64_t>(record.rows())), say.duration(record.interval_s)));
  } else {
    for (LabelledText& fact : record_words::extent(record, say)) facts.push_back(std::move(fact));
  }
  const bool part = record.first_row > 0 || record.end_row < record.rows();
  if (part && record.end_row > record.first_row)
    facts.push_back(record_words::time_range(say.span(record.begin_s(), record.end_s())));
  const std::string left_out = columns_left_out(record);
  facts.push_back(record_words::thermocouples(record, left_out.empty()));
  if (!left_out.empty()) facts.push_back(record_words::columns_not_evaluated(left_out));
  if (context.analysis.verdicts && !brief)
    if (LabelledText tempering = record_words::tempering(*context.analysis.verdicts, say);
        !tempering.text.empty())
      facts.push_back(std::move(tempering));
  return facts;
}

std::vector<LabelledText> reading_facts(const ReportContext& context) {
  return record_words::reading(context.analysis.record->reading);
}

std::vector<ChannelRow> channel_rows(const ReportContext& context, const Chart& chart) {
  const Record& record = *context.analysis.record;
  const Job* job = context.analysis.job.get();
  std::vector<ChannelRow> rows;
  for (std::size_t i = 0; i < record.channels.size(); ++i) {
    const Channel& channel = record.channels[i];
    ChannelRow row;
    row.channel = i;
    const auto trace = std::find_if(chart.traces.begin(), chart.traces.end(),
                                    [i](const ChartTrace& candidate) { return candidate.channel == i; });
    if (trace != chart.traces.end()) row.tag = trace->tag;
    row.used = channel.role != ThermocoupleRole::off;
    row.evaluated = channel.evaluated();
    row.name = channel.name;
    row.column = fmt::format("{}", channel.column);
    row.unit = record_words::unit(channel.unit);
    row.role = record_words::role(channel, record);
    row.weld = weld_text(channel.weld);
    if (channel.position_m) row.place = short_text(*channel.position_m, 3) + " m";
    if (channel.angle_deg)
      row.place += (row.place.empty() ? "" : ", ") + short_text(*channel.angle_deg, 1) + "°";
    if (job != nullptr && channel.entry)
      row.instrument = record_words::instrument(job->thermocouples[*channel.entry], context.say);
    row.samples = count_text(static_cast<std::int64_t>(channel.readings.rows() - channel.readings.missing()));
    row.missing = count_text(static_cast<std::int64_t>(channel.readings.missing()));
    if (channel.min_c) row.minimum = context.say.bare_temperature(*channel.min_c, 0);
    if (channel.max_c) row.maximum = context.say.bare_temperature(*channel.max_c, 0);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<NoticeRow> notice_rows(const ReportContext& context) {
  const std::vector<Notice>& notices = context.analysis.record->notices;
  std::vector<NoticeRow> rows;
  for (std::size_t i = 0; i < notices.size(); ++i) {
    const Notice& notice = notices[i];
    // record_facts() lists these columns already.
    if (notice.code == "not-evaluated") continue;
    NoticeRow row;
    row.notice = i;
    row.code = notice.code;
    if (notice.line != 0) row.line = fmt::format("{}", notice.line);
    if (notice.count != 0) row.count = count_text(static_cast<std::int64_t>(notice.count));
    row.channel = notice.channel.value_or(std::string{});
    row.text = notice_text(notice, *context.analysis.record);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<std::string> other_column_texts(const Record& record) {
  std::vector<std::string> texts;
  for (const OtherColumn& column : record.other_columns) texts.push_back(record_words::other_column(column));
  return texts;
}

}  // namespace soakwright
