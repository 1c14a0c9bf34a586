// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/block_columns.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/read/fast/hot_loops.h"
#include "core/read/text_encoding.h"

namespace soakwright {
namespace {

// One more place and not even one digit is left before the point.
constexpr int kMostStoredPlaces = 9;
constexpr std::int32_t kLargest = INT32_MAX;
constexpr std::size_t kLongestNote = 40;
// More different texts than this are only counted together. Whether there are more does not depend on which
// thread reads which block.
constexpr std::size_t kMostTexts = 64;

void note(LineIssue& line_issue, std::string_view text, std::size_t line) {
  if (line_issue.count++ == 0) {
    line_issue.line = line;
    line_issue.text = to_utf8(text.substr(0, kLongestNote));
  }
}

/// The place of `text` in `texts`; their number if it is not there. The last one met is usually met again.
std::size_t place_of(const std::vector<TextCount>& texts, std::string_view text) {
  for (std::size_t i = texts.size(); i-- > 0;)
    if (texts[i].text == text) return i;
  return texts.size();
}

void add_texts(ColumnSummary& into, const ColumnSummary& more) {
  into.many_texts = into.many_texts || more.many_texts;
  for (const TextCount& one : more.each_text) {
    const std::size_t place = place_of(into.each_text, one.text);
    if (place == into.each_text.size()) {
      into.each_text.push_back(one);
      continue;
    }
    into.each_text[place].count += one.count;
    into.each_text[place].line = std::min(into.each_text[place].line, one.line);
  }
  into.many_texts = into.many_texts || into.each_text.size() > kMostTexts;
  if (into.many_texts) into.each_text.clear();
}

}  // namespace

void add_line_issue(LineIssue& into, const LineIssue& more) {
  if (more.count == 0) return;
  if (into.count == 0 || more.line < into.line) {
    into.line = more.line;
    into.text = more.text;
  }
  into.count += more.count;
}

void add_facts(ColumnSummary& into, const ColumnSummary& more) {
  if (more.numbers != 0) {
    into.lowest = into.numbers == 0 ? more.lowest : std::min(into.lowest, more.lowest);
    into.highest = into.numbers == 0 ? more.highest : std::max(into.highest, more.highest);
  }
  into.numbers += more.numbers;
  if (more.empties != 0)
    into.first_empty_row =
        into.empties == 0 ? more.first_empty_row : std::min(into.first_empty_row, more.first_empty_row);
  into.empties += more.empties;
  add_line_issue(into.texts, more.texts);
  add_texts(into, more);
  add_line_issue(into.grouped, more.grouped);
}

bool fits_rescaled(std::int64_t units, int from, int to, std::int32_t& out) {
  const std::int64_t power = power_of_ten(to - from);
  if (units > kLargest / power || units < -(kLargest / power)) return false;
  out = static_cast<std::int32_t>(units * power);
  return true;
}

BlockColumns::BlockColumns(ColumnStore& store, const std::vector<int>& places)
    : store_(store),
      places_(places),
      wide_index_(places.size(), 0),
      facts_(places.size()),
      explained_(places.size()) {
  for (int& known : places_) known = std::min(known, kMostStoredPlaces);
}

void BlockColumns::begin_block(std::size_t first_row, std::size_t rows) {
  first_row_ = first_row;
  rows_ = rows;
  for (std::vector<std::uint32_t>& rows_of_column : explained_) rows_of_column.clear();
  // A column that did not fit once is read as double from then on by this thread.
  for (std::size_t c = 0; c < places_.size(); ++c)
    if (wide_index_[c] != 0) {
      wide_.emplace_back(c, std::vector<double>(rows_, std::numeric_limits<double>::quiet_NaN()));
      wide_index_[c] = wide_.size();
    }
}

WideColumns BlockColumns::end_block() {
  for (std::size_t c = 0; c < places_.size(); ++c) {
    ColumnSummary here;
    if (wide_index_[c] != 0) {
      for (const double value : wide_[wide_index_[c] - 1].second) {
        if (std::isnan(value)) continue;
        here.lowest = here.numbers == 0 ? value : std::min(here.lowest, value);
        here.highest = here.numbers == 0 ? value : std::max(here.highest, value);
        ++here.numbers;
      }
    } else {
      Extremes extremes;
      store_.visit(c, first_row_, first_row_ + rows_,
                   [&](std::size_t, std::size_t count, const std::int32_t* units) {
                     hot_loops().find_extremes(units, count, extremes);
                   });
      const auto power = static_cast<double>(power_of_ten(places_[c]));
      here.numbers = extremes.there;
      here.lowest = extremes.low / power;
      here.highest = extremes.high / power;
    }
    if (rows_ - here.numbers > explained_[c].size()) add_empties(c, here.numbers);
    if (here.numbers != 0) {
      ColumnSummary& facts = facts_[c];
      facts.lowest = facts.numbers == 0 ? here.lowest : std::min(facts.lowest, here.lowest);
      facts.highest = facts.numbers == 0 ? here.highest : std::max(facts.highest, here.highest);
      facts.numbers += here.numbers;
    }
  }
  return std::exchange(wide_, {});
}

/// Counts the empty cells of the block, and finds the first one of the column.
void BlockColumns::add_empties(std::size_t column, std::size_t numbers) {
  ColumnSummary& facts = facts_[column];
  if (facts.empties == 0) {
    auto explained = explained_[column].begin();
    const auto is_first = [&](std::size_t row) {
      if (explained == explained_[column].end() || first_row_ + *explained != row) return true;
      ++explained;
      return false;
    };
    bool found = false;
    const auto look_at = [&](std::size_t row, bool missing) {
      if (found || !missing || !is_first(row)) return;
      facts.first_empty_row = row;
      found = true;
    };
    if (wide_index_[column] != 0) {
      const std::vector<double>& values = wide_[wide_index_[column] - 1].second;
      for (std::size_t i = 0; i < rows_ && !found; ++i) look_at(first_row_ + i, std::isnan(values[i]));
    } else {
      store_.visit(column, first_row_, first_row_ + rows_,
                   [&](std::size_t first, std::size_t count, const std::int32_t* units) {
                     for (std::size_t i = 0; i < count && !found; ++i)
                       look_at(first + i, units[i] == ColumnStore::kMissing);
                   });
    }
  }
  facts.empties += rows_ - numbers - explained_[column].size();
}

void BlockColumns::add_text(std::size_t column, std::string_view text, std::size_t line) {
  ColumnSummary& facts = facts_[column];
  text = without_spaces(text);
  note(facts.texts, text, line);
  if (facts.many_texts) return;
  const std::string_view key = text.substr(0, kLongestNote);
  const std::size_t place = place_of(facts.each_text, key);
  if (place < facts.each_text.size()) {
    ++facts.each_text[place].count;
  } else if (place < kMostTexts) {
    facts.each_text.push_back({std::string{key}, 1, line});
  } else {
    facts.many_texts = true;
    facts.each_text.clear();
  }
}

void BlockColumns::put_absent(std::size_t column, std::size_t row) {
  explained_[column].push_back(static_cast<std::uint32_t>(row - first_row_));
  put_missing(column, row);
}

void BlockColumns::put_missing(std::size_t column, std::size_t row) {
  if (wide_index_[column] != 0)
    wide_[wide_index_[column] - 1].second[row - first_row_] = std::numeric_limits<double>::quiet_NaN();
  else
    store_.at(column, row) = ColumnStore::kMissing;
}

void BlockColumns::put(std::size_t column, std::size_t row, const Cell& cell, std::string_view text,
                       std::size_t line) {
  if (cell.kind == Cell::Kind::empty) return put_missing(column, row);
  if (cell.kind != Cell::Kind::number) {
    put_absent(column, row);
    if (cell.kind == Cell::Kind::text) add_text(column, text, line);
    if (cell.kind == Cell::Kind::grouped) note(facts_[column].grouped, without_spaces(text), line);
    return;
  }
  const bool raised = cell.places <= places_[column] || raise_places(column, cell.places);
  if (wide_index_[column] == 0) {
    std::int32_t units = 0;
    if (raised && cell.exact && fits_rescaled(cell.mantissa, cell.places, places_[column], units)) {
      store_.at(column, row) = units;
      return;
    }
    widen(column);
  }
  wide_[wide_index_[column] - 1].second[row - first_row_] = cell.value;
}

/// Gives all rows of the block read so far more places; false where one then does not fit.
bool BlockColumns::raise_places(std::size_t column, int places) {
  ++version_;
  if (wide_index_[column] != 0) {
    places_[column] = places;
    return true;
  }
  if (places > kMostStoredPlaces) {
    widen(column);
    places_[column] = places;
    return false;
  }
  const int from = places_[column];
  bool fit = true;
  store_.visit(column, first_row_, first_row_ + rows_,
               [&](std::size_t, std::size_t count, const std::int32_t* units) {
                 std::int32_t out = 0;
                 for (std::size_t i = 0; i < count; ++i)
                   if (units[i] != ColumnStore::kMissing && !fits_rescaled(units[i], from, places, out))
                     fit = false;
               });
  if (!fit) {
    widen(column);
    places_[column] = places;
    return false;
  }
  store_.visit(column, first_row_, first_row_ + rows_,
               [&](std::size_t, std::size_t count, std::int32_t* units) {
                 for (std::size_t i = 0; i < count; ++i)
                   if (units[i] != ColumnStore::kMissing) fits_rescaled(units[i], from, places, units[i]);
               });
  places_[column] = places;
  return true;
}

void BlockColumns::widen(std::size_t column) {
  ++version_;
  std::vector<double> values(rows_, std::numeric_limits<double>::quiet_NaN());
  const auto power = static_cast<double>(power_of_ten(places_[column]));
  store_.visit(column, first_row_, first_row_ + rows_,
               [&](std::size_t first, std::size_t count, const std::int32_t* units) {
                 for (std::size_t i = 0; i < count; ++i)
                   if (units[i] != ColumnStore::kMissing) values[first - first_row_ + i] = units[i] / power;
               });
  wide_.emplace_back(column, std::move(values));
  wide_index_[column] = wide_.size();
}

}  // namespace soakwright
