// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/toml/toml_problems.h"

#include <cstdint>

#include <fmt/format.h>

#include "core/procedure/toml/nearest_word.h"
#include "core/units/number_text.h"

namespace soakwright {
namespace {

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) {
    if (!out.empty()) out += ", ";
    out += word;
  }
  return out;
}

std::string words_of(TomlForeign foreign) {
  switch (foreign) {
    case TomlForeign::date_out_of_calendar:
      return "a date outside the years 1678 to 2261";
    case TomlForeign::time_without_date:
      return "a time of day without a date";
    case TomlForeign::moment_with_offset:
      return "a moment with an offset from UTC";
  }
  return {};
}

std::string words_of(const TableName& table) {
  switch (table.kind) {
    case TableName::Kind::written:
      return table.written;
    case TableName::Kind::procedure:
      return "the procedure";
    case TableName::Kind::job:
      return "the job";
    case TableName::Kind::review:
      return "the review";
    case TableName::Kind::rule:
      return "the rule";
    case TableName::Kind::stage:
      return "this stage";
    case TableName::Kind::heat_stage:
      return "this heat stage";
    case TableName::Kind::hold_stage:
      return "this hold stage";
    case TableName::Kind::cool_stage:
      return "this cool stage";
    case TableName::Kind::maintain_stage:
      return "this maintain stage";
    case TableName::Kind::given_hold:
      return "this given hold";
    case TableName::Kind::composition:
      return "the composition";
  }
  return {};
}

std::string_view word_of(TomlFileKind kind) { return kFileKindWords.of(kind); }

}  // namespace

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
    std::string operator()(TomlForeign foreign) const { return words_of(foreign); }
    std::string operator()(const TomlArray& list) const {
      return list.values.empty() ? "an empty list" : "a list";
    }
    std::string operator()(const TomlTable&) const { return "a table"; }
  };
  return std::visit(Words{}, value.value);
}

std::string suggestion(std::string_view found, const std::vector<std::string>& known, bool even_if_far) {
  const auto nearest = nearest_word(found, known);
  if (nearest && nearest->is_near) return fmt::format("did you mean `{}`?", nearest->word);
  if (!nearest || !even_if_far) return fmt::format("known here: {}", joined(known));
  return fmt::format("did you mean `{}`? known here: {}", nearest->word, joined(known));
}

namespace toml_problems {

Problem not_toml(const std::string& file, std::size_t line, std::string_view reason) {
  const char* help = "a line is `key = value` with text in double quotes, and the file is UTF-8";
  if (reason.find("escape") != std::string_view::npos)
    help =
        R"(a backslash in double quotes begins an escape; write a path with / or in single quotes: 'C:\data\log.csv')";
  return {ProblemKind::bad_input, file, line, fmt::format("this is not TOML: {}", reason), help};
}

ProblemWords no_version(TomlFileKind needed, const TomlValue& found) {
  return {fmt::format("`soakwright` is {}", described(found)),
          fmt::format("write `soakwright = \"{} 1\"`", word_of(needed))};
}

ProblemWords file_of_another_kind(TomlFileKind needed, TomlFileKind found, const std::string& version) {
  return {fmt::format("`soakwright` is \"{}\": this file is a {}, not a {}", shown(version), word_of(found),
                      word_of(needed)),
          fmt::format("name it as the {0}; a {1} is needed here, which begins with `soakwright = \"{1} 1\"`",
                      word_of(found), word_of(needed))};
}

ProblemWords version_of_another_program(TomlFileKind needed, const TomlValue& found) {
  return {fmt::format("`soakwright` is {}", described(found)),
          fmt::format("this program reads \"{} 1\"", word_of(needed))};
}

ProblemWords unknown_kind_of_file(TomlFileKind needed, const TomlValue& found) {
  return {fmt::format("`soakwright` is {}", described(found)),
          fmt::format("a {0} is needed here: write `soakwright = \"{0} 1\"`", word_of(needed))};
}

ProblemWords missing_key(std::string_view key, const TableName& table) {
  return {fmt::format("`{}` is missing in {}", key, words_of(table)), fmt::format("add `{} = …`", key)};
}

ProblemWords unknown_key(std::string_view key, const TableName& table,
                         const std::vector<std::string>& known) {
  return {fmt::format("`{}` is not a key of {}", shown(key), words_of(table)), suggestion(key, known, true)};
}

ProblemWords no_limit(const TableName& table, const std::vector<std::string>& limits) {
  return {fmt::format("{} sets no limit", words_of(table)),
          fmt::format("give at least one of {}", joined(limits))};
}

ProblemWords not_a_table(std::string_view key, const TomlValue& found) {
  return {fmt::format("`{}` is {}", key, described(found)), fmt::format("write it as [{}]", key)};
}

ProblemWords not_a_list_of_tables(std::string_view key, const TomlValue& found) {
  return {fmt::format("`{}` is {}", key, described(found)), fmt::format("write it as [[{}]]", key)};
}

ProblemWords not_below(const KeyAndValue& low, const KeyAndValue& high, const TableName& table) {
  return {fmt::format("`{}` {} of {} is not below `{}` {}", low.key, described(low.value), words_of(table),
                      high.key, described(high.value)),
          "have they changed places?"};
}

ProblemWords above(const KeyAndValue& low, const KeyAndValue& high, const TableName& table) {
  return {fmt::format("`{}` {} of {} is not at most `{}` {}", low.key, described(low.value), words_of(table),
                      high.key, described(high.value)),
          "have they changed places?"};
}

}  // namespace toml_problems
}  // namespace soakwright
