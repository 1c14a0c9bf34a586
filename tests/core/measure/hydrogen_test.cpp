// SPDX-License-Identifier: GPL-3.0-or-later
// Hydrogen left in a plate and a cylinder: published values of the series, worked plates, and a solution by
// finite differences over a curve.
#include "core/measure/hydrogen.h"

#include <cmath>
#include <vector>

#include <catch2/catch.hpp>

#include "tests/core/measure/traced.h"

using namespace soakwright;

namespace {

constexpr auto kPlate = HydrogenShape::plate;
constexpr auto kCylinder = HydrogenShape::cylinder;

Diffusivity coe_and_moreton() { return published_diffusivity(PublishedDiffusivity::coe_and_moreton_1969); }

Diffusivity constant(double m2_per_s, double low_c, double high_c) {
  return {ConstantDiffusivity{m2_per_s}, Temperature::of_celsius(low_c), Temperature::of_celsius(high_c), {}};
}

/// Mean and middle after a curve, by volumes of equal width and steps backwards in time: no series in it.
/// `half_m` is half the thickness, or the radius.
HydrogenShare by_finite_differences(HydrogenShape shape, double half_m, const Knots& course,
                                    const Diffusivity& diffusivity) {
  constexpr std::size_t kCells = 200;
  constexpr double kStep_s = 5.0;
  const double width = half_m / static_cast<double>(kCells);
  const auto area = [&](std::size_t face) {
    return shape == kPlate ? 1.0 : static_cast<double>(face) * width;
  };
  const auto volume = [&](std::size_t cell) {
    return shape == kPlate ? width : (static_cast<double>(cell) + 0.5) * width * width;
  };
  std::vector<double> c(kCells, 1.0);
  const double end_s = course.back().first * 60.0;
  for (double t = 0.0; t + kStep_s / 2 < end_s; t += kStep_s) {
    const double celsius = on_course(course, t + kStep_s / 2);
    if (celsius < diffusivity.low.celsius() || celsius > diffusivity.high.celsius()) continue;
    const double d = diffusivity_at(diffusivity.law, celsius);
    // a c[i-1] + b c[i] + e c[i+1] = c_old[i], solved from the middle outwards and back.
    std::vector<double> e(kCells), f(kCells);
    for (std::size_t i = 0; i < kCells; ++i) {
      const double in = i == 0 ? 0.0 : d * kStep_s * area(i) / (width * volume(i));
      const bool last = i + 1 == kCells;
      // The surface is half a cell away, and holds nothing.
      const double out = d * kStep_s * area(i + 1) / ((last ? width / 2.0 : width) * volume(i));
      const double before = i == 0 ? 0.0 : e[i - 1];
      const double pivot = 1.0 + in + out - in * before;
      e[i] = last ? 0.0 : out / pivot;
      f[i] = (c[i] + in * (i == 0 ? 0.0 : f[i - 1])) / pivot;
    }
    c[kCells - 1] = f[kCells - 1];
    for (std::size_t i = kCells - 1; i-- > 0;) c[i] = f[i] + e[i] * c[i + 1];
  }
  double sum = 0.0;
  double all = 0.0;
  for (std::size_t i = 0; i < kCells; ++i) {
    sum += c[i] * volume(i);
    all += volume(i);
  }
  return {sum / all, c.front()};
}

}  // namespace

TEST_CASE("the series of a plate and of a cylinder have their published values") {
  // J. Crank, The Mathematics of Diffusion: plane sheet with both faces free, long cylinder.
  struct Case {
    HydrogenShape shape;
    double fourier, mean, centre;
  };
  const Case cases[] = {{kPlate, 0.1, 0.64318, 0.94931},    {kPlate, 0.5, 0.23605, 0.37078},
                        {kPlate, 1.0, 0.06874, 0.10798},    {kPlate, 2.0, 0.00583, 0.00916},
                        {kCylinder, 0.1, 0.39418, 0.84836}, {kCylinder, 0.5, 0.03838, 0.08889}};
  for (const Case& c : cases) {
    CAPTURE(static_cast<int>(c.shape), c.fourier);
    const HydrogenShare left = hydrogen_left(c.shape, c.fourier);
    CHECK(left.mean == close_to(c.mean, 0.000006));
    CHECK(left.centre == close_to(c.centre, 0.000006));
  }
  // Published to twelve digits: at F = 0.125 a plane sheet has given 0.398927989885.
  CHECK(1.0 - hydrogen_left(kPlate, 0.125).mean == close_to(0.398927989885, 1e-12));
}

TEST_CASE("at the start all is there, and what leaves first leaves through the surface") {
  for (const HydrogenShape shape : {kPlate, kCylinder}) {
    CAPTURE(static_cast<int>(shape));
    CHECK(hydrogen_left(shape, 0.0).mean == 1.0);
    CHECK(hydrogen_left(shape, 0.0).centre == 1.0);
    // Surface over volume times 2 √(Dt/π): 2 √(F/π) of a plate; of a cylinder twice that, less F for its
    // curved surface (Crank's series for short times).
    for (const double fourier : {1e-12, 0.999e-9, 1.001e-9, 1e-8, 1e-6}) {
      CAPTURE(fourier);
      const double surface = std::sqrt(fourier / 3.14159265358979323846);
      const double expected = shape == kPlate ? 1.0 - 2.0 * surface : 1.0 - 4.0 * surface + fourier;
      CHECK(hydrogen_left(shape, fourier).mean == close_to(expected, 2e-9));
    }
    CHECK(hydrogen_left(shape, 0.004999).centre == close_to(hydrogen_left(shape, 0.005001).centre, 1e-9));
    CHECK(hydrogen_left(shape, 1000.0).mean == 0.0);
    double before = 1.0;
    double fourier = 1e-10;
    while (fourier < 5.0) {
      const HydrogenShare left = hydrogen_left(shape, fourier);
      CHECK(left.mean < before);
      CHECK(left.centre >= left.mean);
      before = left.mean;
      fourier *= 1.3;
    }
  }
}

TEST_CASE("a 25 mm plate loses nine tenths at 5.1e-5 cm²/s in 7.2 h, a 50 mm plate in 28.9 h") {
  // Worked from the series.
  for (const auto& [thickness_mm, hours] : {std::pair{25.0, 7.2}, std::pair{50.0, 28.9}}) {
    CAPTURE(thickness_mm);
    const Traced made(MadeRecord::every(60, static_cast<std::size_t>(std::lround(hours * 60.0)) + 1)
                          .column("TC1", std::vector<double>(
                                             static_cast<std::size_t>(std::lround(hours * 60.0)) + 1, 350)));
    const Diffused diffused = diffused_over(made.set.traces[0], made.time(), coe_and_moreton());
    CHECK(diffused.integral_m2 == Approx(5.1e-9 * hours * 3600.0).epsilon(1e-12));
    const double half_m = thickness_mm / 2000.0;
    CHECK(hydrogen_left(kPlate, diffused.integral_m2 / (half_m * half_m)).mean == close_to(0.1, 0.0008));
  }
}

TEST_CASE("over a curve the series have what finite differences have") {
  // Our own finite differences, above. Up from 90 °C at 130 °C/h, held at 350 °C for 3 h, down to 80 °C.
  const Knots course{{0, 90}, {120, 350}, {300, 350}, {480, 80}};
  const Traced made(MadeRecord::every(60, 481).course("TC1", course, 3));
  const Diffused diffused = diffused_over(made.set.traces[0], made.time(), coe_and_moreton());
  for (const HydrogenShape shape : {kPlate, kCylinder})
    for (const double half_m : {0.008, 0.0125, 0.025}) {
      CAPTURE(static_cast<int>(shape), half_m);
      const HydrogenShare left = hydrogen_left(shape, diffused.integral_m2 / (half_m * half_m));
      const HydrogenShare expected = by_finite_differences(shape, half_m, course, coe_and_moreton());
      CHECK(left.mean == close_to(expected.mean, 4e-4));
      CHECK(left.centre == close_to(expected.centre, 4e-4));
    }
}

TEST_CASE("Coe and Moreton's diffusivity has its points, and straight lines of log D over 1/T between them") {
  // Published points, cm²/s.
  const std::pair<double, double> points[] = {{650, 9.9e-5}, {395, 7.5e-5}, {350, 5.1e-5}, {310, 5.1e-5},
                                              {250, 6.2e-5}, {210, 6.2e-5}, {155, 4.9e-5}, {60, 2.0e-7}};
  const DiffusivityLaw law = PublishedDiffusivity::coe_and_moreton_1969;
  for (const auto& [celsius, cm2_per_s] : points)
    CHECK(diffusivity_at(law, celsius) == Approx(cm2_per_s * 1e-4).epsilon(1e-12));
  // Half way in 1/T between 60 and 155 °C: 2/(1/333.15 + 1/428.15) = 374.72 K; the geometric mean.
  const double between = 2.0 / (1.0 / 333.15 + 1.0 / 428.15) - 273.15;
  CHECK(diffusivity_at(law, between) == Approx(std::sqrt(2.0e-7 * 4.9e-5) * 1e-4).epsilon(1e-9));
  CHECK(coe_and_moreton().low.celsius() == 60.0);
  CHECK(coe_and_moreton().high.celsius() == 650.0);
  // EUROFER'97: 4.57e-7 exp(-22.3 kJ/RT) m²/s; at 573.15 K 4.57e-7 · exp(-4.6796) = 4.243e-9.
  CHECK(diffusivity_at(PublishedDiffusivity::eurofer_97, 300) == Approx(4.243e-9).epsilon(3e-4));
  CHECK(published_diffusivity(PublishedDiffusivity::eurofer_97).low.celsius() == close_to(102.85));
  CHECK(published_diffusivity(PublishedDiffusivity::eurofer_97).high.celsius() == close_to(450.85));
}

TEST_CASE("nothing is taken outside the temperatures of a diffusivity, and how long that was is told") {
  // Up from 200 to 400 °C in 100 min, down again in 100: of each way 50 min are below 300, 15 above 370.
  const Traced made(MadeRecord::every(60, 201).course("TC1", {{0, 200}, {100, 400}, {200, 200}}));
  const Diffused diffused = diffused_over(made.set.traces[0], made.time(), constant(5e-9, 300, 370));
  CHECK(diffused.below_s == close_to(2 * 50 * 60));
  CHECK(diffused.above_s == close_to(2 * 15 * 60));
  CHECK(diffused.counted_s == close_to(2 * 35 * 60));
  CHECK(diffused.unknown_s == close_to(0));
  CHECK(diffused.integral_m2 == Approx(5e-9 * 2 * 35 * 60).epsilon(1e-12));
  // Level at an end of the range is in it; just beyond is not.
  const auto level = [](double celsius) {
    const Traced flat(MadeRecord::every(60, 61).column("TC1", std::vector<double>(61, celsius)));
    return diffused_over(flat.set.traces[0], flat.time(), constant(5e-9, 300, 370));
  };
  CHECK(level(300).counted_s == close_to(3600));
  CHECK(level(370).counted_s == close_to(3600));
  CHECK(level(299.9).below_s == close_to(3600));
  CHECK(level(370.1).above_s == close_to(3600));
}

TEST_CASE("time without a temperature, and time before the part that is counted, add nothing") {
  MadeRecord record = MadeRecord::every(60, 121).column("TC1", std::vector<double>(121, 350));
  record.missing("TC1", 3601, 5399);
  const Traced made(record, 120);
  const Diffused all = diffused_over(made.set.traces[0], made.time(), coe_and_moreton());
  CHECK(all.unknown_s == close_to(1800));
  CHECK(all.counted_s == close_to(5400));
  const Diffused late = diffused_over(made.set.traces[0], {1830, 7200}, coe_and_moreton());
  CHECK(late.counted_s == close_to(5400 - 1830));
  CHECK(late.unknown_s == close_to(1800));
}
