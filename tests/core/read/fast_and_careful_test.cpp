// SPDX-License-Identifier: GPL-3.0-or-later
// The fast way and the careful way give the same table, on any number of threads and in blocks of any size.
#include <algorithm>
#include <cmath>
#include <cstring>
#include <filesystem>
#include <functional>
#include <map>
#include <random>
#include <sstream>
#include <string>

#include <catch2/catch.hpp>

#include "core/read/log_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

bool same(const LineIssue& a, const LineIssue& b) {
  return a.count == b.count && a.line == b.line && a.text == b.text;
}

bool same_doubles(const std::vector<double>& a, const std::vector<double>& b) {
  return a.size() == b.size() &&
         (a.empty() || std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0);
}

bool same_texts(const std::vector<TextCount>& a, const std::vector<TextCount>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const TextCount& x, const TextCount& y) {
    return x.text == y.text && x.count == y.count && x.line == y.line;
  });
}

/// Strings one behind the other.
std::string joined(std::initializer_list<std::string_view> parts) {
  std::string text;
  for (const std::string_view part : parts) text += part;
  return text;
}

/// The first difference, in words; empty where there is none.
std::string difference(const LogTable& a, const LogTable& b) {
  if (a.sha256 != b.sha256) return "hash";
  if (a.stamps_ns != b.stamps_ns) return "stamps";
  if (a.columns.size() != b.columns.size()) return "columns";
  if (!same(a.repeat_rows, b.repeat_rows)) return "repeated rows";
  if (!same(a.repeated_headers, b.repeated_headers)) return "repeated headers";
  if (!same(a.short_rows, b.short_rows) || !same(a.long_rows, b.long_rows)) return "short or long rows";
  if (!same(a.odd_lines, b.odd_lines)) return "odd lines";
  for (std::size_t row = 0; row < a.rows(); ++row)
    if (a.lines.line_of(row) != b.lines.line_of(row)) return joined({"line of row ", std::to_string(row)});
  for (std::size_t c = 0; c < a.columns.size(); ++c) {
    const LogColumn& x = a.columns[c];
    const LogColumn& y = b.columns[c];
    const std::string where = joined({" of column ", std::to_string(x.number)});
    if (x.places != y.places) return joined({"places", where});
    if (x.numbers != y.numbers) return joined({"count", where});
    if (x.numbers != 0 && (x.lowest != y.lowest || x.highest != y.highest))
      return joined({"extremes", where});
    if (!same(x.texts, y.texts) || !same(x.grouped, y.grouped)) return joined({"texts", where});
    if (!same(x.empties, y.empties)) return joined({"empty cells", where});
    if (!same_texts(x.each_text, y.each_text)) return joined({"counts of texts", where});
    if (!same_doubles(x.wide, y.wide)) return joined({"doubles", where});
    if (!x.wide.empty()) continue;
    for (std::size_t row = 0; row < a.rows(); ++row)
      if (a.store->at(x.store_column, row) != b.store->at(y.store_column, row))
        return joined({"row ", std::to_string(row), where});
  }
  return {};
}

void check_all_ways(const std::string& path) {
  const auto careful = read_log(path, {}, {1, std::size_t{1} << 20, true});
  for (const unsigned threads : {1U, 3U})
    for (const std::size_t block : {std::size_t{700}, std::size_t{5000}, std::size_t{256} << 10}) {
      INFO(path << " with " << threads << " threads and blocks of " << block);
      const auto fast = read_log(path, {}, {threads, block, false});
      REQUIRE(fast.ok() == careful.ok());
      if (fast)
        CHECK(difference(careful.value(), fast.value()).empty());
      else
        CHECK(fast.problems().front().text() == careful.problems().front().text());
    }
}

using MakeCell = std::function<std::string(std::mt19937&)>;

std::string decimal_text(std::mt19937& random, int most_digits, int places) {
  std::string text = std::to_string(
      random() % static_cast<unsigned>(std::pow(10, 1 + random() % static_cast<unsigned>(most_digits))));
  if (places == 0) return text;
  text += '.';
  for (int i = 0; i < places; ++i) text += static_cast<char>('0' + random() % 10);
  return text;
}

std::string log_of(std::mt19937& random, std::size_t rows, const std::vector<MakeCell>& columns,
                   const char* line_end) {
  std::string text = "Time";
  for (std::size_t c = 0; c < columns.size(); ++c) text += ",TC" + std::to_string(c + 1);
  text += line_end;
  for (std::size_t row = 0; row < rows; ++row) {
    char stamp[96];
    const std::size_t second = row % 86'400;
    std::snprintf(stamp, sizeof stamp, "2031-04-%02zu %02zu:%02zu:%02zu", 2 + row / 86'400, second / 3600,
                  second / 60 % 60, second % 60);
    text += stamp;
    for (const MakeCell& cell : columns) text.append(",").append(cell(random));
    text += line_end;
  }
  return text;
}

}  // namespace

TEST_CASE("empty cells and each text are counted as they stand in the file, by every way") {
  std::mt19937 random{20310403};
  const auto one_of = [](std::initializer_list<const char*> texts) {
    return [all = std::vector<std::string>{texts.begin(), texts.end()}](std::mt19937& r) {
      return all[r() % all.size()];
    };
  };
  const std::vector<MakeCell> columns{one_of({"20.5", "21.5", ""}),
                                      one_of({"20.5", "", "NaN", "NaN", "OPEN"}),
                                      one_of({"NaN", "OPEN"}),
                                      one_of({"20.5"}),
                                      one_of({"2e-3", "", "1.5", "OPEN"}),
                                      [](std::mt19937& r) {
                                        return r() % 3 == 0 ? "fault " + std::to_string(r() % 90)
                                                            : std::string{"20.5"};
                                      }};
  constexpr std::size_t kRowsWritten = 3'000;
  const std::string text = log_of(random, kRowsWritten, columns, "\n");
  const WrittenLog log{text};
  check_all_ways(log.path());

  // The same by looking at every cell.
  std::vector<std::map<std::string, std::pair<std::size_t, std::size_t>>> wanted(
      columns.size());  // count, line
  std::istringstream lines{text};
  std::string line;
  for (std::size_t number = 1; std::getline(lines, line); ++number) {
    if (number == 1) continue;
    std::istringstream cells{line + ","};
    std::string cell;
    for (std::size_t c = 0; std::getline(cells, cell, ','); ++c) {
      if (c == 0) continue;
      auto& [count, first] = wanted[c - 1][cell];
      if (count++ == 0) first = number;
    }
  }
  const auto table = read_log(log.path(), {}, {3, 700, false});
  REQUIRE(table.ok());
  REQUIRE(table.value().rows() == kRowsWritten);
  for (std::size_t c = 0; c < columns.size(); ++c) {
    INFO("column " << c + 2);
    const LogColumn& column = table.value().columns[c];
    const auto [empties, first_empty] = wanted[c][""];
    CHECK(column.empties.count == empties);
    CHECK(column.empties.line == first_empty);
    if (c == 5) continue;
    std::size_t texts = 0;
    for (const TextCount& one : column.each_text) {
      CHECK(one.count == wanted[c][one.text].first);
      CHECK(one.line == wanted[c][one.text].second);
      texts += one.count;
    }
    CHECK(texts == column.texts.count);
  }
  // 90 different texts are more than are told apart.
  CHECK(table.value().columns[5].texts.count > 500);
  CHECK(table.value().columns[5].each_text.empty());
}

TEST_CASE("a row with a cell too many and a short row are no empty cells") {
  const WrittenLog log{
      "Time,TC1,TC2,TC3\n2031-04-02 06:00:00,20,21,22\n2031-04-02 06:01:00,20,21,22,23\n"
      "2031-04-02 06:02:00,20\n2031-04-02 06:03:00,20,,22\n2031-04-02 06:04:00,20,21,22\n"};
  check_all_ways(log.path());
  const auto table = read_log(log.path(), {});
  REQUIRE(table.ok());
  CHECK(table.value().long_rows.count == 1);
  CHECK(table.value().long_rows.line == 3);
  CHECK(table.value().short_rows.count == 1);
  CHECK(table.value().columns[0].empties.count == 0);
  CHECK(table.value().columns[1].empties.count == 1);
  CHECK(table.value().columns[1].empties.line == 5);
  CHECK(table.value().columns[2].empties.count == 0);
  CHECK(table.value().columns[0].numbers == 4);
}

TEST_CASE("a million generated cells read the same by every way") {
  std::mt19937 random{20310402};
  const std::vector<MakeCell> columns{
      [](std::mt19937& r) { return decimal_text(r, 3, 1); },
      [](std::mt19937& r) { return decimal_text(r, 4, 0); },
      [](std::mt19937& r) { return decimal_text(r, 4, 2); },
      [](std::mt19937& r) { return decimal_text(r, 3, 3); },
      // places that vary, as spreadsheets cut zeros off
      [](std::mt19937& r) { return decimal_text(r, 3, static_cast<int>(r() % 3)); },
      [](std::mt19937& r) {
        return joined({r() % 2 ? "-" : "", decimal_text(r, 2, 1)});
      },
      // missing, text and grouping among numbers
      [](std::mt19937& r) { return r() % 5 == 0 ? std::string{} : decimal_text(r, 3, 1); },
      [](std::mt19937& r) {
        return r() % 9 == 0 ? std::string{"NaN"} : r() % 50 == 0 ? std::string{"---"} : decimal_text(r, 3, 1);
      },
      [](std::mt19937& r) { return r() % 7 == 0 ? "\"1,234.5\"" : decimal_text(r, 3, 1); },
      // spaces, signs, exponents
      [](std::mt19937& r) {
        return joined({std::string(r() % 3, ' '), decimal_text(r, 3, 1), r() % 2 ? " " : ""});
      },
      [](std::mt19937& r) {
        return joined({r() % 2 ? "+" : "", decimal_text(r, 3, 1)});
      },
      [](std::mt19937& r) {
        return joined({decimal_text(r, 1, 4), r() % 3 == 0 ? "E+01" : "e-1"});
      },
      // quoted
      [](std::mt19937& r) {
        return r() % 4 == 0 ? joined({"\"", decimal_text(r, 3, 1), "\""}) : decimal_text(r, 3, 1);
      },
  };
  SECTION("line feeds") {
    const WrittenLog log{log_of(random, 40'000, columns, "\n")};
    check_all_ways(log.path());
  }
  SECTION("semicolons and decimal commas") {
    std::string text = log_of(random, 4'000, columns, "\n");
    for (char& c : text) c = c == ',' ? ';' : c == '.' ? ',' : c;
    const WrittenLog log{text};
    check_all_ways(log.path());
  }
  SECTION("carriage returns and line feeds") {
    const WrittenLog log{log_of(random, 40'000, columns, "\r\n")};
    check_all_ways(log.path());
  }
}

TEST_CASE("every log of the cases and samples reads the same by every way") {
  const std::filesystem::path top{SOAKWRIGHT_SOURCE_DIR};
  std::size_t logs = 0;
  for (const char* folder : {"tests/cases", "sample-logs"})
    for (const auto& entry : std::filesystem::recursive_directory_iterator{top / folder})
      if (entry.path().extension() == ".csv") {
        check_all_ways(entry.path().string());
        ++logs;
      }
  CHECK(logs > 120);
}

TEST_CASE("a column that outgrows its integers late is double from its first row on, by every way") {
  std::mt19937 random{7};
  std::size_t cells = 0;
  std::size_t large = 0;
  const std::vector<MakeCell> columns{
      [](std::mt19937& r) { return decimal_text(r, 3, 1); },
      [&cells](std::mt19937& r) {
        return ++cells == 3900 ? std::string{"20.12345678901"} : decimal_text(r, 3, 1);
      },
      [&large](std::mt19937& r) {
        return ++large == 3100 ? std::string{"999999999"} : decimal_text(r, 1, 4);
      },
      [](std::mt19937& r) { return decimal_text(r, 3, 1) + "1234567890123456789"; },
  };
  const WrittenLog log{log_of(random, 4000, columns, "\n")};
  check_all_ways(log.path());
  const auto table = read_log(log.path(), {}, {2, 5000, false});
  REQUIRE(table.ok());
  CHECK(table.value().columns[0].wide.empty());
  CHECK(table.value().columns[1].wide.size() == 4000);
  CHECK(table.value().columns[1].wide[3899] == 20.12345678901);
  CHECK(table.value().columns[1].places == 11);
  CHECK_FALSE(table.value().columns[2].wide.empty());
  CHECK_FALSE(table.value().columns[3].wide.empty());
}

TEST_CASE("stitched, repeated, short and empty lines fall the same at every seam of blocks") {
  std::mt19937 random{11};
  std::string text = "# north bay\nTime,TC1,TC2\n";
  for (int row = 0; row < 6000; ++row) {
    const std::string line =
        std::to_string(row * 10) + "," + decimal_text(random, 3, 1) + "," + decimal_text(random, 3, 1) + "\n";
    text += line;
    switch (random() % 12) {
      case 0:
        text += line;
        break;
      case 1:
        text += "\n\r\n";
        break;
      case 2:
        text += "Time,TC1,TC2\n";
        break;
      case 3:
        text += "*** power back ***\n";
        break;
      case 4:
        text += joined({line, "*** and again ***\n", line});
        break;
      case 5:
        text += joined({std::to_string(row * 10 + 5), ",20.5\n"});
        break;
      case 6:
        text += joined({std::to_string(row * 10 + 5), ",20.5,20.6,20.7\n"});
        break;
      default:
        break;
    }
  }
  SECTION("to the end") {
    const WrittenLog log{text};
    check_all_ways(log.path());
  }
  SECTION("cut anywhere") {
    for (int i = 0; i < 25; ++i) {
      const WrittenLog log{text.substr(0, random() % text.size())};
      check_all_ways(log.path());
    }
  }
}
