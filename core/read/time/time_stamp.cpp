// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/time/time_stamp.h"

#include <array>

#include "core/units/local_time.h"

namespace soakwright {
namespace {

constexpr std::int64_t kNanosecondsPerMinute = 60 * kNanosecondsPerSecond;
constexpr std::int64_t kNanosecondsPerHour = 60 * kNanosecondsPerMinute;

/// What is left of a text to read.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}
  [[nodiscard]] bool at_end() const { return at_ == text_.size(); }
  [[nodiscard]] std::size_t at() const { return at_; }
  void back_to(std::size_t at) { at_ = at; }
  [[nodiscard]] char peek() const { return at_end() ? '\0' : text_[at_]; }
  [[nodiscard]] std::string_view rest() const { return text_.substr(at_); }
  bool take(char wanted) {
    if (peek() != wanted || at_end()) return false;
    ++at_;
    return true;
  }
  void skip_spaces() {
    while (peek() == ' ' || peek() == '\t') ++at_;
  }
  /// A number of at most `most` digits; how many there were.
  int take_number(int most, int& value) {
    int digits = 0;
    value = 0;
    while (digits < most && peek() >= '0' && peek() <= '9') {
      value = value * 10 + (peek() - '0');
      ++at_;
      ++digits;
    }
    return digits;
  }
  /// Letters, in lower case, into `word`; how many there were.
  std::size_t take_word(std::array<char, 12>& word) {
    std::size_t letters = 0;
    while ((peek() >= 'a' && peek() <= 'z') || (peek() >= 'A' && peek() <= 'Z')) {
      if (letters < word.size()) word[letters] = static_cast<char>(peek() | 0x20);
      ++letters;
      ++at_;
    }
    return letters;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

/// The place of `word` among `names`, from 1, if it is one of them or its first three or four letters.
template <std::size_t N>
int place_among(const std::array<std::string_view, N>& names, const std::array<char, 12>& word,
                std::size_t letters) {
  if (letters < 3 || letters > word.size()) return 0;
  const std::string_view text{word.data(), letters};
  for (std::size_t i = 0; i < names.size(); ++i) {
    const bool short_form = letters == 3 || (letters == 4 && text == "sept");
    if (names[i] == text || (short_form && names[i].substr(0, letters) == text))
      return static_cast<int>(i) + 1;
  }
  return 0;
}

int take_month(Scanner& in) {
  static constexpr std::array<std::string_view, 12> kMonths{"january",   "february", "march",    "april",
                                                            "may",       "june",     "july",     "august",
                                                            "september", "october",  "november", "december"};
  const std::size_t start = in.at();
  std::array<char, 12> word{};
  const int month = place_among(kMonths, word, in.take_word(word));
  if (month == 0) {
    in.back_to(start);
    return 0;
  }
  in.take('.');
  return month;
}

void skip_weekday(Scanner& in) {
  static constexpr std::array<std::string_view, 7> kDays{"monday", "tuesday",  "wednesday", "thursday",
                                                         "friday", "saturday", "sunday"};
  const std::size_t start = in.at();
  std::array<char, 12> word{};
  if (place_among(kDays, word, in.take_word(word)) == 0) return in.back_to(start);
  in.take('.');
  in.take(',');
  in.skip_spaces();
}

/// One of the marks between the numbers of a date; '\0' where there is none. Spaces around it do not count.
char take_separator(Scanner& in) {
  in.skip_spaces();
  for (const char mark : {'/', '.', '-', ','})
    if (in.take(mark)) {
      in.skip_spaces();
      return mark;
    }
  return '\0';
}

/// 2 Apr 2031, 02-Apr-31, Apr 2, 2031, 2031-Apr-02.
bool parse_named_date(Scanner& in, DateFields& date) {
  if (int month = take_month(in); month != 0) {
    date.month_place = 0;
    date.first = month;
    take_separator(in);
    if (in.take_number(2, date.second) == 0) return false;
    take_separator(in);
    date.third_digits = in.take_number(4, date.third);
    return date.third_digits == 4 || date.third_digits == 2;
  }
  date.first_digits = in.take_number(4, date.first);
  if (date.first_digits == 0) return false;
  take_separator(in);
  date.second = take_month(in);
  if (date.second == 0) return false;
  date.month_place = 1;
  take_separator(in);
  date.third_digits = in.take_number(4, date.third);
  return date.third_digits != 0;
}

bool parse_numeric_date(Scanner& in, DateFields& date) {
  const std::size_t start = in.at();
  date.first_digits = in.take_number(8, date.first);
  if (date.first_digits == 8) {  // ISO basic
    const int whole = date.first;
    date = {whole / 10'000, whole / 100 % 100, whole % 100, 4, 2, -1};
    return true;
  }
  if (date.first_digits == 0 || date.first_digits == 3 || date.first_digits > 4) return false;
  const char mark = in.peek();
  if (mark != '/' && mark != '.' && mark != '-') {
    in.back_to(start);
    return false;
  }
  in.take(mark);
  if (in.take_number(2, date.second) == 0 || !in.take(mark)) return false;
  date.third_digits = in.take_number(4, date.third);
  if (date.first_digits == 4) return date.third_digits == 1 || date.third_digits == 2;
  return date.third_digits == 2 || date.third_digits == 4;
}

bool parse_date(Scanner& in, DateFields& date) {
  const std::size_t start = in.at();
  skip_weekday(in);
  const std::size_t after_day = in.at();
  if (parse_numeric_date(in, date)) return true;
  date = {};
  in.back_to(after_day);
  if (parse_named_date(in, date)) return true;
  date = {};
  in.back_to(start);
  return false;
}

/// .5 or ,123456 as nanoseconds; digits beyond the ninth are cut off.
bool take_fraction(Scanner& in, std::int64_t& nanoseconds) {
  if (!in.take('.') && !in.take(',')) return true;
  std::int64_t unit = kNanosecondsPerSecond;
  int digits = 0;
  while (in.peek() >= '0' && in.peek() <= '9') {
    unit /= 10;
    nanoseconds += (in.peek() - '0') * unit;
    in.take(in.peek());
    ++digits;
  }
  return digits != 0;
}

/// 1 for AM, 2 for PM, 0 for neither: am, a.m., A.M, AM.
int take_half_day(Scanner& in) {
  const std::size_t start = in.at();
  in.skip_spaces();
  const char first = static_cast<char>(in.peek() | 0x20);
  if (first == 'a' || first == 'p') {
    in.take(in.peek());
    in.take('.');
    if ((in.peek() | 0x20) == 'm') {
      in.take(in.peek());
      in.take('.');
      return first == 'a' ? 1 : 2;
    }
  }
  in.back_to(start);
  return 0;
}

bool parse_clock(Scanner& in, Stamp& stamp) {
  const std::size_t start = in.at();
  stamp.clock_at = start;
  int hour = 0;
  int minute = 0;
  int second = 0;
  std::int64_t nanoseconds = 0;
  const int hour_digits = in.take_number(2, hour);
  if (hour_digits == 0) return false;
  if (in.take(':')) {
    if (in.take_number(2, minute) != 2) return false;
    if (in.take(':')) {
      if (in.take_number(2, second) != 2 || !take_fraction(in, nanoseconds)) return false;
    }
  } else if (stamp.date && hour_digits == 2 && in.take_number(2, minute) == 2) {  // ISO basic, 130500
    if (in.take_number(2, second) == 1 || !take_fraction(in, nanoseconds)) return false;
  } else {
    return false;
  }
  const int half = take_half_day(in);
  if (half != 0) {
    if (hour < 1 || hour > 12) return false;
    hour = hour % 12 + (half == 2 ? 12 : 0);
  }
  const bool next_midnight = hour == 24 && minute == 0 && second == 0 && nanoseconds == 0;
  if ((hour > 23 && !next_midnight) || minute > 59 || second > 60) return false;
  stamp.clock_ns = hour * kNanosecondsPerHour + minute * kNanosecondsPerMinute +
                   second * kNanosecondsPerSecond + nanoseconds;
  stamp.half_day = half != 0;
  return true;
}

/// Z, +02:00, -0530, +02.
bool take_offset(Scanner& in, Stamp& stamp) {
  if (in.at_end()) return true;
  const std::size_t start = in.at();
  in.skip_spaces();
  if (in.take('Z') || in.take('z')) {
    stamp.offset_minutes = 0;
    return true;
  }
  const bool west = in.peek() == '-';
  if (!in.take('+') && !in.take('-')) {
    in.back_to(start);
    return true;
  }
  int hours = 0;
  int minutes = 0;
  if (in.take_number(2, hours) != 2) return false;
  const bool colon = in.take(':');
  const int digits = in.take_number(2, minutes);
  if ((colon && digits != 2) || digits == 1 || hours > 15 || minutes > 59) return false;
  stamp.offset_minutes = (west ? -1 : 1) * (hours * 60 + minutes);
  return true;
}

}  // namespace

std::optional<Stamp> parse_stamp(std::string_view text) {
  Scanner in{text};
  Stamp stamp;
  in.skip_spaces();
  DateFields date;
  const std::size_t start = in.at();
  if (parse_date(in, date)) {
    stamp.date = date;
    const std::size_t after_date = in.at();
    bool parted = in.take('T') || in.take('t') || in.take('_');
    if (!parted) {
      for (const char mark : {',', ';', '|'}) in.skip_spaces(), in.take(mark);
      in.skip_spaces();
      parted = in.at() != after_date;
    }
    if (in.at_end()) return stamp;
    if (!parted || !parse_clock(in, stamp) || !take_offset(in, stamp)) return std::nullopt;
  } else {
    in.back_to(start);
    if (!parse_clock(in, stamp) || !take_offset(in, stamp)) return std::nullopt;
    const bool clock_only = in.at_end();
    if (!clock_only) {
      for (const char mark : {',', ';', '|'}) in.skip_spaces(), in.take(mark);
      in.skip_spaces();
      if (in.at_end()) return stamp;
      if (!parse_date(in, date)) return std::nullopt;
      stamp.date = date;
    }
  }
  in.skip_spaces();
  if (!in.at_end()) return std::nullopt;
  return stamp;
}

std::optional<std::int64_t> parse_elapsed(std::string_view text) {
  Scanner in{text};
  in.skip_spaces();
  const bool negative = in.take('-');
  if (!negative) in.take('+');
  int hours = 0;
  int minutes = 0;
  int seconds = 0;
  std::int64_t nanoseconds = 0;
  if (in.take_number(6, hours) == 0 || !in.take(':') || in.take_number(2, minutes) != 2 || minutes > 59)
    return std::nullopt;
  if (in.take(':') && (in.take_number(2, seconds) != 2 || seconds > 59 || !take_fraction(in, nanoseconds)))
    return std::nullopt;
  in.skip_spaces();
  if (!in.at_end()) return std::nullopt;
  const std::int64_t total = hours * kNanosecondsPerHour + minutes * kNanosecondsPerMinute +
                             seconds * kNanosecondsPerSecond + nanoseconds;
  return negative ? -total : total;
}

bool is_half_day_mark(std::string_view text) {
  Scanner in{text};
  return take_half_day(in) != 0 && in.at_end();
}

}  // namespace soakwright
