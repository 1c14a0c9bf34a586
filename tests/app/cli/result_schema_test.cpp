// SPDX-License-Identifier: GPL-3.0-or-later
// The published schema of the result (resources/manual/result.schema.json, JSON Schema 2020-12) and what the
// program writes: each sample's result is valid, and results that are wrong are not.
#include <filesystem>
#include <regex>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "tests/app/cli/run_program.h"

using nlohmann::json;
namespace fs = std::filesystem;

namespace {

/// The keywords that the schema uses (JSON Schema 2020-12, core and validation). Any other is an error, so
/// that nothing is in the schema that is not checked.
class Schema {
 public:
  explicit Schema(json whole) : whole_(std::move(whole)) {}

  /// What is wrong, with its place; empty if nothing is.
  [[nodiscard]] std::vector<std::string> faults(const json& value) const {
    std::vector<std::string> found;
    look(whole_, value, "", found);
    return found;
  }

 private:
  using Faults = std::vector<std::string>;

  static bool is_type(const json& value, const std::string& type) {
    if (type == "null") return value.is_null();
    if (type == "boolean") return value.is_boolean();
    if (type == "string") return value.is_string();
    if (type == "number") return value.is_number();
    if (type == "integer") return value.is_number_integer();
    if (type == "array") return value.is_array();
    if (type == "object") return value.is_object();
    FAIL("the schema names an unknown type: " << type);
    return false;
  }

  void look(const json& schema, const json& value, const std::string& at, Faults& found) const {
    const auto wrong = [&](const std::string& what) { found.push_back(at + ": " + what); };
    for (const auto& [key, rule] : schema.items()) {
      if (key == "$schema" || key == "title" || key == "description" || key == "$defs") continue;
      if (key == "$ref") {
        look(whole_["$defs"][rule.get<std::string>().substr(std::string("#/$defs/").size())], value, at,
             found);
      } else if (key == "type") {
        const std::vector<json> types =
            rule.is_array() ? rule.get<std::vector<json>>() : std::vector<json>{rule};
        bool fits = false;
        for (const json& type : types) fits = fits || is_type(value, type);
        if (!fits) wrong("is not " + rule.dump());
      } else if (key == "enum") {
        if (std::find(rule.begin(), rule.end(), value) == rule.end()) wrong("is not one of " + rule.dump());
      } else if (key == "const") {
        if (value != rule) wrong("is not " + rule.dump());
      } else if (key == "minimum") {
        if (value.is_number() && value < rule) wrong("is less than " + rule.dump());
      } else if (key == "pattern") {
        if (value.is_string() &&
            !std::regex_search(value.get<std::string>(), std::regex(rule.get<std::string>())))
          wrong("does not match " + rule.dump());
      } else if (key == "minItems") {
        if (value.is_array() && value.size() < rule) wrong("is too short");
      } else if (key == "maxItems") {
        if (value.is_array() && value.size() > rule) wrong("is too long");
      } else if (key == "items") {
        for (std::size_t i = 0; value.is_array() && i < value.size(); ++i)
          look(rule, value[i], at + '/' + std::to_string(i), found);
      } else if (key == "required") {
        for (const json& name : rule)
          if (value.is_object() && !value.contains(name.get<std::string>())) wrong("lacks " + name.dump());
      } else if (key == "properties") {
        for (const auto& [name, inner] : rule.items())
          if (value.is_object() && value.contains(name)) look(inner, value[name], at + '/' + name, found);
      } else if (key == "additionalProperties") {
        if (!value.is_object()) continue;
        for (const auto& [name, inner] : value.items()) look(rule, inner, at + '/' + name, found);
      } else if (key == "anyOf") {
        bool fits = false;
        Faults all;
        for (const json& one : rule) {
          Faults inner;
          look(one, value, at, inner);
          fits = fits || inner.empty();
          all.insert(all.end(), inner.begin(), inner.end());
        }
        if (!fits) found.insert(found.end(), all.begin(), all.end());
      } else {
        FAIL("the schema has a keyword that is not checked: " << key);
      }
    }
  }

  /// Keys of `value` that the schema does not describe, with their places.
 public:
  [[nodiscard]] std::vector<std::string> undescribed(const json& value) const {
    std::vector<std::string> found;
    describe(whole_, value, "", found);
    return found;
  }

 private:
  void describe(const json& schema, const json& value, const std::string& at, Faults& found) const {
    if (schema.contains("$ref"))
      return describe(
          whole_["$defs"][schema["$ref"].get<std::string>().substr(std::string("#/$defs/").size())], value,
          at, found);
    if (schema.contains("anyOf")) {
      for (const json& one : schema["anyOf"]) {
        Faults inner;
        look(one, value, at, inner);
        if (inner.empty()) return describe(one, value, at, found);
      }
      return;
    }
    const json properties = schema.value("properties", json::object());
    if (value.is_object() && !schema.contains("additionalProperties"))
      for (const auto& [name, inner] : value.items()) {
        if (properties.contains(name))
          describe(properties[name], inner, at + '/' + name, found);
        else
          found.push_back(at + '/' + name);
      }
    if (value.is_array() && schema.contains("items"))
      for (std::size_t i = 0; i < value.size(); ++i)
        describe(schema["items"], value[i], at + '/' + std::to_string(i), found);
  }

  json whole_;
};

const Schema& schema() {
  static const Schema read(json::parse(text_of(source_file("resources/manual/result.schema.json"))));
  return read;
}

std::string first_of(const std::vector<std::string>& faults) { return faults.empty() ? "" : faults.front(); }

}  // namespace

TEST_CASE("the result of each sample, checked and inspected, is as the published schema says") {
  std::size_t results = 0;
  for (const auto& entry : fs::recursive_directory_iterator(source_file("sample-logs"))) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with("job") || entry.path().extension() != ".toml") continue;
    for (const char* command : {"check", "inspect"}) {
      INFO(command << ' ' << entry.path().string());
      const Ran ran = run_soakwright({command, "--job", entry.path().string(), "--json", "-"});
      REQUIRE(ran.exit_code <= 2);
      const json result = json::parse(ran.out);
      CHECK(first_of(schema().faults(result)) == "");
      CHECK(first_of(schema().undescribed(result)) == "");
      ++results;
    }
  }
  CHECK(results >= 14);
}

TEST_CASE("the result of a job with every table about the heat is as the published schema says") {
  const TemporaryFolder folder;
  const std::string log = source_file("sample-logs/w-121-bake-out/seam-bake-out.txt");
  const std::string procedure = source_file("sample-logs/w-121-bake-out/htp-031.toml");
  const std::string job = folder.with(
      "job.toml",
      "soakwright = \"job 1\"\nminimum_preheat = \"AWS D1.1 category B\"\n[[weld]]\nnumber = \"W-121\"\n"
      "thickness = \"52 mm\"\n[composition]\nC = 0.16\nMn = 1.2\n"
      "[hydrogen]\nshape = \"cylinder\"\ndiameter = \"80 mm\"\nd0 = \"4.57e-7 m2/s\"\n"
      "activation_energy = \"22.3 kJ/mol\"\ntemperature_min = \"103 C\"\ntemperature_max = \"450 C\"\n"
      "[qualified]\nholds = [[\"340 C\", \"4 h\"], [\"320 C\", \"2 h\"]]\nsource = \"PQR 12\"\n"
      "[[band]]\nweld = \"W-121\"\ndiameter = \"323.9 mm\"\nwall = \"25.4 mm\"\nsoak_band = \"120 mm\"\n");
  for (const std::vector<std::string>& words : std::vector<std::vector<std::string>>{
           {"check", log, "--procedure", procedure, "--job", job, "--json", "-"},
           {"inspect", log, "--job", job, "--json", "-"}}) {
    const Ran ran = run_soakwright(words);
    INFO(ran.err);
    REQUIRE(ran.exit_code <= 2);
    const json result = json::parse(ran.out);
    CHECK(first_of(schema().faults(result)) == "");
    CHECK(first_of(schema().undescribed(result)) == "");
    // What needs no evaluation is in both.
    CHECK(result["heat"]["preheat"].size() == 1);
    CHECK(result["heat"]["bands"].size() == 1);
    CHECK(result["heat"]["hydrogen"].is_null() == (words[0] == "inspect"));
  }
}

TEST_CASE("a result with a fault is not what the schema says") {
  const json good =
      json::parse(run_soakwright({"check", "--job",
                                  source_file("sample-logs/w-118-late-and-dipping/job.toml"), "--json", "-"})
                      .out);
  REQUIRE(first_of(schema().faults(good)) == "");
  struct Row {
    const char* at;
    json value;
  };
  for (const Row& row : std::vector<Row>{{"/soakwright", "result 2"},
                                         {"/verdict", "passed"},
                                         {"/log/sha256", "ABC"},
                                         {"/log/rows", -1},
                                         {"/log/rows", "many"},
                                         {"/log/channels/0/unit", "R"},
                                         {"/log/reading/encoding/by", "guessed"},
                                         {"/requirements/0/unit", "K"},
                                         {"/requirements/0/limit", "650"},
                                         {"/requirements/0/id", "stage.rate"},
                                         {"/findings/0/verdict", "met"},
                                         {"/stages/0/in_range", json::array({json::array({1.0})})},
                                         {"/welds", json::object()}}) {
    json bad = good;
    bad[json::json_pointer(row.at)] = row.value;
    INFO(row.at << " = " << row.value.dump());
    CHECK_FALSE(schema().faults(bad).empty());
  }
  for (const char* key : {"log", "requirements", "verdict", "first_deviation"}) {
    json bad = good;
    bad.erase(key);
    INFO(key);
    CHECK_FALSE(schema().faults(bad).empty());
  }
}
