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

/// The parser counts lines and characters; edits want bytes.
class Places {
 public:
  explicit Places(std::string_view text) : text_(text) {
    for (std::size_t at = 0; at < text.size(); ++at)
      if (text[at] == '\n') starts_.push_back(at + 1);
    // A mark at the front is no character of the first line.
    if (text.substr(0, 3) == "\xEF\xBB\xBF") starts_.front() = 3;
  }
  [[nodiscard]] TomlPlace of(const toml::source_region& region) const {
    return {at(region.begin), at(region.end)};
  }
  [[nodiscard]] std::string_view text() const { return text_; }

 private:
  [[nodiscard]] std::size_t at(const toml::source_position& position) const {
    if (position.line == 0 || position.line > starts_.size()) return text_.size();
    std::size_t at = starts_[position.line - 1];
    for (toml::source_index column = 1; column < position.column && at < text_.size(); ++column) {
      ++at;
      while (at < text_.size() && (static_cast<unsigned char>(text_[at]) & 0xC0U) == 0x80U) ++at;
    }
    return at;
  }

  std::string_view text_;
  std::vector<std::size_t> starts_{0};
};

TomlTable converted(const toml::table& table, const Places& places);

TomlValue converted(const toml::node& node, const Places& places) {
  TomlValue out;
  out.line = node.source().begin.line;
  out.place = places.of(node.source());
  node.visit([&out, &places](const auto& found) {
    using Node = std::decay_t<decltype(found)>;
    if constexpr (toml::is_table<Node>) {
      out.value = converted(found, places);
    } else if constexpr (toml::is_array<Node>) {
      TomlArray list;
      for (const toml::node& item : found) list.values.push_back(converted(item, places));
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

TomlTable converted(const toml::table& table, const Places& places) {
  TomlTable out;
  const TomlPlace place = places.of(table.source());
  if (table.is_inline())
    out.form = TomlTableForm::braces;
  else if (place.begin < places.text().size() && places.text()[place.begin] != '[')
    out.form = TomlTableForm::dotted;
  for (const auto& [key, node] : table)
    out.entries.push_back(
        {std::string{key.str()}, key.source().begin.line, places.of(key.source()), converted(node, places)});
  return out;
}

}  // namespace

Result<TomlTable> parse_toml(std::string_view text, const std::string& file) {
  const toml::parse_result result = toml::parse(text);
  if (result) return converted(result.table(), Places{text});
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
