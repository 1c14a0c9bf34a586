// Rate verdicts that noise cannot turn: shares of met, inconclusive and not met on random records whose true
// ramp is known. Prints them as a table.
#include <array>
#include <cmath>
#include <cstdio>
#include <random>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "tests/core/measure/made_record.h"

using namespace soakwright;

namespace {

/// A ramp from 250 °C to a hold at 600 °C with a heating limit above 300 °C.
struct RandomRamp {
  double ratio = 1.0;  ///< true rate over the limit
  double largest_noise_k = 1.0;
};

enum class Printed { tenths_c, whole_c, tenths_f, whole_f };

Verdict verdict_of(const RandomRamp& asked, std::mt19937_64& random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const double interval_s = std::round(std::exp(between(0.0, std::log(300.0))));
  const double noise_k = between(0.0, asked.largest_noise_k);
  const int channels = std::uniform_int_distribution<int>(1, 24)(random);
  const double limit = between(55.0, 220.0);
  const auto printed = static_cast<Printed>(std::uniform_int_distribution<int>(0, 3)(random));
  const bool fahrenheit = printed == Printed::tenths_f || printed == Printed::whole_f;
  const int decimals = printed == Printed::tenths_c || printed == Printed::tenths_f ? 1 : 0;

  const double rate_per_s = asked.ratio * limit / 3600.0;
  const auto rows = static_cast<std::size_t>((350.0 / rate_per_s + 1800.0) / interval_s) + 1;
  MadeRecord made = MadeRecord::every(interval_s, rows);
  std::normal_distribution<double> noise(0.0, 1.0);
  for (int channel = 0; channel < channels; ++channel) {
    const double offset = between(-5.0, 5.0);
    std::vector<double> values(rows);
    for (std::size_t row = 0; row < rows; ++row) {
      const double t = interval_s * static_cast<double>(row);
      const double celsius = std::min(250.0 + rate_per_s * t, 600.0) + offset + noise_k * noise(random);
      values[row] = fahrenheit ? celsius * 1.8 + 32.0 : celsius;
    }
    made.column("TC" + std::to_string(channel + 1), std::move(values), decimals,
                fahrenheit ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius);
  }

  Procedure procedure;
  RampStage heat;
  heat.above = Temperature::of_celsius(300);
  heat.rate_max = HeatingRate::of_celsius_per_hour(limit);
  HoldStage hold;
  hold.low = Temperature::of_celsius(585);
  hold.high = Temperature::of_celsius(620);
  hold.time_min = 600.0;
  procedure.stages = {{1, 0, {}, heat}, {2, 0, {}, hold}};
  procedure.evaluation.interpolate_max_s = 4.0 * interval_s;
  const Verdicts verdicts = evaluate(made.record(), procedure, nullptr);
  REQUIRE(verdicts.requirements.front().id == "stage-1.heating-rate");
  return verdicts.requirements.front().verdict;
}

struct Shares {
  int met = 0, inconclusive = 0, not_met = 0;
};

Shares shares_of(const RandomRamp& asked, int records, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  Shares shares;
  for (int i = 0; i < records; ++i) {
    const Verdict verdict = verdict_of(asked, random);
    ++(verdict == Verdict::met            ? shares.met
       : verdict == Verdict::inconclusive ? shares.inconclusive
                                          : shares.not_met);
  }
  std::printf("true rate / limit %.2f, noise up to %.1f, seed %llu: met %4d, inconclusive %4d, not met %4d\n",
              asked.ratio, asked.largest_noise_k, static_cast<unsigned long long>(seed), shares.met,
              shares.inconclusive, shares.not_met);
  return shares;
}

#if defined(__SANITIZE_ADDRESS__)
constexpr int kRecords = 100;
#else
constexpr int kRecords = 1000;
#endif

}  // namespace

TEST_CASE("A true ramp at 0.98 of the limit is not called not met for noise", "[statistics]") {
  const Shares shares = shares_of({0.98, 1.0}, kRecords, 98);
  CHECK(shares.not_met <= 3);
  CHECK(shares.met + shares.inconclusive + shares.not_met == kRecords);
}

TEST_CASE("A true ramp at 1.1 of the limit is called not met", "[statistics]") {
  CHECK(shares_of({1.10, 0.5}, kRecords, 110).not_met == kRecords);
}

TEST_CASE("Between them the share that is not met grows with the true rate", "[statistics]") {
  constexpr std::array<double, 6> kRatios{0.98, 1.0, 1.02, 1.04, 1.06, 1.08};
  int before = 0;
  for (std::size_t i = 0; i < kRatios.size(); ++i) {
    const Shares shares = shares_of({kRatios[i], 1.0}, kRecords / 2, 200 + i);
    CHECK(shares.not_met >= before);
    before = shares.not_met;
    // No ramp beyond its limit passes.
    if (kRatios[i] > 1.0) CHECK(shares.met == 0);
  }
}
