// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/statement_words.h"

#include <algorithm>
#include <cctype>

#include <fmt/format.h>

#include "core/wording/column_words.h"

namespace soakwright {
namespace {

/// The name of a thermocouple that is not known.
constexpr std::string_view kSomeThermocouple = "a thermocouple";
constexpr int kStampDigits = 3;

class PrintedArgument {
 public:
  explicit PrintedArgument(const PrintedNumbers& say) : say_(say) {}
  std::string operator()(const std::string& name) const {
    return name.empty() ? std::string{kSomeThermocouple} : name;
  }
  std::string operator()(const Quantity& quantity) const { return say_.text(quantity); }
  std::string operator()(const Specified& specified) const { return say_.limit(specified.value); }
  std::string operator()(const SpecifiedRange& range) const { return say_.range(range.low, range.high); }
  std::string operator()(const AtMoment& moment) const { return say_.moment(moment.at_s); }
  std::string operator()(const FromTo& time) const { return say_.span(time.from_s, time.to_s); }
  std::string operator()(const CivilDate& date) const { return date_text(date); }
  std::string operator()(const std::vector<FromTo>& times) const {
    std::vector<std::string> texts;
    for (const FromTo& time : times) texts.push_back((*this)(time));
    return listing(texts);
  }
  std::string operator()(const std::vector<std::string>& names) const { return listing(names); }
  std::string operator()(const AtStamp& moment) const { return say_.stamp(moment.at_s); }
  std::string operator()(const BetweenStamps& time) const {
    return printed_duration(time.seconds, kStampDigits);
  }
  std::string operator()(const AsWritten& written) const { return written.text; }
  std::string operator()(const FileLine& line) const { return fmt::format("{}", line.number); }
  std::string operator()(const std::vector<CountedText>& texts) const {
    std::string all;
    for (const CountedText& one : texts)
      all += fmt::format("{}{} × '{}'", all.empty() ? "" : ", ", one.count, one.text);
    return all;
  }
  std::string operator()(ColumnContent content) const { return content_text(content); }
  std::string operator()(const OneOfContent& one) const { return one_of_text(one.content); }

 private:
  const PrintedNumbers& say_;
};

/// `noun` is "reading|readings": the one for the count.
std::string_view noun_for(const Argument& argument, std::string_view nouns) {
  const auto* quantity = std::get_if<Quantity>(&argument);
  const auto* count = quantity == nullptr ? nullptr : std::get_if<Count>(quantity);
  const auto bar = nouns.find('|');
  return count != nullptr && count->value() == 1 ? nouns.substr(0, bar) : nouns.substr(bar + 1);
}

std::size_t index_at(std::string_view pattern, std::size_t brace) {
  return static_cast<std::size_t>(pattern[brace + 1] - '0');
}

/// `pattern` without the brackets around an argument, and without what is in them where it is not given.
/// Other brackets, as of "[import]", stay.
std::string without_unused(std::string_view pattern, std::size_t arguments) {
  for (auto open = pattern.find('['); open != std::string_view::npos; open = pattern.find('[', open + 1)) {
    const auto close = pattern.find(']', open);
    const std::string_view part = pattern.substr(open + 1, close - open - 1);
    const auto brace = part.find('{');
    if (brace == std::string_view::npos) continue;
    std::string text{pattern.substr(0, open)};
    if (index_at(part, brace) < arguments) text += part;
    return text.append(pattern.substr(close + 1));
  }
  return std::string{pattern};
}

void capitalise(std::string& text) {
  if (!text.empty()) text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
}

}  // namespace

std::size_t arguments_of(Sentence sentence) {
  std::size_t most = 0;
  const std::string_view pattern = pattern_of(sentence);
  for (std::size_t at = pattern.find('{'); at != std::string_view::npos; at = pattern.find('{', at + 1))
    most = std::max(most, index_at(pattern, at) + 1);
  return most;
}

std::string words(const Statement& statement, const PrintedNumbers& say) {
  const PrintedArgument printed_argument{say};
  std::string_view pattern = pattern_of(statement.sentence);
  const bool starts_with_name = pattern.starts_with("{0}") && !statement.arguments.empty() &&
                                std::holds_alternative<std::string>(statement.arguments.front()) &&
                                !std::get<std::string>(statement.arguments.front()).empty();
  const std::string whole = without_unused(pattern, statement.arguments.size());
  pattern = whole;
  std::string text;
  while (!pattern.empty()) {
    const auto open = pattern.find('{');
    text += pattern.substr(0, open);
    if (open == std::string_view::npos) break;
    const auto close = pattern.find('}', open);
    const std::string_view place = pattern.substr(open + 1, close - open - 1);
    const auto index = static_cast<std::size_t>(place.front() - '0');
    if (index < statement.arguments.size()) {
      const Argument& argument = statement.arguments[index];
      text += std::visit(printed_argument, argument);
      if (place.size() > 2) text.append(1, ' ').append(noun_for(argument, place.substr(2)));
    }
    pattern.remove_prefix(close + 1);
  }
  // A thermocouple keeps the name that the log gives it.
  if (!starts_with_name) capitalise(text);
  return text;
}

std::string words(const Statements& statements, const PrintedNumbers& say) {
  std::string text;
  for (const Statement& statement : statements) {
    if (!text.empty()) text += ' ';
    text += words(statement, say);
  }
  return text;
}

}  // namespace soakwright
