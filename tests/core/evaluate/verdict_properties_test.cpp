// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold for any record: how it is written down does not change a verdict, and a tighter limit never
// turns not met into met. Random records; the seed is printed with any that fails.
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "core/procedure/procedure_file.h"
#include "core/record/record_file.h"
#include "tests/core/evaluate/random_log.h"

using namespace soakwright;
namespace fs = std::filesystem;

namespace {

#if defined(SOAKWRIGHT_SANITIZED)
constexpr int kRecords = 100;
#else
constexpr int kRecords = 1000;
#endif

using VerdictById = std::map<std::string, Verdict>;

VerdictById verdicts_of(const Record& record, const std::string& procedure) {
  const auto specified = parse_procedure(procedure, "random.toml");
  REQUIRE(specified);
  const Verdicts verdicts = evaluate(record, specified.value(), nullptr);
  VerdictById by_id;
  for (const Requirement& requirement : verdicts.requirements) by_id[requirement.id] = requirement.verdict;
  by_id["record"] = verdicts.verdict;
  return by_id;
}

std::string told(const VerdictById& verdicts) {
  std::string text;
  for (const auto& [id, verdict] : verdicts) {
    text += id;
    text += verdict == Verdict::met            ? ": met, "
            : verdict == Verdict::inconclusive ? ": inconclusive, "
                                               : ": not met, ";
  }
  return text;
}

/// A file of this test's own that is written again and again.
class LogFile {
 public:
  LogFile() {
    std::string name = (fs::temp_directory_path() / "soakwright-random-XXXXXX").string();
    folder_ = mkdtemp(name.data());
  }
  ~LogFile() { fs::remove_all(folder_); }
  LogFile(const LogFile&) = delete;
  LogFile& operator=(const LogFile&) = delete;
  [[nodiscard]] VerdictById evaluated(const std::string& text, const std::string& procedure) const {
    const fs::path path = folder_ / "log.csv";
    std::ofstream(path, std::ios::binary) << text;
    const auto record = read_record(path.string(), nullptr);
    INFO((record ? std::string() : record.problems().front().text()));
    REQUIRE(record);
    return verdicts_of(*record.value(), procedure);
  }

 private:
  fs::path folder_;
};

/// Counts that show that the records are neither all good nor all bad.
class Tally {
 public:
  void add(const VerdictById& verdicts) { ++counts_[verdicts.at("record")]; }
  void check(std::uint64_t seed) {
    std::printf("seed %llu: %d records, met %d, inconclusive %d, not met %d\n",
                static_cast<unsigned long long>(seed), kRecords, counts_[Verdict::met],
                counts_[Verdict::inconclusive], counts_[Verdict::not_met]);
    for (const Verdict verdict : {Verdict::met, Verdict::inconclusive, Verdict::not_met})
      CHECK(counts_[verdict] > kRecords / 50);
  }

 private:
  std::map<Verdict, int> counts_;
};

}  // namespace

TEST_CASE("How a log is written down does not change a verdict") {
  constexpr std::uint64_t kSeed = 20310404;
  Dice dice(kSeed);
  const LogFile file;
  Tally tally;
  for (int i = 0; i < kRecords; ++i) {
    const RandomLog log = random_log(dice);
    const std::string procedure = procedure_text(log.limits);
    CAPTURE(kSeed, i);
    const VerdictById plain = file.evaluated(log_text(log, {}), procedure);
    tally.add(plain);
    const auto same_as = [&](const char* what, const VerdictById& verdicts) {
      INFO(what);
      CHECK(told(verdicts) == told(plain));
    };
    same_as("as columns in memory", verdicts_of(record_of(log), procedure));

    LogWriting shifted;
    shifted.start_ns += static_cast<std::int64_t>(dice.below(40'000'000)) * kNanosecondsPerSecond;
    same_as("at another time", file.evaluated(log_text(log, shifted), procedure));

    LogWriting permuted;
    for (std::size_t c = 0; c < log.columns.size(); ++c)
      permuted.order.insert(permuted.order.begin() + static_cast<std::ptrdiff_t>(dice.below(c + 1)), c);
    same_as("channels in another order", file.evaluated(log_text(log, permuted), procedure));

    LogWriting fahrenheit;
    fahrenheit.unit = TemperatureUnit::fahrenheit;
    const std::string in_f = log_text(log, fahrenheit);
    same_as("log in °F", file.evaluated(in_f, procedure));
    const std::string procedure_f = procedure_text(log.limits, TemperatureUnit::fahrenheit);
    same_as("log and procedure in °F", file.evaluated(in_f, procedure_f));
    same_as("procedure in °F", file.evaluated(log_text(log, {}), procedure_f));

    LogWriting joined;
    joined.header_again_before = 1 + dice.below(log.times_s.size() - 1);
    same_as("split and joined again, header and all", file.evaluated(log_text(log, joined), procedure));
  }
  tally.check(kSeed);
}

TEST_CASE("A tighter limit never turns not met into met") {
  constexpr std::uint64_t kSeed = 20310405;
  Dice dice(kSeed);
  Tally tally;
  struct Tightening {
    const char* what;
    void (*apply)(RandomLimits&);
  };
  const Tightening tightenings[] = {
      {"rate_max",
       [](RandomLimits& limits) {
         limits.rate_max *= 0.9;
         limits.cool_rate_max *= 0.9;
       }},
      {"spread_max",
       [](RandomLimits& limits) {
         limits.spread_max *= 0.8;
         limits.hold_spread_max *= 0.8;
       }},
      {"time_min", [](RandomLimits& limits) { limits.time_min_s *= 1.15; }},
      {"temperature_max", [](RandomLimits& limits) { limits.temperature_max -= 5.0; }},
      {"gap_max", [](RandomLimits& limits) { limits.gap_max_s /= 2.0; }},
  };
  for (int i = 0; i < kRecords; ++i) {
    const RandomLog log = random_log(dice);
    const Record record = record_of(log);
    const VerdictById before = verdicts_of(record, procedure_text(log.limits));
    tally.add(before);
    for (const Tightening& tightening : tightenings) {
      RandomLimits tighter = log.limits;
      tightening.apply(tighter);
      const VerdictById after = verdicts_of(record, procedure_text(tighter));
      for (const auto& [id, verdict] : before) {
        CAPTURE(kSeed, i, tightening.what, id);
        CHECK_FALSE((verdict == Verdict::not_met && after.at(id) == Verdict::met));
      }
      // Of the requirement tightened, and so of the record, no verdict gets better at all.
      CAPTURE(kSeed, i, tightening.what);
      if (tightening.what != std::string("gap_max") || log.limits.own_interpolate_max)
        CHECK(after.at("record") >= before.at("record"));
    }
  }
  tally.check(kSeed);
}
