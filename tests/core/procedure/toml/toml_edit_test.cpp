// SPDX-License-Identifier: GPL-3.0-or-later
// Edits of a TOML text: what is not edited stays to the byte. TOML 1.0 for what is a value; the rest is our
// own rule.
#include "core/procedure/toml/toml_edit.h"

#include <catch2/catch.hpp>

#include "core/procedure/toml/toml_shown.h"

using namespace soakwright;

namespace {

const std::string kText =
    "# head\nnumber = \"1\"  # of the book\n\n"
    "# the ramp\n[[stage]]\nkind = \"heat\"\nrate_max = 90 # agreed\n\n"
    "# the soak\n[[stage]]\nkind = \"hold\"\nlow = 590\n\n"
    "[record]\ngap_max = \"5 min\"\n";

std::string ok(const Result<std::string>& result) {
  REQUIRE(result.ok());
  return result.value();
}

std::string replaced(std::string text, const std::string& before, const std::string& after) {
  const std::size_t at = text.find(before);
  REQUIRE(at != std::string::npos);
  return text.replace(at, before.size(), after);
}

}  // namespace

TEST_CASE("A key of any table is set in its place and its comment stays") {
  CHECK(ok(with_toml_key(kText, {"stage", 0}, "rate_max", "100", "p")) == replaced(kText, "90", "100"));
  CHECK(ok(with_toml_key(kText, {"stage", 1}, "high", "620", "p")) ==
        replaced(kText, "low = 590\n", "low = 590\nhigh = 620\n"));
  CHECK(ok(with_toml_key(kText, {"record"}, "gap_max", "\"2 min\"", "p")) ==
        replaced(kText, "5 min", "2 min"));
  CHECK(ok(with_toml_key(kText, {}, "title", "\"T\"", "p")) ==
        replaced(kText, "# of the book\n", "# of the book\ntitle = \"T\"\n"));
  CHECK(ok(with_toml_key(kText, {"evaluation"}, "rate_window", "\"5 min\"", "p")) ==
        kText + "\n[evaluation]\nrate_window = \"5 min\"\n");
}

TEST_CASE("A key that is taken out leaves its comment") {
  CHECK(ok(with_toml_key(kText, {"stage", 0}, "rate_max", std::nullopt, "p")) ==
        replaced(kText, "rate_max = 90 # agreed", "# agreed"));
  CHECK(ok(with_toml_key(kText, {"stage", 7}, "rate_max", "1", "p")) == kText);
}

TEST_CASE("An entry is added behind the last, and goes with the comments above it") {
  CHECK(ok(with_toml_entry(kText, "stage", {{"kind", "\"cool\""}}, "p")) ==
        replaced(kText, "low = 590\n", "low = 590\n\n[[stage]]\nkind = \"cool\"\n"));
  CHECK(ok(without_toml_entry(kText, "stage", 0, "p")) ==
        replaced(kText, "# the ramp\n[[stage]]\nkind = \"heat\"\nrate_max = 90 # agreed\n\n", ""));
  CHECK(ok(without_toml_entry(kText, "stage", 2, "p")) == kText);
}

TEST_CASE("A table under its header goes with the comments above it; any other way it stays") {
  const std::string text =
      "a = 1\n\n# of the steel\n[composition]\nC = 0.2 # by the mill\n\n[record]\nb = 2\n";
  CHECK(ok(without_toml_table(text, "composition", "p")) == "a = 1\n\n[record]\nb = 2\n");
  CHECK(ok(without_toml_table(text, "hydrogen", "p")) == text);
  const std::string braces = "composition = { C = 0.2 }\n";
  CHECK(ok(without_toml_table(braces, "composition", "p")) == braces);
}

TEST_CASE("Entries change places with the comments above them") {
  const std::string swapped = ok(with_toml_entries_swapped(kText, "stage", 0, "p"));
  CHECK(swapped ==
        "# head\nnumber = \"1\"  # of the book\n\n"
        "# the soak\n[[stage]]\nkind = \"hold\"\nlow = 590\n\n"
        "# the ramp\n[[stage]]\nkind = \"heat\"\nrate_max = 90 # agreed\n\n"
        "[record]\ngap_max = \"5 min\"\n");
  CHECK(ok(with_toml_entries_swapped(swapped, "stage", 0, "p")) == kText);
  CHECK(ok(with_toml_entries_swapped(kText, "stage", 1, "p")) == kText);
}

TEST_CASE("Entries in braces are removed and moved too") {
  const std::string text = "stage = [{ kind = \"heat\" }, { kind = \"hold\" }]\n";
  CHECK(ok(without_toml_entry(text, "stage", 0, "p")) == "stage = [{ kind = \"hold\" }]\n");
  CHECK(ok(without_toml_entry(text, "stage", 1, "p")) == "stage = [{ kind = \"heat\" }]\n");
  CHECK(ok(with_toml_entries_swapped(text, "stage", 0, "p")) ==
        "stage = [{ kind = \"hold\" }, { kind = \"heat\" }]\n");
}

TEST_CASE("An entry without a line end at the end of the text can be moved") {
  const std::string text = "[[stage]]\nkind = \"heat\"\n[[stage]]\nkind = \"hold\"";
  CHECK(ok(with_toml_entries_swapped(text, "stage", 0, "p")) ==
        "[[stage]]\nkind = \"hold\"\n[[stage]]\nkind = \"heat\"");
}

TEST_CASE("Line ends of the text are those of what is added") {
  CHECK(ok(with_toml_key("a = 1\r\n", {}, "b", "2", "p")) == "a = 1\r\nb = 2\r\n");
}

TEST_CASE("Tables are shown in the order of the text, values as they are written") {
  const auto tables = shown_toml_tables(
      "a = \"x\\\"y\"\nr = { over = 1, per = \"mm\" }\n[[stage]]\nlow = 5.50\n[stage.time]\nb = "
      "1\n[record]\n",
      "p");
  REQUIRE(tables.ok());
  REQUIRE(tables.value().size() == 4);
  const TomlShownTable& head = tables.value()[0];
  CHECK(head.find("a")->value == "x\"y");
  CHECK(head.find("r")->value == "{ over = 1, per = \"mm\" }");
  CHECK(tables.value()[1].table == TomlTableName{"r", std::nullopt});
  const TomlShownTable& stage = tables.value()[2];
  CHECK(stage.table == TomlTableName{"stage", 0});
  CHECK(stage.line == 3);
  CHECK(stage.find("low")->value == "5.50");
  CHECK(stage.find("low")->line == 4);
  CHECK(stage.find("time")->spread);
  CHECK(stage.find("none") == nullptr);
  CHECK(tables.value()[3].table == TomlTableName{"record", std::nullopt});
  CHECK(!shown_toml_tables("[[", "p").ok());
}

TEST_CASE("What a person types is a value where TOML reads one, else a text") {
  const std::pair<std::string, std::string> cases[] = {
      {"590", "590"},
      {" 590.5 ", "590.5"},
      {"95 min", "\"95 min\""},
      {"590,5", "\"590,5\""},
      {"2031-09-30", "2031-09-30"},
      {"{ over = 5500, per = \"mm\" }", "{ over = 5500, per = \"mm\" }"},
      {"{ over = ", "\"{ over =\""},
      {"\"38 mm\"", "\"38 mm\""},
      {"5 # no", "\"5 # no\""},
      {"a\"b", "\"a\\\"b\""},
      {"5\ny = 2", "\"5\\u000Ay = 2\""}};
  for (const auto& [typed, written] : cases) {
    INFO(typed);
    CHECK(toml_as_typed(typed) == written);
  }
  CHECK(toml_words("021") == "\"021\"");
}
