#include "core/procedure/toml_tree.h"

#include <algorithm>

// Without exceptions a parse gives its error as a value, and none can cross the core's border.
#define TOML_EXCEPTIONS 0
#include <toml++/toml.h>

#include "core/units/number_text.h"

namespace soakwright {
namespace {

constexpr const char* kOutOfCalendar = "a date outside the years 1678 to 2261";

CivilDate civil(const toml::date& date) { return {date.year, date.month, date.day}; }

TomlTable converted(const toml::table& table);

TomlValue converted(const toml::node& node) {
  TomlValue out;
  out.line = node.source().begin.line;
  node.visit([&out](const auto& found) {
    using Node = std::decay_t<decltype(found)>;
    if constexpr (toml::is_table<Node>) {
      out.value = converted(found);
    } else if constexpr (toml::is_array<Node>) {
      TomlArray list;
      for (const toml::node& item : found) list.values.push_back(converted(item));
      out.value = std::move(list);
    } else if constexpr (toml::is_date<Node>) {
      if (date_exists(civil(found.get())))
        out.value = civil(found.get());
      else
        out.value = TomlForeign{kOutOfCalendar};
    } else if constexpr (toml::is_time<Node>) {
      out.value = TomlForeign{"a time of day without a date"};
    } else if constexpr (toml::is_date_time<Node>) {
      const toml::date_time& moment = found.get();
      const auto local = LocalTime::of(civil(moment.date), moment.time.hour, moment.time.minute,
                                       moment.time.second, moment.time.nanosecond);
      if (moment.offset)
        out.value = TomlForeign{"a moment with an offset from UTC"};
      else if (!local)
        out.value = TomlForeign{kOutOfCalendar};
      else
        out.value = *local;
    } else {
      out.value = found.get();
    }
  });
  return out;
}

TomlTable converted(const toml::table& table) {
  TomlTable out;
  for (const auto& [key, node] : table)
    out.entries.push_back({std::string{key.str()}, key.source().begin.line, converted(node)});
  return out;
}

}  // namespace

Result<TomlTable> parse_toml(std::string_view text, const std::string& file) {
  const toml::parse_result result = toml::parse(text);
  if (result) return converted(result.table());
  const toml::parse_error& error = result.error();
  return Problem{ProblemKind::bad_input, file, error.source().begin.line,
                 std::string{"this is not TOML: "}.append(error.description()),
                 "a line is `key = value` with text in double quotes, and the file is UTF-8"};
}

std::string shown(std::string_view text) {
  constexpr std::size_t kEnough = 60;
  // Cut before a whole character: a byte 10xxxxxx goes on with the one before it.
  std::size_t end = std::min(text.size(), kEnough);
  while (end > 0 && end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  std::string out{text.substr(0, end)};
  for (char& letter : out)
    if (static_cast<unsigned char>(letter) < 0x20U || letter == 0x7F) letter = ' ';
  if (end < text.size()) out += "…";
  return out;
}

std::string described(const TomlValue& value) {
  struct Words {
    std::string operator()(const std::string& text) const {
      return std::string{"\""}.append(shown(text)).append("\"");
    }
    std::string operator()(std::int64_t number) const { return std::to_string(number); }
    std::string operator()(double number) const { return number_text(number); }
    std::string operator()(bool yes) const { return yes ? "true" : "false"; }
    std::string operator()(CivilDate date) const {
      return LocalTime::of(date, 0, 0, 0).value_or(LocalTime{}).iso().substr(0, 10);
    }
    std::string operator()(LocalTime time) const { return time.iso(); }
    std::string operator()(const TomlForeign& foreign) const { return foreign.what; }
    std::string operator()(const TomlArray& list) const {
      return list.values.empty() ? "an empty list" : "a list";
    }
    std::string operator()(const TomlTable&) const { return "a table"; }
  };
  return std::visit(Words{}, value.value);
}

}  // namespace soakwright
