// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/json/json_writer.h"

#include <bit>
#include <cmath>
#include <limits>
#include <random>
#include <utility>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using soakwright::JsonWriter;

namespace {

std::string text_of(std::string_view value) {
  JsonWriter json;
  json.text(value);
  return json.str();
}

std::string number_of(double value) {
  JsonWriter json;
  json.number(value);
  return json.str();
}

}  // namespace

TEST_CASE("numbers are the shortest text that reads back") {
  const std::pair<double, const char*> rows[] = {
      {0.0, "0"},
      {15828.0, "15828"},
      {139.2, "139.2"},
      {-0.1, "-0.1"},
      {0.1 + 0.2, "0.30000000000000004"},
      {1e-7, "1e-07"},
      {1e300, "1e+300"},
      {5e-324, "5e-324"},
      {std::numeric_limits<double>::quiet_NaN(), "null"},
      {std::numeric_limits<double>::infinity(), "null"},
  };
  for (const auto& [value, expected] : rows) CHECK(number_of(value) == expected);
}

TEST_CASE("any finite double comes back from the text to the last bit") {
  // nlohmann-json's parser is the evaluate.
  std::mt19937_64 random(20310402);
  for (int i = 0; i < 20'000; ++i) {
    const auto value = std::bit_cast<double>(random());
    if (!std::isfinite(value)) continue;
    const auto back = nlohmann::json::parse(number_of(value)).get<double>();
    REQUIRE(std::bit_cast<std::uint64_t>(back) == std::bit_cast<std::uint64_t>(value));
  }
}

TEST_CASE("text comes out as valid UTF-8, whatever goes in") {
  // Byte sequences from the Unicode Standard, table 3-7, and what lies beside each of its rows.
  const std::pair<std::string_view, const char*> rows[] = {
      {"TC1 \xC2\xB0"
       "C",
       "\"TC1 °C\""},
      {"\xE2\x82\xAC", "\"€\""},
      {"\xF0\x9F\x94\xA5", "\"🔥\""},
      {"\xB0", "\"\xEF\xBF\xBD\""},
      {"\xC0\x80", "\"\xEF\xBF\xBD\xEF\xBF\xBD\""},
      {"\xE0\x9F\xBF", "\"\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\""},
      {"\xED\xA0\x80", "\"\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\""},
      {"\xF4\x90\x80\x80", "\"\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD\""},
      {"\xE2\x82", "\"\xEF\xBF\xBD\xEF\xBF\xBD\""},
      {"a\"b\\c\n\r\t", R"("a\"b\\c\n\r\t")"},
      {std::string_view("\0\x1F\x7F", 3), R"("\u0000\u001f\u007f")"},
  };
  for (const auto& [value, expected] : rows) CHECK(text_of(value) == expected);
}

TEST_CASE("random bytes become JSON that a strict parser takes") {
  std::mt19937 random(20310403);
  for (int i = 0; i < 2'000; ++i) {
    std::string bytes(random() % 20, ' ');
    for (char& c : bytes) c = static_cast<char>(random());
    REQUIRE_NOTHROW(nlohmann::json::parse(text_of(bytes)));
  }
}

TEST_CASE("objects and arrays are written in lines or in one line, as told") {
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::lines);
  json.key("a");
  json.begin_array();
  json.integer(1);
  json.boolean(true);
  json.null();
  json.end_array();
  json.key("b");
  json.begin_array(JsonWriter::Layout::lines);
  json.begin_object();
  json.key("c");
  json.number(0.5);
  json.key("d");
  json.text("e");
  json.end_object();
  json.end_array();
  json.key("f");
  json.begin_array(JsonWriter::Layout::lines);
  json.end_array();
  json.end_object();
  CHECK(json.str() == R"({
  "a": [1, true, null],
  "b": [
    {"c": 0.5, "d": "e"}
  ],
  "f": []
})");
}
