// SPDX-License-Identifier: GPL-3.0-or-later
// Common practice, no source: an inspector decides on events, not on the limits that an event touches.
#include "core/report/finding_events.h"

#include <string>

#include <catch2/catch.hpp>

using namespace soakwright;

namespace {

using Events = std::vector<std::vector<std::size_t>>;
constexpr double kInterval_s = 30.0;

Finding finding(const std::string& requirement, Finding::Kind kind, const char* channel, double from_s,
                double to_s) {
  Finding one;
  one.requirement = requirement;
  one.kind = kind;
  if (channel != nullptr) one.channel = channel;
  one.from_s = from_s;
  one.to_s = to_s;
  return one;
}

Finding hot(const std::string& requirement, const char* channel, double from_s, double to_s, double celsius) {
  Finding one = finding(requirement, Finding::Kind::not_met, channel, from_s, to_s);
  one.extreme = Temperature::of_celsius(celsius);
  return one;
}

constexpr auto kOpen = Finding::Kind::inconclusive;
constexpr auto kMissed = Finding::Kind::not_met;

}  // namespace

TEST_CASE("a gap that leaves every limit of every thermocouple open is one event") {
  std::vector<Finding> findings;
  for (const char* requirement : {"stage-1.heating-rate", "stage-1.spread", "record.temperature-max"})
    for (const char* channel : {"TC1", "TC2", "TC3"})
      findings.push_back(finding(requirement, kOpen, channel, 7200.0, 9660.0));
  findings.push_back(finding("record.gap", kMissed, nullptr, 7200.0 + kInterval_s, 9660.0 - kInterval_s));
  const Events events = finding_events(findings, kInterval_s);
  REQUIRE(events.size() == 1);
  CHECK(events[0].size() == findings.size());
}

TEST_CASE("times that begin and end apart by more than two intervals are two events") {
  const auto at = [](double shift_s) {
    return std::vector<Finding>{finding("a", kOpen, "TC1", 1000.0, 5000.0),
                                finding("b", kOpen, "TC2", 1000.0 + shift_s, 5000.0)};
  };
  CHECK(finding_events(at(2.0 * kInterval_s), kInterval_s).size() == 1);
  CHECK(finding_events(at(2.0 * kInterval_s + 1.0), kInterval_s).size() == 2);
}

TEST_CASE("readings above the range and above the maximum temperature are one event of one thermocouple") {
  CHECK(finding_events({hot("stage-2.over-temperature", "TC2", 1000.0, 3000.0, 660.0),
                        hot("record.temperature-max", "TC2", 1500.0, 2000.0, 660.0)},
                       kInterval_s) == Events{{0, 1}});
  CHECK(finding_events({hot("stage-2.over-temperature", "TC2", 1000.0, 3000.0, 660.0),
                        hot("record.temperature-max", "TC3", 1500.0, 2000.0, 660.0)},
                       kInterval_s)
            .size() == 2);
}

TEST_CASE("a long finding does not swallow what happened within it") {
  CHECK(finding_events({finding("stage-2.hold-time", kMissed, nullptr, 1000.0, 9000.0),
                        finding("stage-2.excursion-time", kMissed, "TC3", 4000.0, 6000.0)},
                       kInterval_s)
            .size() == 2);
}

TEST_CASE("findings without a time are one event if they are of one requirement") {
  Finding a, b, c;
  a.requirement = b.requirement = "stage-1.heating-rate";
  a.kind = b.kind = c.kind = kOpen;
  c.requirement = "stage-3.cooling-rate";
  CHECK(finding_events({a, c, b}, kInterval_s) == Events{{0, 2}, {1}});
}

TEST_CASE("what is not met comes first, then what is inconclusive, then notes, each by time") {
  CHECK(finding_events(
            {finding("a", Finding::Kind::note, "TC1", 0.0, 10.0), finding("b", kOpen, "TC1", 500.0, 900.0),
             finding("c", kMissed, "TC1", 2000.0, 2900.0), finding("d", kMissed, "TC1", 1000.0, 1900.0)},
            kInterval_s) == Events{{3}, {2}, {1}, {0}});
}

TEST_CASE("one thermocouple that leaves a limit again and again makes an event each time") {
  std::vector<Finding> findings;
  for (int i = 0; i < 50; ++i)
    findings.push_back(finding("stage-2.excursion-time", kMissed, "TC3", 40.0 * i, 40.0 * i + 20.0));
  CHECK(finding_events(findings, kInterval_s).size() == 50);
}
