// SPDX-License-Identifier: GPL-3.0-or-later
// Rate verdicts that noise cannot turn: shares of met, inconclusive and not met on random records whose true
// ramp is known. Invented records; the long test prints the whole table.
//
// The shares that the short tests allow: were 3 of 1,000 records below the limit not met, more than 4 of 200
// would come up in 4 of 10,000 runs (binomial distribution).
#include <array>
#include <cmath>
#include <cstdio>
#include <random>

#include <catch2/catch.hpp>

#include "core/evaluate/evaluation.h"
#include "tests/core/measure/made_record.h"

using namespace soakwright;

namespace {

enum class Scatter { plain, one_reading_spikes, spikes, filtered };

/// A ramp from 250 °C to a hold at 600 °C with a heating limit above 300 °C.
struct RandomRamp {
  double ratio = 1.0;  ///< true rate over the limit
  Scatter scatter = Scatter::plain;
  double largest_noise_k = 1.0;
};

enum class Printed { tenths_c, whole_c, tenths_f, whole_f };

/// Scatter of a thermocouple's readings; filtered: each depends on the one before, with 30 s as time
/// constant.
class Noise {
 public:
  Noise(double deviation_k, double interval_s, bool filtered)
      : deviation_k_(deviation_k), kept_(filtered ? std::exp(-interval_s / 30.0) : 0.0) {}
  double next(std::mt19937_64& random) {
    last_ = kept_ * last_ + std::sqrt(1.0 - kept_ * kept_) * normal_(random);
    return deviation_k_ * last_;
  }

 private:
  std::normal_distribution<double> normal_;
  double deviation_k_;
  double kept_;
  double last_ = 0.0;
};

/// A spike of one to `longest` readings, up to 100 K.
void add_spike(std::vector<double>& celsius, int longest, std::mt19937_64& random) {
  std::size_t at = std::uniform_int_distribution<std::size_t>(0, celsius.size() - 4)(random);
  const double height = std::uniform_real_distribution<double>(-100.0, 100.0)(random);
  const int length = std::uniform_int_distribution<int>(1, longest)(random);
  for (int i = 0; i < length; ++i) celsius[at++] += height;
}

Verdict verdict_of(const RandomRamp& ramp, std::mt19937_64& random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const double interval_s = std::round(std::exp(between(0.0, std::log(300.0))));
  const double noise_k = between(0.0, ramp.largest_noise_k);
  const int channels = std::uniform_int_distribution<int>(1, 24)(random);
  const double limit = between(55.0, 220.0);
  const auto printed = static_cast<Printed>(std::uniform_int_distribution<int>(0, 3)(random));
  const bool fahrenheit = printed == Printed::tenths_f || printed == Printed::whole_f;
  const int decimals = printed == Printed::tenths_c || printed == Printed::tenths_f ? 1 : 0;

  const double rate_per_s = ramp.ratio * limit / 3600.0;
  const auto rows = static_cast<std::size_t>((350.0 / rate_per_s + 1800.0) / interval_s) + 1;
  MadeRecord made = MadeRecord::every(interval_s, rows);
  for (int channel = 0; channel < channels; ++channel) {
    const double offset = between(-5.0, 5.0);
    Noise noise(noise_k, interval_s, ramp.scatter == Scatter::filtered);
    std::vector<double> values(rows);
    for (std::size_t row = 0; row < rows; ++row) {
      const double t = interval_s * static_cast<double>(row);
      values[row] = std::min(250.0 + rate_per_s * t, 600.0) + offset + noise.next(random);
    }
    if (ramp.scatter == Scatter::one_reading_spikes) add_spike(values, 1, random);
    if (ramp.scatter == Scatter::spikes) add_spike(values, 3, random);
    if (fahrenheit)
      for (double& value : values) value = value * 1.8 + 32.0;
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

Shares shares_of(const RandomRamp& ramp, int records, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  Shares shares;
  for (int i = 0; i < records; ++i) {
    const Verdict verdict = verdict_of(ramp, random);
    ++(verdict == Verdict::met            ? shares.met
       : verdict == Verdict::inconclusive ? shares.inconclusive
                                          : shares.not_met);
  }
  constexpr const char* kScatter[] = {"plain", "spikes of one reading", "spikes of one to three", "filtered"};
  std::printf("true rate / limit %.2f, noise up to %.1f K, %-22s: met %4d, inconclusive %4d, not met %4d\n",
              ramp.ratio, ramp.largest_noise_k, kScatter[static_cast<int>(ramp.scatter)], shares.met,
              shares.inconclusive, shares.not_met);
  return shares;
}

#if defined(SOAKWRIGHT_SANITIZED)
constexpr int kRecords = 40;
#else
constexpr int kRecords = 200;
#endif

}  // namespace

TEST_CASE("A true ramp below the limit is not called not met for noise or spikes", "[statistics]") {
  CHECK(shares_of({0.90, Scatter::plain}, kRecords, 90).not_met <= 4);
  CHECK(shares_of({0.98, Scatter::plain}, kRecords, 98).not_met <= 4);
  CHECK(shares_of({0.98, Scatter::one_reading_spikes}, kRecords, 980).not_met <= 4);  // one in every channel
}

TEST_CASE("A true ramp above the limit is never called met, and at 1.1 of it not met", "[statistics]") {
  CHECK(shares_of({1.02, Scatter::plain}, kRecords, 102).met == 0);
  CHECK(shares_of({1.05, Scatter::one_reading_spikes}, kRecords, 105).met == 0);
  const Shares far = shares_of({1.10, Scatter::plain, 0.5}, kRecords, 110);
  CHECK(far.met == 0);
  CHECK(far.not_met >= kRecords * 95 / 100);
}

TEST_CASE("The whole table of rates, scatter and verdicts", "[.][long]") {
  for (const Scatter scatter :
       {Scatter::plain, Scatter::one_reading_spikes, Scatter::spikes, Scatter::filtered})
    for (const double ratio : {0.90, 0.98, 1.00, 1.02, 1.05, 1.10}) {
      const Shares shares = shares_of({ratio, scatter}, 1000, static_cast<std::uint64_t>(ratio * 100.0));
      if (scatter != Scatter::spikes && scatter != Scatter::filtered && ratio < 1.0)
        CHECK(shares.not_met <= 3);
      if (ratio > 1.0) CHECK(shares.met == 0);
    }
}
