// SPDX-License-Identifier: GPL-3.0-or-later
// Encodings: bytes against code points of the Unicode Standard and of Microsoft's table for code page 1252.
#include "core/read/text_encoding.h"

#include <string>
#include <utility>
#include <vector>

#include <catch2/catch.hpp>

#include "core/read/log_file.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;
using namespace std::string_literals;

namespace {

/// Elapsed seconds, a temperature and a remark: 9000 rows are more than the head of a log.
std::string rows_with(const std::string& line_end, std::size_t rows,
                      const std::vector<std::pair<std::size_t, std::string>>& remarks) {
  std::string text = "Time (s),A1 (C),Remark" + line_end;
  for (std::size_t row = 0; row < rows; ++row) {
    text += std::to_string(10 * row) + ",20.5,";
    for (const auto& [line, remark] : remarks)
      if (line == row + 2) text += remark;
    text += line_end;
  }
  return text;
}

std::string utf16(std::string_view ascii, bool big_endian) {
  std::string bytes;
  for (const char c : ascii) {
    if (big_endian) bytes += '\0';
    bytes += c;
    if (!big_endian) bytes += '\0';
  }
  return bytes;
}

}  // namespace

TEST_CASE("an encoding is found by its mark or by the bytes themselves") {
  struct Accepted {
    const char* why;
    std::string bytes;
    TextEncoding encoding;
    std::size_t mark_bytes;
  };
  const Accepted table[] = {
      {"ASCII", "Time,A1\n", TextEncoding::utf_8, 0},
      {"UTF-8, two bytes",
       "A (\xC2\xB0"
       "C)",
       TextEncoding::utf_8, 0},
      {"UTF-8, three bytes", "\xE2\x84\x83", TextEncoding::utf_8, 0},
      {"UTF-8, four bytes", "\xF0\x9F\x94\xA5 zone", TextEncoding::utf_8, 0},
      {"UTF-8 cut in the middle of a sequence", "Time,A1 \xE2\x84", TextEncoding::utf_8, 0},
      {"UTF-8 with mark", "\xEF\xBB\xBFTime", TextEncoding::utf_8, 3},
      {"UTF-16 LE with mark", "\xFF\xFE" + utf16("Time", false), TextEncoding::utf_16_le, 2},
      {"UTF-16 BE with mark", "\xFE\xFF" + utf16("Time", true), TextEncoding::utf_16_be, 2},
      {"UTF-16 LE without mark", utf16("Time,TC1,TC2\n", false), TextEncoding::utf_16_le, 0},
      {"UTF-16 BE without mark", utf16("Time,TC1,TC2\n", true), TextEncoding::utf_16_be, 0},
      {"a lone degree sign",
       "Time,A1 (\xB0"
       "C)\n",
       TextEncoding::windows_1252, 0},
      {"a lone letter with dots", "Zeit;l\xE4nge\n", TextEncoding::windows_1252, 0},
      {"overlong UTF-8 is none", "\xC0\xAF zone", TextEncoding::windows_1252, 0},
      {"half a pair in UTF-8 is none", "\xED\xA0\x80 ", TextEncoding::windows_1252, 0},
      {"beyond the last code point", "\xF4\x90\x80\x80 ", TextEncoding::windows_1252, 0},
      {"tabs, form feed, end of file", "a\tb\f\x1A", TextEncoding::utf_8, 0},
      {"one control character is damage", std::string(40, 'a') + '\x01', TextEncoding::utf_8, 0},
  };
  for (const Accepted& entry : table) {
    INFO(entry.why);
    const auto found = detect_encoding(entry.bytes);
    REQUIRE(found.has_value());
    CHECK(found->encoding == entry.encoding);
    CHECK(found->mark_bytes == entry.mark_bytes);
  }
}

TEST_CASE("bytes become the text that they stand for") {
  struct Decoded {
    std::string bytes;
    const char* utf8;
  };
  const Decoded table[] = {
      {"20.5 \xB0"
       "C",
       "20.5 °C"},
      {"\x80 \x93 \x96 \x99 \xFF", "€ “ – ™ ÿ"},
      {"\x81\x8D\x8F\x90\x9D",
       "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD"},  // not assigned
      {"20.5 °C", "20.5 °C"},
      {"a\0b"s,
       "a\xEF\xBF\xBD"
       "b"},
  };
  for (const Decoded& entry : table) CHECK(to_utf8(entry.bytes) == entry.utf8);

  unsigned high = 0;
  std::string text;
  append_utf16("\xB0\x00\x3D\xD8"s, false, high, text);  // ° and the first half of U+1F525
  append_utf16("\x25\xDD"s, false, high, text);
  CHECK(text == "°\xF0\x9F\x94\xA5");
  append_utf16("\xDC\x00\x00\x41"s, true, high, text);  // a second half alone, then A
  CHECK(text ==
        "°\xF0\x9F\x94\xA5\xEF\xBF\xBD"
        "A");
  CHECK(high == 0);
}

TEST_CASE("what is not text is refused, and so is an encoding that the file contradicts") {
  struct Rejected {
    const char* why;
    std::string bytes;
    std::optional<TextEncoding> given;
    const char* found;
    std::size_t line;
  };
  const std::string table_text = "Time,A1\n0,20.5\n10,22.5\n";
  const Rejected table[] = {
      {"zero bytes", std::string(64, '\0'), {}, "not text", 1},
      {"control characters", "\x01\x02\x03\x04\x05\x06\x07\x08", {}, "not text", 1},
      {"a compressed file", "\x1F\x8B\x08\x00\x00\x00\x00\x00\x00\x03\x2B\xC9\x48"s, {}, "not text", 1},
      {"a marked UTF-16 file of nothing but control characters",
       "\xFF\xFE\x01\x00\x02\x00\x03\x00"s,
       {},
       "not text",
       1},
      {"UTF-16 given for a file with the mark of UTF-8", "\xEF\xBB\xBF" + table_text, TextEncoding::utf_16_le,
       "the encoding utf-16le was given, but the file begins with the mark of utf-8", 1},
      {"UTF-8 given for a file with the mark of UTF-16", "\xFF\xFE" + utf16(table_text, false),
       TextEncoding::utf_8, "the encoding utf-8 was given, but the file begins with the mark of utf-16le", 1},
      {"UTF-8 given for bytes that are none",
       "Time,A1 (\xB0"
       "C)\n0,20.5\n10,22.5\n",
       TextEncoding::utf_8, "the encoding utf-8 was given, but the byte B0 in this line is not UTF-8", 1},
      {"UTF-16 given for text of single bytes", table_text, TextEncoding::utf_16_be,
       "the encoding utf-16be was given, but the file's bytes are utf-8", 1},
  };
  for (const Rejected& entry : table) {
    INFO(entry.why);
    const WrittenLog log{entry.bytes};
    GivenSettings given;
    given.encoding = entry.given;
    const auto read = read_log(log.path(), given);
    REQUIRE_FALSE(read.ok());
    const Problem& problem = read.problems().front();
    INFO(problem.text());
    CHECK(problem.line == entry.line);
    CHECK(problem.what.find(entry.found) != std::string::npos);
    CHECK_FALSE(problem.help.empty());
  }
  // Windows-1252 for plain ASCII says the same: no clash.
  const WrittenLog log{table_text};
  GivenSettings given;
  given.encoding = TextEncoding::windows_1252;
  const auto read = read_log(log.path(), given);
  REQUIRE(read.ok());
  CHECK(read.value().encoding.given());
}

TEST_CASE("a given UTF-8 is refused at the first line with a byte that is none, however far down") {
  const std::string lone = "door \xB0 open";
  struct Rejected {
    const char* why;
    std::string bytes;
    std::size_t line;
    const char* byte;
  };
  const Rejected table[] = {
      {"in the names",
       "Time (s),A1 (\xB0"
       "C)\n0,20.5\n10,22.5\n",
       1, "B0"},
      {"in the heading of a marked file",
       "\xEF\xBB\xBF"
       "Plant: M\xFC"
       "hle\nTime (s),A1 (C)\n0,20.5\n10,22.5\n",
       1, "FC"},
      {"in the third line", rows_with("\n", 5, {{3, lone}}), 3, "B0"},
      {"behind the head", rows_with("\n", 9000, {{8000, lone}}), 8000, "B0"},
      {"lines that end in CR LF", rows_with("\r\n", 9000, {{8000, lone}}), 8000, "B0"},
      {"lines that end in CR", rows_with("\r", 9000, {{8000, lone}}), 8000, "B0"},
      {"the first of several", rows_with("\n", 9000, {{7001, lone}, {7002, lone}, {8999, lone}}), 7001, "B0"},
      {"behind characters that are UTF-8", rows_with("\n", 9000, {{2, "für"}, {7000, "20 °C"}, {8500, lone}}),
       8500, "B0"},
      {"overlong", rows_with("\n", 9000, {{8000, "\xC0\xAF"}}), 8000, "C0"},
      {"half a pair", rows_with("\n", 9000, {{8000, "\xED\xA0\x80"}}), 8000, "ED"},
      {"a sequence that the line's end cuts", rows_with("\n", 9000, {{8000, "\xE2\x84"}}), 8000, "E2"},
      {"a sequence that the file's end cuts", rows_with("\n", 9000, {}) + "90000,20.5,\xE2\x84", 9002, "E2"},
      {"a marked file", "\xEF\xBB\xBF" + rows_with("\n", 9000, {{8000, lone}}), 8000, "B0"},
  };
  for (const Rejected& entry : table) {
    const WrittenLog log{entry.bytes};
    GivenSettings given;
    given.encoding = TextEncoding::utf_8;
    for (const unsigned threads : {1U, 2U})
      for (const std::size_t block_bytes : {std::size_t{4} << 10, std::size_t{256} << 10}) {
        INFO(entry.why << ", " << threads << " threads, blocks of " << block_bytes);
        const auto read = read_log(log.path(), given, {threads, block_bytes, false});
        REQUIRE_FALSE(read.ok());
        const Problem& problem = read.problems().front();
        INFO(problem.text());
        CHECK(problem.file == log.path());
        CHECK(problem.line == entry.line);
        CHECK(problem.what == "the encoding utf-8 was given, but the byte " + std::string{entry.byte} +
                                  " in this line is not UTF-8");
        CHECK_FALSE(problem.help.empty());
      }
  }
}

TEST_CASE("what is UTF-8 throughout is read as given, and a lone byte where nothing was given") {
  GivenSettings utf_8;
  utf_8.encoding = TextEncoding::utf_8;
  const WrittenLog whole{rows_with("\n", 9000, {{2, "für"}, {8000, "20 °C \xF0\x9F\x94\xA5"}})};
  const auto as_given = read_log(whole.path(), utf_8, {2, std::size_t{4} << 10, false});
  REQUIRE(as_given.ok());
  CHECK(as_given.value().rows() == 9000);
  CHECK(as_given.value().encoding.given());

  const WrittenLog mixed{rows_with("\n", 9000, {{8000, "door \xB0 open"}})};
  const auto as_found = read_log(mixed.path(), {}, {2, std::size_t{4} << 10, false});
  REQUIRE(as_found.ok());
  CHECK(as_found.value().rows() == 9000);
  CHECK_FALSE(as_found.value().encoding.given());
}
