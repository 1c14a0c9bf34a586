// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/suspect_words.h"

#include <cmath>

#include <fmt/format.h>

#include "core/units/printed_quantity.h"

namespace soakwright {

namespace {

std::string length_text(double seconds) {
  return printed_duration(seconds >= 600.0 ? 60.0 * std::round(seconds / 60.0) : std::round(seconds));
}

std::string celsius_text(double celsius) { return decimal_text(celsius, 1) + " °C"; }

std::string kelvin_text(double kelvin) { return decimal_text(std::abs(kelvin), 1) + " °C"; }

std::string readings_text(std::size_t count) {
  return count == 1 ? std::string("1 reading") : fmt::format("{} readings", count);
}

}  // namespace

std::string suspect_sentence(const Suspect& suspect, const Record& record) {
  using Kind = SuspectEvidence::Kind;
  const SuspectEvidence& found = suspect.evidence;
  switch (found.kind) {
    case Kind::no_reading:
      return fmt::format("No reading for {} while the recorder ran: open circuit or not connected.",
                         length_text(found.seconds));
    case Kind::value_of_no_work:
      return fmt::format("Reads {} for {}, {}: a recorder's value for an open circuit.",
                         celsius_text(found.value_c), length_text(found.seconds),
                         found.alone ? "which no work has" : "where none of the others ever is");
    case Kind::repeats_reading:
      return fmt::format(
          "Repeats the reading {} {} times, for {}. Its readings scatter too much for that elsewhere in the "
          "record.",
          celsius_text(found.value_c), found.count, length_text(found.seconds));
    case Kind::all_repeat_row:
      return fmt::format(
          "All thermocouples repeat the same row {} times, for {}; this one reads {}. Their readings scatter "
          "too much for that elsewhere in the record.",
          found.count, length_text(found.seconds), celsius_text(found.value_c));
    case Kind::held_over_rows:
      return fmt::format(
          "All thermocouples repeat each row {} times, then all change at once, throughout: they were read "
          "every {}, not on every row.",
          found.count, length_text(found.seconds));
    case Kind::stands_as_others_move:
      return fmt::format("Reads {} for {} while the others move between {} and {}.",
                         celsius_text(found.value_c), length_text(found.seconds), celsius_text(found.low_c),
                         celsius_text(found.high_c));
    case Kind::never_moves:
      return fmt::format("Stays between {} and {} throughout, while each of the others moves by at least {}.",
                         celsius_text(found.low_c), celsius_text(found.high_c), kelvin_text(found.change_k));
    case Kind::equals_channel:
      return fmt::format("Equals {} in each of {}, scatter included: copied, or both read one thermocouple.",
                         record.channels[found.other].name, readings_text(found.count));
    case Kind::equals_set_point:
      return fmt::format("Equals the set point {} in each of {}: not a measurement.",
                         record.other_columns[found.other_column].name, readings_text(found.count));
    case Kind::equals_earlier_rows:
      return fmt::format("Repeats the {} from {} to {} digit for digit: copied rows.",
                         readings_text(found.count), record.moment_text(found.earlier_from_s),
                         record.moment_text(found.earlier_to_s));
    case Kind::ends_at_reading:
      return fmt::format(
          "Never reads {} than {} and repeats that reading for {}: the range of the recorder ends there.",
          found.highest ? "higher" : "lower", celsius_text(found.value_c), length_text(found.seconds));
    case Kind::opposite_to_others:
      return fmt::format("{} by {} while the others {} by {}: reversed polarity?",
                         found.change_k < 0.0 ? "Falls" : "Rises", kelvin_text(found.change_k),
                         found.others_k < 0.0 ? "fall" : "rise", kelvin_text(found.others_k));
    case Kind::below_ambient:
      return fmt::format("Reads {}, far below ambient, while the others read {}: reversed polarity?",
                         celsius_text(found.value_c), celsius_text(found.others_c));
    case Kind::sudden_step:
      return fmt::format(
          "{} suddenly by {}, which the others do not, and stays there for {}: detached from the work?",
          found.change_k < 0.0 ? "Falls" : "Jumps", kelvin_text(found.change_k), length_text(found.seconds));
    case Kind::scatter:
      return fmt::format(
          "Scatters by {} (standard deviation) where the others scatter by {} °C: loose contact or "
          "interference.",
          kelvin_text(found.change_k), decimal_text(found.others_k, 2));
    case Kind::frequent_jumps:
      return fmt::format(
          "Jumps {} times between neighbouring readings, by up to {}, faster than any work can: loose "
          "contact "
          "or interference.",
          found.count, kelvin_text(found.change_k));
    case Kind::spike:
      return fmt::format("Reads {} for {}, {} {} than the readings beside it: no work changes so fast.",
                         celsius_text(found.value_c), readings_text(found.count), kelvin_text(found.change_k),
                         found.change_k < 0.0 ? "lower" : "higher");
    case Kind::delay:
      return fmt::format(
          "{} the others by about {} throughout, which sets it apart by {} (root mean square) and explains "
          "all but {} of that.",
          found.seconds > 0.0 ? "Lags" : "Leads", length_text(std::abs(found.seconds)),
          kelvin_text(found.change_k), kelvin_text(found.others_k));
  }
  return {};
}

}  // namespace soakwright
