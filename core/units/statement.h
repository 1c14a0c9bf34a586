// SPDX-License-Identifier: GPL-3.0-or-later
// A fact that is to be told: which sentence, and the values that belong in it.
//
// What evaluates, explains or suspects hands on statements; core/wording makes them into text, in the unit of
// the report. A statement is one whole sentence: nothing is glued together from clauses, so that each can be
// said in another language. The words of each sentence, with the meaning of its arguments, are in
// core/wording/patterns.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "core/units/column_content.h"
#include "core/units/local_time.h"
#include "core/units/quantity.h"
#include "core/units/sentence.h"

namespace soakwright {

/// A moment of the record, in seconds from its first sample.
struct AtMoment {
  double at_s = 0.0;
  bool operator==(const AtMoment&) const = default;
};

/// A time of the record.
struct FromTo {
  double from_s = 0.0, to_s = 0.0;
  bool operator==(const FromTo&) const = default;
};

/// A value that the procedure or the job gives: printed as specified, not with the digits of a reading.
struct Specified {
  Quantity value;
  bool operator==(const Specified&) const = default;
};

/// A temperature range as specified; no `high`, no upper limit.
struct SpecifiedRange {
  Temperature low;
  std::optional<Temperature> high;
  bool operator==(const SpecifiedRange&) const = default;
};

/// A moment of the record as its stamps have it, and a time between two of them: all their digits.
struct AtStamp {
  double at_s = 0.0;
  bool operator==(const AtStamp&) const = default;
};
struct BetweenStamps {
  double seconds = 0.0;
  bool operator==(const BetweenStamps&) const = default;
};

/// What a file has, to the letter: a cell, a header, a setting; may be empty.
struct AsWritten {
  std::string text;
  bool operator==(const AsWritten&) const = default;
};

/// A line of a file, from 1: no count, and not grouped.
struct FileLine {
  std::size_t number = 0;
  bool operator==(const FileLine&) const = default;
};

/// A text of a file, and how many cells hold it.
struct CountedText {
  std::size_t count = 0;
  std::string text;
  bool operator==(const CountedText&) const = default;
};

/// "a set point", where a ColumnContent alone is "set point".
struct OneOfContent {
  ColumnContent content = ColumnContent::none;
  bool operator==(const OneOfContent&) const = default;
};

/// Names are as the job or the log gives them, or an id of the result.
using Argument = std::variant<std::string, Quantity, Specified, SpecifiedRange, AtMoment, FromTo, CivilDate,
                              std::vector<FromTo>, std::vector<std::string>, AtStamp, BetweenStamps,
                              AsWritten, FileLine, std::vector<CountedText>, ColumnContent, OneOfContent>;

struct Statement {
  Sentence sentence = Sentence::none;
  std::vector<Argument> arguments;
  bool operator==(const Statement&) const = default;
};

/// How many, as an argument.
inline Count how_many(std::size_t count) { return Count::of(static_cast<std::int64_t>(count)); }

/// One after the other.
using Statements = std::vector<Statement>;

/// A statement of `sentence` with its arguments in order; the six kinds of quantity go in as they are.
template <typename... Arguments>
Statement state(Sentence sentence, Arguments&&... arguments) {
  [[maybe_unused]] const auto argument = [](auto&& value) -> Argument {
    if constexpr (std::is_constructible_v<Quantity, decltype(value)>)
      return Quantity{std::forward<decltype(value)>(value)};
    else
      return Argument{std::forward<decltype(value)>(value)};
  };
  return {sentence, {argument(std::forward<Arguments>(arguments))...}};
}

}  // namespace soakwright
