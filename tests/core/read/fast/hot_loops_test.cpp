// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/hot_loops.h"

#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/read/cell.h"

using namespace soakwright;

namespace {

constexpr std::size_t kMargin = 64;

/// Random text of the characters that logs are made of, with room around it as the loops want it.
std::string random_text(std::mt19937& random, std::size_t length, const char* alphabet) {
  const std::string letters{alphabet};
  std::string text(kMargin, '\n');
  for (std::size_t i = 0; i < length; ++i) text += letters[random() % letters.size()];
  return text + std::string(2 * kMargin, '7');
}

}  // namespace

TEST_CASE("lines and blank lines are counted as one byte after the other shows them") {
  std::mt19937 random{1};
  for (int round = 0; round < 300; ++round) {
    const std::size_t length = random() % 400;
    const std::string text =
        random_text(random, length, round % 2 == 0 ? "\n\r1" : "\n\r12,.4567890\n\r12,.4567890");
    std::size_t lines = 0;
    std::size_t blank = 0;
    std::size_t start = kMargin;
    for (std::size_t i = kMargin; i < kMargin + length; ++i)
      if (text[i] == '\n') {
        ++lines;
        const std::string line = text.substr(start, i - start);
        if (line.empty() || line == "\r") ++blank;
        start = i + 1;
      }
    for (const HotLoops& loops : builds_of_hot_loops()) {
      const LineCount count = loops.count_lines(text.data() + kMargin, text.data() + kMargin + length, '\n');
      CHECK(count.lines == lines);
      CHECK(count.blank == blank);
    }
  }
}

TEST_CASE("ends of cells and lines are found wherever they stand") {
  std::mt19937 random{2};
  for (int round = 0; round < 300; ++round) {
    const std::size_t length = random() % 400;
    const std::string text = random_text(random, length, round % 3 == 0 ? ",\n" : ",\n1234567");
    std::vector<std::uint32_t> ends;
    std::vector<std::uint32_t> lines;
    for (std::size_t i = kMargin; i < kMargin + length; ++i) {
      if (text[i] == '\n') lines.push_back(static_cast<std::uint32_t>(ends.size()));
      if (text[i] == '\n' || text[i] == ',') ends.push_back(static_cast<std::uint32_t>(i));
    }
    for (const HotLoops& loops : builds_of_hot_loops()) {
      std::vector<std::uint32_t> found_ends(length + 128);
      std::vector<std::uint32_t> found_lines(length + 128);
      EndsFound found{found_ends.data(), 0, found_lines.data(), 0};
      loops.find_ends(text.data(), kMargin, kMargin + length, ',', '\n', found);
      found_ends.resize(found.end_count);
      found_lines.resize(found.line_count);
      CHECK(found_ends == ends);
      CHECK(found_lines == lines);
    }
  }
}

TEST_CASE("extremes leave out what is missing") {
  std::mt19937 random{3};
  for (std::size_t length = 0; length < 70; ++length) {
    std::vector<std::int32_t> units(length);
    Extremes expected;
    for (std::int32_t& unit : units) {
      unit = random() % 4 == 0 ? INT32_MIN : static_cast<std::int32_t>(random());
      if (unit == INT32_MIN) continue;
      expected.low = std::min(expected.low, unit);
      expected.high = std::max(expected.high, unit);
      ++expected.there;
    }
    for (const HotLoops& loops : builds_of_hot_loops()) {
      Extremes extremes;
      loops.find_extremes(units.data(), units.size(), extremes);
      CHECK(extremes.low == expected.low);
      CHECK(extremes.high == expected.high);
      CHECK(extremes.there == expected.there);
    }
  }
}

TEST_CASE("plain decimals of every shape are read, and nothing else is taken for one") {
  struct Row {
    const char* cells;
    int places;
    std::vector<std::int32_t> units;  ///< as far as the cells are plain
  };
  constexpr std::int32_t kGone = INT32_MIN;
  const Row table[] = {
      {"0,7,42,999,1234,98765,123456,7654321,12345678,5",
       0,
       {0, 7, 42, 999, 1234, 98765, 123456, 7654321, 12345678, 5}},
      {"0.5,20.5,999.9,1234.5,123456.7,.5,20.6", 1, {5, 205, 9999, 12345, 1234567, 5, 206}},
      {"0.25,20.50,12345.67,.25,1.00", 2, {25, 2050, 1234567, 25, 100}},
      {"0.125,1234.567,.001,9.999", 3, {125, 1234567, 1, 9999}},
      {"1.2345,123.4567,.0001,20.0000,20.0001", 4, {12345, 1234567, 1, 200000, 200001}},
      {"1.23456,12.34567,.00001,2.00000", 5, {123456, 1234567, 1, 200000}},
      {"1.234567,.000001,2.000000,3.000000,4.000000", 6, {1234567, 1, 2000000, 3000000, 4000000}},
      {"20.5,,20.6,,,20.7", 1, {205, kGone, 206, kGone, kGone, 207}},
      // Signs, and fewer places than the column has.
      {"20.5,20.6,20.7,20.8,-1.5,20.9", 1, {205, 206, 207, 208, -15, 209}},
      {"20.5,20,20.7,-0.5,-.5,+20.6,5.,-7,123456.7,1234567.8",
       1,
       {205, 200, 207, -5, -5, 206, 50, -70, 1234567}},
      {"20,20.5,20.55,-20.5,+7,.5,12345678,7.", 2, {2000, 2050, 2055, -2050, 700, 50, 1234567800, 700}},
      {"20.5,20,7.,.5,1234.5,3,1234567,12345678", 1, {205, 200, 70, 5, 12345, 30, 12345670, 123456780}},
      {"1,1.5,1.55,1.555,12,123,1234,12345,123456",
       3,
       {1000, 1500, 1550, 1555, 12000, 123000, 1234000, 12345000, 123456000}},
      {"7,42,,123,,,9.,0", 2, {700, 4200, kGone, 12300, kGone, kGone, 900, 0}},
      {"1,1.5,1.234567,-2147", 6, {1000000, 1500000, 1234567, -2147000000}},
      {"-12345678,+12345678", 0, {-12345678, 12345678}},
      // What stops the fast way.
      {"1,2148", 6, {1000000}},
      {"20.5,1.2.", 1, {205}},
      {"20.5,1.2.3", 2, {2050}},
      {"20.5,..5", 1, {205}},
      {"20.5,--5", 1, {205}},
      {"20.5,-", 1, {205}},
      {"20.5,-.", 1, {205}},
      {"20.5,+-5", 1, {205}},
      {"20.5,5-", 1, {205}},
      {"20.5,- 5", 1, {205}},
      {"20.5,20.55", 1, {205}},
      {"20.5,123456789.8", 1, {205}},
      {"20.5, 20.6", 1, {205}},
      {"20.5,20.6 ", 1, {205}},
      {"20.5,NaN", 1, {205}},
      {"20.5,2:.6", 1, {205}},
      {"20.5,2/.6", 1, {205}},
      {"20.5,2\xB0.6", 1, {205}},
      {"20.5,.", 1, {205}},
      {"7,123456789", 0, {7}},
      {"7,1.5", 0, {7}},
  };
  for (const Row& row : table)
    for (const char decimal : {'.', ','}) {
      INFO(row.cells << " with places " << row.places);
      const char delimiter = decimal == '.' ? ',' : ';';
      std::string text(kMargin, '\n');
      for (const char c : std::string{row.cells}) text += c == ',' ? delimiter : c == '.' ? decimal : c;
      text += '\n';
      const std::size_t text_end = text.size();
      text += std::string(kMargin, '7');
      std::vector<std::uint32_t> ends;
      for (std::size_t i = kMargin; i < text_end; ++i)
        if (text[i] == delimiter || text[i] == '\n') ends.push_back(static_cast<std::uint32_t>(i));
      for (const HotLoops& loops : builds_of_hot_loops()) {
        std::vector<std::int32_t> units(3 * ends.size(), 77);
        std::vector<std::uint32_t> left(ends.size());
        left.resize(loops.parse_cells(DecimalShape::of(row.places, decimal), text.data(), kMargin,
                                      ends.data(), ends.size(), units.data(), 3, left.data()));
        for (std::size_t i = 0; i < row.units.size(); ++i) CHECK(units[3 * i] == row.units[i]);
        if (row.units.size() == ends.size()) {
          CHECK(left.empty());
        } else {
          REQUIRE(!left.empty());
          CHECK(left.front() == row.units.size());
          CHECK(units[std::size_t{3} * left.front()] == INT32_MIN);
        }
        for (std::size_t i = 0; i + 1 < 3 * ends.size(); ++i)
          if (i % 3 != 0) CHECK(units[i] == 77);  // what lies between is another column's
      }
    }
}

TEST_CASE("cells of chance that the fast way reads are what the careful way makes of them") {
  std::mt19937 random{20310402};
  constexpr std::size_t kCells = 9;
  std::size_t read_in_all = 0;
  for (int round = 0; round < 20'000; ++round) {
    const int places = static_cast<int>(random() % 7);
    const char decimal = random() % 2 == 0 ? '.' : ',';
    // Mostly numbers, so that whole groups are read; strange ones among them.
    const std::string letters = round % 4 == 0 ? "0123456789.,-+ eE" : "01234567890123456789.";
    std::string text(kMargin, '\n');
    std::vector<std::string> cells;
    std::vector<std::uint32_t> ends;
    for (std::size_t c = 0; c < kCells; ++c) {
      std::string cell;
      for (std::size_t i = random() % 10; i > 0; --i) cell += letters[random() % letters.size()];
      for (char& sign : cell)
        if (sign == '.' && letters.size() > 20) sign = decimal;
      text += cell;
      ends.push_back(static_cast<std::uint32_t>(text.size()));
      text += ';';
      cells.push_back(cell);
    }
    text += std::string(kMargin, '7');
    for (const HotLoops& loops : builds_of_hot_loops()) {
      std::vector<std::int32_t> units(kCells);
      std::vector<std::uint32_t> left(kCells);
      left.resize(loops.parse_cells(DecimalShape::of(places, decimal), text.data(), kMargin, ends.data(),
                                    kCells, units.data(), 1, left.data()));
      read_in_all += kCells - left.size();
      for (std::size_t c = 0; c < kCells; ++c) {
        INFO("'" << cells[c] << "' with places " << places << " and '" << decimal << "'");
        if (std::find(left.begin(), left.end(), c) != left.end()) {
          REQUIRE(units[c] == INT32_MIN);
          continue;
        }
        const Cell careful = parse_cell(cells[c], decimal);
        if (units[c] == INT32_MIN) {
          REQUIRE(cells[c].empty());
          continue;
        }
        REQUIRE(careful.kind == Cell::Kind::number);
        REQUIRE(careful.exact);
        REQUIRE(careful.places <= places);
        REQUIRE(units[c] == careful.mantissa * power_of_ten(places - careful.places));
      }
    }
  }
  CHECK(read_in_all > 50'000);
}
