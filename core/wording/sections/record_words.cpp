// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/sections/record_words.h"

#include <algorithm>
#include <cctype>
#include <optional>
#include <string_view>
#include <utility>

#include <fmt/format.h>

#include "core/procedure/job/job_words.h"
#include "core/units/printed_quantity.h"
#include "core/wording/column_words.h"

namespace soakwright::record_words {
namespace {

std::string type_text(ThermocoupleType type) {
  return std::string{"type "}.append(kThermocoupleTypeWords.of(type));
}

std::string tolerance_text(const Tolerance& tolerance, const PrintedNumbers& say) {
  if (tolerance.kind == Tolerance::Kind::fixed) return "±" + say.limit(tolerance.fixed);
  return std::string{kToleranceWords.of(tolerance.kind)};
}

template <typename T>
const char* chosen_by(const Setting<T>& setting) {
  return setting.given() ? " (given)" : " (found)";
}

LabelledText setting_fact(const char* name, const Setting<std::string>& setting) {
  return {name, setting.value + chosen_by(setting)};
}

/// A sign by itself is overlooked: "comma (,)". Any other value is said as it is.
Setting<std::string> with_sign_named(Setting<std::string> setting) {
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

}  // namespace

std::string unit(ChannelUnit unit) {
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

std::string role(const Channel& channel, const Record& record) {
  std::string text{kRoleWords.of(channel.role)};
  const bool on_work = channel.role == ThermocoupleRole::control || channel.role == ThermocoupleRole::monitor;
  if (on_work && channel.zone == Zone::edge) text += ", edge";
  if (channel.role == ThermocoupleRole::spare && channel.spare_for)
    text += " for " + record.channels[*channel.spare_for].name;
  return text;
}

std::string instrument(const ThermocoupleEntry& entry, const PrintedNumbers& say) {
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

std::string why_not_evaluated(const Channel& channel, const Record& record) {
  if (channel.role == ThermocoupleRole::off)
    return channel.entry ? "off in the job" : "not listed in the job";
  return channel.zone == Zone::edge ? "edge zone" : role(channel, record);
}

LabelledText thermocouples(const Record& record, bool all) {
  std::vector<std::string> evaluated;
  for (const Channel& channel : record.channels)
    if (channel.evaluated()) evaluated.push_back(channel.name);
  const std::size_t channels = record.channels.size();
  std::string text;
  if (all)
    text = fmt::format("{}, all evaluated", evaluated.size());
  else if (evaluated.size() == channels)
    text = fmt::format("{} evaluated", channels);
  else
    text = fmt::format("{} of {} evaluated: {}", evaluated.size(), channels, listing(evaluated));
  return {"Thermocouples", std::move(text)};
}

LabelledText columns_not_evaluated(const std::string& list) { return {"Columns not evaluated", list}; }

std::string and_more(std::size_t count) {
  return fmt::format(" and {} more", count_text(static_cast<std::int64_t>(count)));
}

std::string other_column(const OtherColumn& column) {
  return fmt::format("column {}, {}: {}", column.column, column.name, reason_text(column.why));
}

LabelledText log(const std::string& file) { return {"Log", file}; }

std::vector<LabelledText> extent(const Record& record, const PrintedNumbers& say) {
  return {{"First reading", say.moment(record.times_s.front())},
          {"Last reading", say.moment(record.times_s.back())},
          {"Duration", say.duration(record.duration_s())},
          {"Readings", fmt::format("{} at {}", count_text(static_cast<std::int64_t>(record.rows())),
                                   say.duration(record.interval_s))}};
}

LabelledText time_range(const std::string& span) { return {"Evaluated time range", span}; }

LabelledText tempering(const Verdicts& verdicts, const PrintedNumbers& say) {
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
  return {fmt::format("Tempering parameter (Hollomon–Jaffe, C = {}), whole record",
                      short_text(verdicts.heat.constant, 3)),
          text};
}

std::vector<LabelledText> reading(const Reading& reading) {
  std::vector<LabelledText> facts;
  const auto add = [&facts](const char* name, const Setting<std::string>& setting) {
    if (!setting.value.empty()) facts.push_back(setting_fact(name, setting));
  };
  add("Encoding", reading.encoding);
  // A tab or a blank by itself would look like nothing.
  Setting<std::string> delimiter = reading.delimiter;
  if (delimiter.value == "\t") delimiter.value = "tab";
  if (delimiter.value == " ") delimiter.value = "spaces";
  add("Delimiter", with_sign_named(delimiter));
  add("Decimal sign", with_sign_named(reading.decimal));
  add("Date order", reading.dates);
  add("Time", reading.time);
  add("Time column", reading.time_column);
  facts.push_back(
      {"Header", (reading.header_line.value == 0 ? std::string{"none"}
                                                 : fmt::format("line {}", reading.header_line.value)) +
                     chosen_by(reading.header_line)});
  if (!reading.changed_by_hand.empty()) facts.push_back({"Manual changes", changes_text(reading)});
  return facts;
}

}  // namespace soakwright::record_words
