// SPDX-License-Identifier: GPL-3.0-or-later
// The table of published values in the manual (resources/manual/validation.md): published values are typed
// here, each with its source; what stands beside them is computed. The page must have the table made here.
//
// With SOAKWRIGHT_WRITE_MANUAL in the environment the test writes the table into the page.
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "core/evaluate/band_positions.h"
#include "core/evaluate/weld_case.h"
#include "core/measure/hydrogen.h"
#include "core/measure/rates/window_slopes.h"
#include "core/measure/tempering.h"
#include "core/procedure/heat/composition.h"
#include "core/record/its90_reference.h"
#include "core/uncertainty/budget.h"
#include "core/uncertainty/tolerance_table.h"
#include "tests/core/measure/made_procedure.h"
#include "tests/core/measure/made_record.h"
#include "tests/core/measure/strd_norris.h"
#include "tests/core/procedure/shipped_rules.h"
#include "tests/core/record/its90_points.h"

namespace soakwright {
namespace {

struct Row {
  std::string what;
  std::string source;
  double published = 0.0;
  int decimals = 0;  ///< of the published value
  double ours = 0.0;
  std::string unit;
  double allowed = 0.0;  ///< difference; where not given, half the last published digit
};

std::string decimal(double value, int decimals) {
  const std::string text = fmt::format("{:.{}f}", value, decimals);
  return text.starts_with('-') ? "−" + text.substr(1) : text;
}

/// To two digits; what is below a billionth of the value is no difference.
std::string difference_text(const Row& row) {
  const double difference = row.ours - row.published;
  if (std::fabs(difference) <= 1e-9 * std::fabs(row.published)) return "0";
  const double size = std::floor(std::log10(std::fabs(difference)));
  return decimal(difference, std::max(1 - static_cast<int>(size), 0));
}

std::string line_of(const Row& row) {
  const std::string unit = row.unit.empty() ? "" : " " + row.unit;
  const int more = row.decimals < 10 ? 1 : 0;  // beyond that a double has none
  return "| " + row.what + " | " + row.source + " | " + decimal(row.published, row.decimals) + unit + " | " +
         decimal(row.ours, row.decimals + more) + unit + " | " + difference_text(row) + " |\n";
}

/// Of each type the point of the published table at which we differ most.
void add_emf(std::vector<Row>& rows) {
  std::map<ThermocoupleType, std::pair<const its90::Point*, int>> widest;
  const auto difference = [](const its90::Point& point) {
    return std::fabs(emf_mv(point.type, point.celsius).value() - point.mv);
  };
  for (const its90::Point& point : its90::kPoints) {
    auto& [worst, count] = widest[point.type];
    ++count;
    if (worst == nullptr || difference(point) > difference(*worst)) worst = &point;
  }
  for (const auto& [type, found] : widest) {
    const its90::Point& point = *found.first;
    rows.push_back({fmt::format("emf of type {} at {} °C, the widest of {} points", letter_of(type),
                                decimal(point.celsius, 0), found.second),
                    "NIST Monograph 175 (1993)", point.mv, 3, emf_mv(type, point.celsius).value(), "mV",
                    0.0005001});
  }
}

template <typename Points>
IntegerSamples samples_of(const Points& x, const Points& y, double tick_s, double unit_k) {
  IntegerSamples samples;
  samples.tick_s = tick_s;
  samples.unit_k = unit_k;
  samples.own_ticks = x;
  samples.units = y;
  samples.ticks = samples.own_ticks;
  return samples;
}

void add_slopes(std::vector<Row>& rows) {
  std::vector<std::int64_t> x, y;
  for (const auto& point : strd_norris::kPoints) {
    x.push_back(point.x);
    y.push_back(point.y);
  }
  const IntegerSamples norris = samples_of(x, y, 360.0, 0.1);
  const auto fit = slope_over(norris, 0, norris.ticks.size(), {0, 1}).value();
  const char* const nist = "NIST StRD, dataset Norris, certified";
  rows.push_back(
      {"slope of a straight-line fit", nist, strd_norris::kSlope, 14, fit.slope_c_per_h, "", 1e-13});
  rows.push_back({"its standard deviation", nist, strd_norris::kSlopeDeviation, 18,
                  strd_norris::kResidualDeviation / fit.root_sxx_h, "", 1e-16});
  // JCGM 100:2008, H.3, table H.6, as in window_slopes_test.cpp.
  const std::vector<std::int64_t> t = {21521, 22012, 22512, 23003, 23507, 23999,
                                       24513, 25002, 25503, 26010, 26511};
  const std::vector<std::int64_t> b = {-171, -169, -166, -159, -164, -165, -156, -157, -159, -161, -160};
  const IntegerSamples thermometer = samples_of(t, b, 3.6, 0.001);
  rows.push_back({"slope of a thermometer's correction", "JCGM 100:2008, H.3, from memory", 0.00218, 5,
                  slope_over(thermometer, 0, t.size(), {0, 1}).value().slope_c_per_h, ""});
}

void add_hydrogen(std::vector<Row>& rows) {
  struct Case {
    HydrogenShape shape;
    const char* name;
    double fourier, mean, centre;
  };
  const Case cases[] = {{HydrogenShape::plate, "plate", 0.1, 0.64318, 0.94931},
                        {HydrogenShape::plate, "plate", 0.5, 0.23605, 0.37078},
                        {HydrogenShape::plate, "plate", 1.0, 0.06874, 0.10798},
                        {HydrogenShape::plate, "plate", 2.0, 0.00583, 0.00916},
                        {HydrogenShape::cylinder, "cylinder", 0.1, 0.39418, 0.84836},
                        {HydrogenShape::cylinder, "cylinder", 0.5, 0.03838, 0.08889}};
  const char* const crank = "J. Crank, The Mathematics of Diffusion";
  for (const Case& c : cases) {
    const HydrogenShare left = hydrogen_left(c.shape, c.fourier);
    rows.push_back({fmt::format("hydrogen left in a {}, F = {}, mean", c.name, c.fourier), crank, c.mean, 5,
                    left.mean, "", 0.000006});
    rows.push_back({fmt::format("hydrogen left in a {}, F = {}, mid-section", c.name, c.fourier), crank,
                    c.centre, 5, left.centre, "", 0.000006});
  }
  rows.push_back({"hydrogen given off by a plate, F = 0.125", "published to twelve digits", 0.398927989885,
                  12, 1.0 - hydrogen_left(HydrogenShape::plate, 0.125).mean, ""});
}

void add_tempering(std::vector<Row>& rows) {
  const char* const formula = "worked from Hollomon and Jaffe (1945), C = 20";
  const auto p = [](double celsius, double hours) {
    return parameter_of(celsius, hours, kTemperingConstant);
  };
  rows.push_back({"P of 600 °C for 1 h", formula, 17.463, 3, p(600, 1), "", 1e-9});
  rows.push_back({"P of 650 °C for 2 h", formula, 18.741, 3, p(650, 2), ""});
  rows.push_back({"P of 720 °C for 2 h", formula, 20.162, 3, p(720, 2), ""});
  rows.push_back({"500 °C for 1000 h, equivalent at 530 °C", "published example of the equivalence", 138, 0,
                  equivalent_hours(p(500, 1000), 530, kTemperingConstant), "h"});
  const std::vector<LevelHold> first{{730, 4}, {675, 40}, {710, 32}};
  const std::vector<LevelHold> second{{750, 3}, {670, 50}, {710, 32}};
  const char* const sum = "published, method and zero not stated";
  rows.push_back({"1000 P of 730 °C/4 h, 675 °C/40 h, 710 °C/32 h, referred to 730 °C", sum, 21333, 0,
                  1000 * referred_sum(first, 730, kTemperingConstant).value(), "", 5});
  rows.push_back({"the same, carried along", sum, 21333, 0,
                  1000 * carried_along(first, kTemperingConstant).value(), "", 15});
  rows.push_back({"1000 P of 750 °C/3 h, 670 °C/50 h, 710 °C/32 h, referred to 750 °C", sum, 21418, 0,
                  1000 * referred_sum(second, 750, kTemperingConstant).value(), "", 5});
  rows.push_back({"the same, carried along", sum, 21418, 0,
                  1000 * carried_along(second, kTemperingConstant).value(), "", 20});
}

void add_tolerances(std::vector<Row>& rows) {
  using Type = ThermocoupleType;
  using Kind = Tolerance::Kind;
  struct Case {
    Type type;
    Kind kind;
    double celsius, half_width;
    int decimals;
  };
  const Case cases[] = {{Type::K, Kind::class_1, 620, 2.48, 2},  {Type::K, Kind::class_2, 620, 4.65, 2},
                        {Type::K, Kind::special, 620, 2.48, 2},  {Type::N, Kind::class_2, 300, 2.5, 1},
                        {Type::J, Kind::class_1, 700, 2.8, 1},   {Type::T, Kind::class_2, 350, 2.625, 3},
                        {Type::S, Kind::class_1, 1300, 1.6, 1},  {Type::B, Kind::class_2, 800, 2.0, 1},
                        {Type::B, Kind::standard, 1000, 5.0, 1}, {Type::E, Kind::standard, 600, 3.0, 1}};
  for (const Case& c : cases)
    rows.push_back(
        {fmt::format("tolerance of type {}, {}, at {} °C", type_name(c.type), class_name(c.kind), c.celsius),
         c.kind == Kind::standard || c.kind == Kind::special ? "ASTM E230" : "IEC 60584-1", c.half_width,
         c.decimals, published_tolerance(c.type, c.kind).value().at(c.celsius).value(), "°C"});
}

void add_rules(std::vector<Row>& rows) {
  constexpr auto kHeat = RampStage::Direction::heat;
  constexpr auto kCool = RampStage::Direction::cool;
  constexpr double kPerKelvin = 9.0 / 5.0;
  const auto made = [](const char* rule, Thickness thickness, const char* material = "") {
    return accepted(draft_of(rule, thickness, material)).procedure;
  };
  const char* const ucs = "asme-viii-1-ucs-56";
  const char* const ucs_text = "worked from ASME BPVC VIII-1, UCS-56";
  const char* const p1 = "P-No. 1 Gr. 1";
  for (const auto& [in, heat, cool] :
       {std::tuple{1.0, 400.0, 500.0}, {2.0, 200.0, 250.0}, {5.0, 100.0, 100.0}}) {
    rows.push_back({fmt::format("UCS-56(d), heating, {} in", in), ucs_text, heat, 0,
                    rate_of(made(ucs, inches(in), p1), kHeat) * kPerKelvin, "°F/h"});
    rows.push_back({fmt::format("UCS-56(d), cooling, {} in", in), ucs_text, cool, 0,
                    rate_of(made(ucs, inches(in), p1), kCool) * kPerKelvin, "°F/h"});
  }
  for (const auto& [in, minutes] : {std::pair{1.5, 90.0}, {3.0, 135.0}, {6.0, 180.0}})
    rows.push_back({fmt::format("UCS-56, hold of P-No. 1, {} in", in), ucs_text, minutes, 0,
                    minutes_of(made(ucs, inches(in), p1)), "min"});
  rows.push_back({"B31.1 132.5, 1 in: 600 °F/h in °C/h", "worked from ASME B31.1 (2018)", 333.3, 1,
                  rate_of(made("asme-b31-1-132-5", inches(1)), kHeat), "°C/h"});
  rows.push_back({"B31.3 table 331.1.1, hold of P-No. 4, 75 mm", "worked from ASME B31.3-2016", 135, 0,
                  minutes_of(made("asme-b31-3-331-1", mm(75), "P-No. 4")), "min"});
  const char* const en = "worked from EN 13445-4, from memory";
  rows.push_back(
      {"EN 13445-4, heating, 50 mm", en, 110, 0, rate_of(made("en-13445-4", mm(50)), kHeat), "°C/h"});
  rows.push_back(
      {"EN 13445-4, cooling, 50 mm", en, 137.5, 1, rate_of(made("en-13445-4", mm(50)), kCool), "°C/h"});
  rows.push_back({"AWS D1.1, hold, 1.1 in", "worked from AWS D1.1, from memory", 75, 0,
                  minutes_of(made("aws-d1-1-stress-relief-si", inches(1.1), "carbon and low-alloy steel")),
                  "min"});
}

void add_steel_and_bands(std::vector<Row>& rows) {
  const auto found = carbon_equivalents(
      job_of(
          "composition = { C = 0.16, Si = 0.3, Mn = 1.2, Cr = 0.1, Mo = 0.05, Ni = 0.2, Cu = 0.25, V = 0.01, "
          "B = 0.0003 }\n")
          .composition.value());
  rows.push_back({"CE(IIW) of the composition in the manual", "worked from the formula", 0.422, 3,
                  found.at(0).percent.value(), "%"});
  rows.push_back({"CET of the same", "worked from the formula", 0.3075, 4, found.at(1).percent.value(), "%"});
  rows.push_back(
      {"Pcm of the same", "worked from Ito and Bessyo (1968)", 0.25667, 5, found.at(2).percent.value(), "%"});
  const Record record = MadeRecord::every(60, 5).course("TC1", {{0, 20}}).at("TC1", 1.2).record();
  const Procedure procedure = procedure_of("[[stage]]\nkind = \"cool\"\nrate_max = 100\n");
  const auto bands =
      bands_of(job_of("[[band]]\ndiameter = \"323.9 mm\"\nwall = \"25.4 mm\"\n"), &procedure, record);
  rows.push_back({"L = 2·√(R·t) of a pipe of 323.9 × 25.4 mm", "worked from AWS D10.10 (2021), from memory",
                  117.8, 1, bands.at(0).edge_distance_mm, "mm"});
}

std::vector<Row> published_values() {
  std::vector<Row> rows;
  add_emf(rows);
  add_slopes(rows);
  add_hydrogen(rows);
  add_tempering(rows);
  add_tolerances(rows);
  add_rules(rows);
  add_steel_and_bands(rows);
  return rows;
}

/// ILAC-G8:09/2019, normal law: probability that the work is at least at its limit.
std::string decision_table() {
  struct Case {
    double reading, conforms;
  };
  constexpr double kLimit = 595.0;
  constexpr double kU = 2.0;  ///< standard uncertainty; the expanded one is twice that
  const Requirement requirement = requirement_for(RequirementKind::edge, 1, std::nullopt, kLimit);
  std::string table = "| reading | published probability | simple | guarded |\n| --- | --- | --- | --- |\n";
  const auto word = [](Verdict verdict) {
    return verdict == Verdict::met ? "met" : verdict == Verdict::not_met ? "not met" : "inconclusive";
  };
  for (const Case& c : {Case{593, 0.1587}, {595, 0.5}, {597, 0.8413}, {599, 0.9772}})
    table += fmt::format("| {} °C | {} | {} | {} |\n", c.reading, c.conforms,
                         word(held_to_limit(requirement, c.reading, 0.0)),
                         word(held_to_limit(requirement, c.reading, 2.0 * kU)));
  return table;
}

const std::filesystem::path kPage =
    std::filesystem::path(SOAKWRIGHT_SOURCE_DIR) / "resources" / "manual" / "validation.md";

/// Puts `table` between the two marks of the page; the page as it is where a mark is missing.
std::string with_table(const std::string& page, const std::string& mark, const std::string& table) {
  const std::string open = "<!-- made: " + mark + " -->\n";
  const std::string close = "<!-- end: " + mark + " -->";
  const std::size_t begin = page.find(open);
  const std::size_t end = page.find(close);
  if (begin == std::string::npos || end == std::string::npos) return page;
  return page.substr(0, begin + open.size()) + table + page.substr(end);
}

}  // namespace

TEST_CASE("every published value of the manual's table is met") {
  for (const Row& row : published_values()) {
    const double allowed = row.allowed > 0.0 ? row.allowed : 0.5000001 * std::pow(10.0, -row.decimals);
    INFO(row.what << ", " << row.source);
    CHECK(std::fabs(row.ours - row.published) <= allowed);
  }
}

TEST_CASE("the manual's table of published values is the one that the program makes") {
  std::string table =
      "| what | source | published | Soakwright | difference |\n| --- | --- | --- | --- | --- |\n";
  for (const Row& row : published_values()) table += line_of(row);
  std::ifstream file(kPage, std::ios::binary);
  const std::string page{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  const std::string made = with_table(with_table(page, "values", table), "decisions", decision_table());
  CHECK(made.find(table) != std::string::npos);
  CHECK(made.find(decision_table()) != std::string::npos);
  if (std::getenv("SOAKWRIGHT_WRITE_MANUAL") != nullptr) std::ofstream(kPage, std::ios::binary) << made;
  CHECK(made == page);
}

}  // namespace soakwright
