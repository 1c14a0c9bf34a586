// SPDX-License-Identifier: GPL-3.0-or-later
// The log as it was read: its time axis, its channels, the reader's settings and notices.
#include <algorithm>
#include <cctype>
#include <optional>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "core/procedure/job/job_words.h"
#include "core/report/sections/sections.h"
#include "core/units/printed_quantity.h"
#include "core/wording/certificate_words.h"

namespace soakwright {
namespace {

std::string unit_text(ChannelUnit unit) {
  switch (unit) {
    case ChannelUnit::celsius:
      return "°C";
    case ChannelUnit::fahrenheit:
      return "°F";
    case ChannelUnit::kelvin:
      return "K";
    case ChannelUnit::millivolt:
      return "mV";
  }
  return {};
}

std::string role_text(const Channel& channel, const Record& record) {
  std::string text{kRoleWords.of(channel.role)};
  const bool on_work = channel.role == ThermocoupleRole::control || channel.role == ThermocoupleRole::monitor;
  if (on_work && channel.zone == Zone::edge) text += ", edge";
  if (channel.role == ThermocoupleRole::spare && channel.spare_for)
    text += " for " + record.channels[*channel.spare_for].name;
  return text;
}

std::string type_text(ThermocoupleType type) {
  return std::string{"type "}.append(kThermocoupleTypeWords.of(type));
}

std::string tolerance_text(const Tolerance& tolerance, const PrintedNumbers& say) {
  if (tolerance.kind == Tolerance::Kind::fixed) return "±" + say.limit(tolerance.fixed);
  return std::string{kToleranceWords.of(tolerance.kind)};
}

/// What the job says of the thermocouple itself.
std::string instrument_text(const ThermocoupleEntry& entry, const PrintedNumbers& say) {
  std::string text;
  const auto append = [&text](const std::string& part) { text += (text.empty() ? "" : ", ") + part; };
  if (entry.type) append(type_text(*entry.type));
  if (entry.tolerance) append(tolerance_text(*entry.tolerance, say));
  if (entry.extension) append("extension ±" + say.limit(*entry.extension));
  if (!entry.correction.empty()) append("corrected");
  if (entry.certificate) append("certificate " + *entry.certificate);
  if (entry.valid_until) append("valid until " + date_text(*entry.valid_until));
  return text;
}

LabelledText setting_fact(const char* name, const Setting& setting) {
  return {name, setting.value + (setting.by == Setting::By::given ? " (given)" : " (found)")};
}

/// A sign by itself is overlooked: "comma (,)". Any other value is said as it is.
Setting with_sign_named(Setting setting) {
  constexpr std::pair<std::string_view, std::string_view> kNames[] = {
      {",", "comma"}, {".", "point"}, {";", "semicolon"}, {"|", "pipe"}};
  for (const auto& [sign, name] : kNames)
    if (setting.value == sign) {
      setting.value = fmt::format("{} ({})", name, sign);
      break;
    }
  return setting;
}

/// In words: settings first, then column by column.
std::string changes_text(const Reading& reading) {
  constexpr std::pair<const char*, const char*> kWords[] = {{"header_line", "line of the column names"},
                                                            {"time_column", "time column"},
                                                            {"dates", "date order"},
                                                            {"decimal", "decimal sign"},
                                                            {"clock_forward", "clock put forward"},
                                                            {"cold_junction", "cold junction"}};
  std::string text;
  std::optional<std::size_t> column;
  for (const HandChange& change : reading.changed_by_hand) {
    std::string word = change.key;
    for (const auto& [key, name] : kWords)
      if (change.key == key) word = name;
    const bool sign =
        change.value.size() == 1 && std::isalnum(static_cast<unsigned char>(change.value.front())) == 0;
    const std::string said = fmt::format(fmt::runtime(sign ? "{} '{}'" : "{} {}"), word, change.value);
    if (change.column && change.column != column)
      text +=
          fmt::format("{}column {} ({}): {}", text.empty() ? "" : "; ", *change.column, change.name, said);
    else
      text += (text.empty() ? "" : ", ") + said;
    column = change.column;
  }
  return text;
}

/// Why a channel is not among the evaluated ones.
std::string reason_not_evaluated(const Channel& channel, const Record& record) {
  if (channel.role == ThermocoupleRole::off)
    return channel.entry ? "off in the job" : "not listed in the job";
  return channel.zone == Zone::edge ? "edge zone" : role_text(channel, record);
}

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
  for (const OtherColumn& column : record.other_columns) add(column.why, column.name, column.column);
  for (const Channel& channel : record.channels)
    if (!channel.evaluated()) add(reason_not_evaluated(channel, record), channel.name, channel.column);
  constexpr std::size_t kMostNamed = 300;
  std::string text;
  for (const Group& group : groups) {
    std::vector<std::string> names = runs_of(group.columns);
    const std::size_t more = names.size() - std::min(names.size(), kMostNamed);
    names.resize(names.size() - more);
    text += fmt::format("{}{}: {}", text.empty() ? "" : "; ", group.reason, fmt::join(names, ", "));
    if (more != 0) text += fmt::format(" and {} more", count_text(more));
  }
  return text;
}

/// "TC1 17.967 (6.00 h at 590 °C), TC2 17.951 (5.78 h)"; empty where no hold names a temperature.
std::string tempering_text(const Verdicts& verdicts, const PrintedNumbers& say) {
  std::string text;
  for (const ChannelTempering& one : verdicts.tempering) {
    if (!one.parameter || !one.hours || !one.hours_at_c) continue;
    // Time that is not known can only add.
    const auto& heat = verdicts.heat.tempering;
    const auto whole = std::find_if(heat.begin(), heat.end(), [&](const ChannelHeat& other) {
      return other.channel == one.channel && other.weld == one.weld;
    });
    const bool least = whole != heat.end() && whole->records.back().not_known_s > 1e-3;
    text += fmt::format(
        "{}{} {}{} ({} h{})", text.empty() ? "" : ", ", one.channel, least ? "≥ " : "",
        decimal_text(*one.parameter, 3), decimal_text(*one.hours, 2),
        text.empty() ? " at " + say.limit(Temperature::of_celsius(*one.hours_at_c)) : std::string{});
  }
  return text;
}

}  // namespace

std::vector<LabelledText> record_facts(const ReportContext& context, bool brief) {
  const Record& record = *context.analysis.record;
  const PrintedNumbers& say = context.say;
  std::vector<LabelledText> facts;
  facts.push_back({"Log", record.file});
  if (record.rows() == 0) return facts;
  if (brief) {
    facts.push_back(certificate_words::recorded(say.span(record.times_s.front(), record.times_s.back()),
                                                say.duration(record.duration_s()), count_text(record.rows()),
                                                say.duration(record.interval_s)));
  } else {
    facts.push_back({"First reading", say.moment(record.times_s.front())});
    facts.push_back({"Last reading", say.moment(record.times_s.back())});
    facts.push_back({"Duration", say.duration(record.duration_s())});
    facts.push_back(
        {"Readings", fmt::format("{} at {}", count_text(record.rows()), say.duration(record.interval_s))});
  }
  const bool part = record.first_row > 0 || record.end_row < record.rows();
  if (part && record.end_row > record.first_row)
    facts.push_back({"Evaluated time range", say.span(record.begin_s(), record.end_s())});
  std::vector<std::string> evaluated;
  for (const Channel& channel : record.channels)
    if (channel.evaluated()) evaluated.push_back(channel.name);
  const std::string left_out = columns_left_out(record);
  const bool all = left_out.empty();
  facts.push_back({"Thermocouples", all ? fmt::format("{}, all evaluated", evaluated.size())
                                    : evaluated.size() == record.channels.size()
                                        ? fmt::format("{} evaluated", evaluated.size())
                                        : fmt::format("{} of {} evaluated: {}", evaluated.size(),
                                                      record.channels.size(), listing(evaluated))});
  if (!all) facts.push_back({"Columns not evaluated", left_out});
  if (context.analysis.verdicts && !brief)
    if (const std::string text = tempering_text(*context.analysis.verdicts, say); !text.empty())
      facts.push_back({fmt::format("Tempering parameter (Hollomon–Jaffe, C = {}), whole record",
                                   short_text(context.analysis.verdicts->heat.constant, 3)),
                       text});
  return facts;
}

std::vector<LabelledText> reading_facts(const ReportContext& context) {
  const Reading& reading = context.analysis.record->reading;
  std::vector<LabelledText> facts;
  const auto add = [&facts](const char* name, const Setting& setting) {
    if (!setting.value.empty()) facts.push_back(setting_fact(name, setting));
  };
  add("Encoding", reading.encoding);
  // A tab or a blank by itself would look like nothing.
  Setting delimiter = reading.delimiter;
  if (delimiter.value == "\t") delimiter.value = "tab";
  if (delimiter.value == " ") delimiter.value = "spaces";
  add("Delimiter", with_sign_named(delimiter));
  add("Decimal sign", with_sign_named(reading.decimal));
  add("Date order", reading.dates);
  add("Time", reading.time);
  add("Time column", reading.time_column);
  facts.push_back({"Header", (reading.header_line == 0 ? std::string{"none"}
                                                       : fmt::format("line {}", reading.header_line)) +
                                 (reading.header_line_by == Setting::By::given ? " (given)" : " (found)")});
  if (!reading.changed_by_hand.empty()) facts.push_back({"Manual changes", changes_text(reading)});
  return facts;
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
    row.unit = unit_text(channel.unit);
    row.role = role_text(channel, record);
    row.weld = weld_text(channel.weld);
    if (channel.position_m) row.place = short_text(*channel.position_m, 3) + " m";
    if (channel.angle_deg)
      row.place += (row.place.empty() ? "" : ", ") + short_text(*channel.angle_deg, 1) + "°";
    if (job != nullptr && channel.entry)
      row.instrument = instrument_text(job->thermocouples[*channel.entry], context.say);
    row.samples = count_text(channel.readings.rows() - channel.readings.missing());
    row.missing = count_text(channel.readings.missing());
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
    if (notice.count != 0) row.count = count_text(notice.count);
    row.channel = notice.channel.value_or(std::string{});
    row.text = notice.text;
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<std::string> other_column_texts(const Record& record) {
  std::vector<std::string> texts;
  for (const OtherColumn& column : record.other_columns)
    texts.push_back(fmt::format("column {}, {}: {}", column.column, column.name, column.why));
  return texts;
}

}  // namespace soakwright
