#include "tests/core/record/record_text.h"

#include <array>
#include <filesystem>

#include "core/units/number_text.h"

namespace soakwright {
namespace {

constexpr std::size_t kShort = 12;

std::string setting_text(const Setting& setting) {
  std::string text = setting.value == "\t" ? "tab" : setting.value == " " ? "blanks" : setting.value.empty() ? "-" : setting.value;
  if (setting.by == Setting::By::given) text += " (given)";
  return text;
}

std::string_view unit_text(ChannelUnit unit) {
  constexpr std::array<std::string_view, 4> kUnits{"C", "F", "K", "mV"};
  return kUnits[static_cast<std::size_t>(unit)];
}

std::string_view duty_text(Duty duty) {
  constexpr std::array<std::string_view, 6> kDuties{"control", "monitor", "spare", "air", "set point", "off"};
  return kDuties[static_cast<std::size_t>(duty)];
}

std::string value_text(const std::optional<double>& value) { return value ? number_text(*value) : "-"; }

void add_row(const Record& record, std::size_t row, std::string& out) {
  out += "row " + number_text(record.times_s[row]) + ":";
  for (const Channel& channel : record.channels) {
    out += ' ';
    out += value_text(channel.readings.celsius(row));
  }
  out += '\n';
}

}  // namespace

std::string text_of(const Record& record) {
  std::string out;
  const auto line = [&out](std::initializer_list<std::string_view> parts) {
    for (const std::string_view part : parts) out += part;
    out += '\n';
  };
  line({"encoding ", setting_text(record.reading.encoding)});
  line({"delimiter ", setting_text(record.reading.delimiter)});
  line({"decimal ", setting_text(record.reading.decimal)});
  line({"dates ", setting_text(record.reading.dates)});
  line({"time ", setting_text(record.reading.time)});
  line({"header line ", std::to_string(record.reading.header_line)});
  for (const std::string& text : record.reading.heading) line({"heading ", text});
  line({"rows ", std::to_string(record.rows())});
  line({"start ", record.start ? record.start->iso() : "-"});
  line({"duration ", number_text(record.duration_s()), " s"});
  line({"interval ", number_text(record.interval_s), " s"});
  if (record.first_row != 0 || record.end_row != record.rows())
    line({"judged rows ", std::to_string(record.first_row), " to ", std::to_string(record.end_row - 1)});
  for (const std::size_t row : record.breaks) line({"break after row ", std::to_string(row)});
  for (const Channel& channel : record.channels) {
    std::string text = "channel " + std::to_string(channel.column) + " '" + channel.name + "' in ";
    text.append(unit_text(channel.unit)).append(", ").append(duty_text(channel.duty));
    if (channel.zone == Zone::edge) text += ", edge";
    if (channel.weld) text.append(", weld ").append(*channel.weld);
    if (channel.spare_for) text.append(", spare for ").append(record.channels[*channel.spare_for].name);
    text.append(", missing ").append(std::to_string(channel.readings.missing()));
    text.append(", ").append(value_text(channel.min_c)).append(" to ").append(value_text(channel.max_c));
    line({text});
  }
  for (const OtherColumn& other : record.other_columns)
    line({"other column ", std::to_string(other.column), " '", other.name, "': ", other.why});
  for (std::size_t row = 0; row < record.rows(); ++row)
    if (record.rows() <= kShort || row < 2 || row + 2 >= record.rows()) add_row(record, row, out);
  for (const Aside& aside : record.asides)
    line({"aside ", record.channels[aside.channel].name, " ", number_text(aside.from_s), " to ", number_text(aside.to_s), ": ",
          aside.reason});
  for (const Period& period : record.periods)
    line({"period ", period.name, " ", number_text(period.from_s), " to ", number_text(period.to_s)});
  for (const Remark& remark : record.remarks) line({"remark ", number_text(remark.at_s), ": ", remark.text});
  for (const Notice& notice : record.notices)
    line({"notice ", notice.code, ", line ", std::to_string(notice.line), ", count ", std::to_string(notice.count), ", ",
          notice.channel ? *notice.channel : "-", ": ", notice.text});
  return out;
}

std::string text_of(const Problems& problems) {
  std::string out;
  for (const Problem& problem : problems) {
    Problem bare = problem;
    bare.file = std::filesystem::path{problem.file}.filename().string();
    out += "error " + std::to_string(static_cast<int>(problem.kind)) + " " + bare.text() + "\n";
  }
  return out;
}

}  // namespace soakwright
