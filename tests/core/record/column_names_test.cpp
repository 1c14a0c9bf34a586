// SPDX-License-Identifier: GPL-3.0-or-later
// A thermocouple that is far too cold, comes off or burns open must be evaluated under whatever name; what is
// no thermocouple is kept apart by its own kind of readings. Names and readings are invented; the names are
// of the kind that recorders and their users give (common practice, no source).
#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include <catch2/catch.hpp>
#include <fmt/format.h>

#include "core/record/record_file.h"
#include "core/wording/column_words.h"
#include "tests/core/read/written_log.h"

using namespace soakwright;

namespace {

constexpr int kRows = 300;

/// 20 to 605 °C, held, and down again.
double programme(int row) {
  if (row < 100) return 20.0 + 5.85 * row;
  if (row < 200) return 605.0;
  return 605.0 - 5.0 * (row - 199);
}

/// Up to 0.4 either way, the same on every machine.
double scatter(int row, unsigned seed) {
  unsigned value = static_cast<unsigned>(row) * 2654435761U + seed * 40503U + 12345U;
  value ^= value >> 13U;
  value *= 1274126177U;
  value ^= value >> 16U;
  return 0.8 * ((value % 1000U) / 999.0) - 0.4;
}

using Cell = std::function<std::string(int row)>;
using Number = double (*)(int row);

Cell decimal(Number number) {
  return [number](int row) { return fmt::format("{:.1f}", number(row)); };
}
Cell whole(Number number) {
  return [number](int row) { return fmt::format("{:.0f}", number(row)); };
}

double half(int row) { return 0.5 * programme(row) + scatter(row, 9); }

/// Five thermocouples, and between them one column of another name.
std::string log_with(const std::string& name, const Cell& cell, const std::string& unit) {
  std::string text = fmt::format("Time,TC1{0},TC2{0},{1},TC4{0},TC5{0}\n", unit, name);
  for (int row = 0; row < kRows; ++row) {
    const int minutes = 2 * row;
    text += fmt::format("2031-04-02 {:02}:{:02}:00", 6 + minutes / 60, minutes % 60);
    for (unsigned column = 1; column <= 5; ++column)
      text += "," + (column == 3 ? cell(row) : fmt::format("{:.1f}", programme(row) + scatter(row, column)));
    text += "\n";
  }
  return text;
}

/// Empty if column 4 is an evaluated thermocouple; else what became of it.
std::string lost(const std::string& name, const Cell& cell, const std::string& unit) {
  const WrittenLog log{log_with(name, cell, unit)};
  const auto record = read_record(log.path(), nullptr);
  if (!record) return name + ": " + record.problems().front().text() + "\n";
  for (const Channel& channel : record.value()->channels)
    if (channel.column == 4) return channel.evaluated() ? "" : name + ": not evaluated\n";
  for (const OtherColumn& other : record.value()->other_columns)
    if (other.column == 4) return name + ": " + reason_text(other.why) + "\n";
  return name + ": gone\n";
}

/// Why column 4 is kept apart; "evaluated" where it is not.
std::string why_apart(const std::string& name, const Cell& cell, const std::string& unit) {
  const WrittenLog log{log_with(name, cell, unit)};
  const auto record = read_record(log.path(), nullptr);
  if (!record) return record.problems().front().text();
  for (const OtherColumn& other : record.value()->other_columns)
    if (other.column == 4) return reason_text(other.why);
  return "evaluated";
}

const std::vector<std::string>& names() {
  static const std::vector<std::string> all = {
      // Set points and what else the letters stand for: spools, safety valves, target and plate.
      "SP3", "SP-3", "SP 3", "SP-101", "SP101", "SP-3 spool", "Spool SP-12", "SV-3", "SV-3 nozzle", "SV 12",
      "TC3 target plate", "Target plate", "Target", "Program TC3", "Programme 3", "Set value 3", "Setpoint 3",
      "Set point", "TC3 SP side", "WSP weld", "TC SP",
      // Cold junctions.
      "TC3 terminal end", "Terminal box side", "Terminal 3", "Terminals", "CJ3", "CJ3 joint", "CJ-3",
      "Cold junction", "Cold junction side", "Reference junction weld", "Reference junction", "CJC", "CJT 3",
      // Outputs.
      "TC3 out", "Out 3", "Outer out", "Output 3", "OP3", "OP 3", "Power side", "Power 3", "Valve body TC3",
      "Valve 3", "Valve seat", "Firing side", "Percent 3",
      // Other quantities.
      "Load 3", "Load TC3", "Load", "TC3 load", "Level 2", "TC3 level 2", "RH side", "RH", "LH RH 3",
      "Flow side", "Flow 3", "Pressure vessel TC3", "Pressure vessel", "Pressure part 3", "Press 3",
      "Press frame", "Vacuum vessel", "Vacuum 3", "Flux box", "Heat flux plate", "Current 3", "Speed",
      "Weight 3", "Strain side", "Position 3", "Density", "Battery room",
      // Alarms and events.
      "TC3 alarm", "Alarm 3", "Event 3", "Mark 3", "Marker", "TC3 status", "State line", "Mode 3",
      "Relay wall", "Fault side", "TC3 error",
      // Texts and counters.
      "TC3 ID", "ID 3", "ID side", "Batch TC", "Batch 3", "Serial 3", "Note 3", "Remark", "Operator side",
      "No 3", "Nr 3", "No. 3", "Number 3", "Sample 3", "Sample", "Scan 3", "Index", "Record 3", "Row 3",
      "Count 3", "#"};
  return all;
}

/// Letters behind a name that are units elsewhere: the type of the thermocouple, or where it sits.
const std::vector<std::string>& names_with_letters() {
  static const std::vector<std::string> all = {
      "TC3 (N)",  "TC3 (S)",  "TC3 (K)", "TC3 (mm)", "TC3 (in)", "TC3 (W)", "TC3 (A)", "TC3 [N]", "side (N)",
      "side (S)", "weld (A)", "TC3 (m)", "TC3 (h)",  "TC3 (E)",  "TC3 (J)", "TC3 (T)", "TC3 (R)", "TC3 (B)"};
  return all;
}

}  // namespace

TEST_CASE("no name hides a thermocouple at half the temperature, with or without a unit") {
  REQUIRE(names().size() >= 85);
  std::string all_lost;
  for (const std::string& name : names()) {
    all_lost += lost(name, decimal(half), "");
    all_lost += lost(name + " (°C)", decimal(half), " (°C)");
  }
  for (const std::string& name : names_with_letters()) {
    all_lost += lost(name, decimal(half), "");
    all_lost += lost(name, decimal(half), " (°C)");
  }
  CHECK(all_lost == "");
}

TEST_CASE("no name hides a thermocouple that comes off or burns open") {
  const Cell comes_off =
      decimal([](int row) { return (row < 120 ? programme(row) : 31.0) + scatter(row, 7); });
  const Cell burns_open = [](int row) {
    return row < 90 ? fmt::format("{:.1f}", programme(row) + scatter(row, 8)) : std::string{"OPEN"};
  };
  const Cell is_blank = [](int row) {
    return row % 11 < 2 ? fmt::format("{:.1f}", programme(row) + scatter(row, 8)) : std::string{};
  };
  std::string all_lost;
  for (const std::string& name : names())
    for (const Cell& cell : {comes_off, burns_open, is_blank}) {
      all_lost += lost(name, cell, "");
      all_lost += lost(name + " (°C)", cell, " (°C)");
    }
  CHECK(all_lost == "");
}

TEST_CASE("no name hides a thermocouple in a log of few rows and whole degrees, or of a hold alone") {
  const auto write = [](const std::string& name, int rows, bool hold, const Cell& cell) {
    std::string text = fmt::format("Time,TC1 (°C),TC2 (°C),{} (°C)\n", name);
    for (int row = 0; row < rows; ++row) {
      const int place = hold ? 150 : row * kRows / rows;
      text += fmt::format("{},{:.0f},{:.0f},{}\n", 60 * row, programme(place) + scatter(row, 1),
                          programme(place) + scatter(row, 2), cell(row));
    }
    return text;
  };
  std::string all_lost;
  const auto try_out = [&](const std::string& name, const std::string& text) {
    const WrittenLog log{text};
    const auto record = read_record(log.path(), nullptr);
    REQUIRE(record.ok());
    const auto& channels = record.value()->channels;
    if (std::none_of(channels.begin(), channels.end(),
                     [](const Channel& channel) { return channel.column == 4; }))
      all_lost += name + "\n";
  };
  for (const char* name :
       {"SP3", "SP-3", "SP-101", "SV-3 nozzle", "Program TC3", "CJ3", "Terminals", "TC3 out"}) {
    for (const int rows : {60, 300}) {
      const auto at = [rows](int row) { return programme(row * kRows / rows); };
      try_out(name, write(name, rows, false, [&](int row) {
                return fmt::format("{:.0f}", 0.5 * at(row) + 2.0 * scatter(row, 5));
              }));
      try_out(name, write(name, rows, false, [&](int row) {
                return 3 * row < rows ? fmt::format("{:.0f}", at(row) + scatter(row, 5))
                                      : std::string{"OPEN"};
              }));
    }
    try_out(name, write(name, 200, true,
                        [](int row) { return fmt::format("{:.0f}", 302.0 + 2.0 * scatter(row, 5)); }));
  }
  CHECK(all_lost == "");
  // In a hold alone nothing moves: without a unit the level of the readings has to do.
  for (const char* name : {"Load 3", "OP3", "Pressure part", "ID 3", "Valve seat"}) {
    std::string text = fmt::format("Time,TC1,TC2,{0}\n", name);
    std::string off = text;
    for (int row = 0; row < 200; ++row) {
      const std::string others =
          fmt::format("{},{:.1f},{:.1f}", 60 * row, 605.0 + scatter(row, 1), 605.0 + scatter(row, 2));
      text += fmt::format("{},{:.1f}\n", others, 302.0 + scatter(row, 5));
      off += fmt::format("{},{:.1f}\n", others, (row < 60 ? 604.0 : 25.0) + scatter(row, 5));
    }
    try_out(name, text);
    try_out(name, off);
  }
  CHECK(all_lost == "");
}

TEST_CASE("a cold junction does not follow the work") {
  const Cell follows = decimal([](int row) { return 20.0 + 0.06 * programme(row) + scatter(row, 3); });
  const Cell cabinet = decimal([](int row) { return 21.0 + 0.02 * row + scatter(row, 3); });
  CHECK(why_apart("Terminals (°C)", follows, " (°C)") == "evaluated");
  CHECK(why_apart("Terminals (°C)", cabinet, " (°C)") == "cold junction");
}

TEST_CASE("a spool among spools is a thermocouple even where it is stuck") {
  const auto column_4 = [](const std::string& other) {
    std::string text = log_with("SP-103 (°C)", decimal([](int) { return 540.0; }), " (°C)");
    text.replace(text.find("TC1"), 3, other);
    const WrittenLog log{text};
    const auto record = read_record(log.path(), nullptr);
    REQUIRE(record.ok());
    return std::any_of(record.value()->channels.begin(), record.value()->channels.end(),
                       [](const Channel& channel) { return channel.column == 4; });
  };
  CHECK(column_4("SP-101"));
  CHECK_FALSE(column_4("TC1"));
}

TEST_CASE("what is no thermocouple is kept apart by its name and its own kind of readings") {
  const Cell set_point = decimal(programme);
  const Cell set_point_whole = whole(programme);
  const Cell share = decimal([](int row) {
    return row < 100 ? 60.0 + 0.3 * row : row < 200 ? 41.0 + 3 * scatter(row, 3) : 0.0;
  });
  const Cell states = whole([](int row) { return row > 100 && row < 120 ? 1.0 : 0.0; });
  const Cell counter = whole([](int row) { return row + 1.0; });
  const Cell constant = whole([](int) { return 4711.0; });
  const Cell terminals = decimal([](int row) { return 23.0 + scatter(row, 4); });
  const Cell pressure = decimal([](int row) { return 1013.0 + scatter(row, 5); });
  const Cell flux = [](int row) { return fmt::format("{:.2f}", row < 200 ? 12.0 + scatter(row, 6) : 0.3); };
  const Cell kilowatts = decimal([](int row) {
    return row < 100 ? 180.0 + 9 * scatter(row, 2) : row < 200 ? 70.0 + 9 * scatter(row, 2) : 0.0;
  });
  const Cell words = [](int row) { return std::string{row == 5 ? "door opened" : ""}; };
  struct Row {
    std::string name;
    Cell cell;
    std::string unit;  ///< of the other columns
    std::string why;
  };
  for (const Row& row : std::vector<Row>{
           {"Set point", set_point, "", "set point"},
           {"Set point (°C)", set_point, " (°C)", "set point"},
           {"Setpoint 1 (°C)", set_point_whole, " (°C)", "set point"},
           {"SP", set_point, "", "set point"},
           {"SP1 (°C)", set_point, " (°C)", "set point"},
           {"TC1 SP (°C)", set_point, " (°C)", "set point"},
           {"SV", set_point_whole, "", "set point"},
           {"Programme (°C)", set_point, " (°C)", "set point"},
           {"Target temperature (°C)", set_point, " (°C)", "set point"},
           {"Set point", whole([](int) { return 0.0; }), "", "set point"},
           {"Program", states, "", "set point"},
           {"Cold junction (°C)", terminals, " (°C)", "cold junction"},
           {"CJC", terminals, "", "cold junction"},
           {"Terminals (°C)", terminals, " (°C)", "cold junction"},
           {"Output", share, "", "output"},
           {"OP1", share, "", "output"},
           {"TC1 OP", share, "", "output"},
           {"Output (%)", share, "", "unit %"},
           {"Power (kW)", kilowatts, "", "unit kW"},
           {"Power", kilowatts, "", "output"},
           {"Valve", share, "", "output"},
           {"Pressure", pressure, "", "pressure"},
           {"Pressure (mbar)", pressure, " (°C)", "unit mbar"},
           {"Heat flux", flux, "", "heat flux"},
           {"Alarm", states, "", "alarm or event"},
           {"TC3 alarm", states, "", "alarm or event"},
           {"Event 1", states, "", "alarm or event"},
           {"Humidity", decimal([](int row) { return 61.0 + scatter(row, 1); }), "", "another quantity"},
           {"Current (A)", kilowatts, "", "unit A"},
           {"Force (N)", constant, "", "unit N"},
           {"Batch", constant, "", "text"},
           {"No", counter, "", "counter"},
           {"Scan", counter, "", "counter"},
           {"Elapsed (min)", whole([](int row) { return 2.0 * row; }), "", "unit min"},
           {"Remark", words, "", "text"},
           {"Shift", words, "", "text"},
           {"Spare", [](int) { return std::string{}; }, "", "empty"}}) {
    INFO(row.name);
    CHECK(why_apart(row.name, row.cell, row.unit) == row.why);
  }
}

TEST_CASE("a thermocouple of an unclear name is evaluated with a notice, a clear one without") {
  const auto notices = [](const std::string& name, const std::string& unit) {
    const WrittenLog log{log_with(name, decimal(half), unit)};
    const auto record = read_record(log.path(), nullptr);
    REQUIRE(record.ok());
    std::vector<std::string> out;
    for (const Notice& notice : record.value()->notices)
      if (notice.code == "name-unclear") out.push_back(notice.channel.value_or("?"));
    return out;
  };
  CHECK(notices("TC3 terminal end (°C)", " (°C)") == std::vector<std::string>{"TC3 terminal end"});
  CHECK(notices("SP-101 (°C)", " (°C)") == std::vector<std::string>{"SP-101"});
  CHECK(notices("TC3 (N)", " (°C)") == std::vector<std::string>{"TC3 (N)"});
  CHECK(notices("Load TC3", "") == std::vector<std::string>{"Load TC3"});
  CHECK(notices("TC3 (°C)", " (°C)").empty());
  CHECK(notices("Nozzle side", "").empty());
}

TEST_CASE("where every name is unclear the columns are compared with each other") {
  std::string text = "Time,Load 1,Load 2,Load 3,Alarm\n";
  for (int row = 0; row < kRows; ++row)
    text += fmt::format("{},{:.1f},{:.1f},{:.1f},{}\n", 60 * row, programme(row) + scatter(row, 1),
                        programme(row) + scatter(row, 2), half(row), row > 150 ? 1 : 0);
  const WrittenLog log{text};
  const auto record = read_record(log.path(), nullptr);
  REQUIRE(record.ok());
  CHECK(record.value()->channels.size() == 3);
  REQUIRE(record.value()->other_columns.size() == 1);
  CHECK(record.value()->other_columns[0].name == "Alarm");
}
