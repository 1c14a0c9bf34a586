// SPDX-License-Identifier: GPL-3.0-or-later
// NIST StRD, linear regression, dataset Norris (calibration of ozone monitors, lower level of difficulty):
// 36 points, model y = B0 + B1 x + e. https://www.itl.nist.gov/div898/strd/lls/data/Norris.shtml
#pragma once

#include <array>
#include <cstdint>

namespace soakwright::strd_norris {

struct Point {
  std::int64_t y = 0;  ///< tenths
  std::int64_t x = 0;  ///< tenths
};

inline constexpr std::array<Point, 36> kPoints{
    {{1, 2},       {3388, 3374}, {1181, 1182}, {8880, 8846}, {92, 101},    {2281, 2265},
     {6685, 6663}, {9985, 9963}, {4491, 4486}, {7789, 7770}, {5592, 5582}, {3, 4},
     {1, 6},       {7781, 7755}, {6688, 6669}, {3393, 3380}, {4489, 4475}, {108, 116},
     {5577, 5560}, {2283, 2281}, {9980, 9958}, {8888, 8876}, {1196, 1202}, {3, 3},
     {6, 3},       {5576, 5568}, {3393, 3391}, {8880, 8872}, {9985, 9990}, {7789, 7790},
     {102, 111},   {1176, 1183}, {2289, 2292}, {6684, 6691}, {4492, 4489}, {2, 5}}};

// Certified values.
inline constexpr double kIntercept = -0.262323073774029;
inline constexpr double kSlope = 1.00211681802045;
inline constexpr double kSlopeDeviation = 0.429796848199937e-03;
inline constexpr double kResidualDeviation = 0.884796396144373;

}  // namespace soakwright::strd_norris
