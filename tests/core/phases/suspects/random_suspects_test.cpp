// SPDX-License-Identifier: GPL-3.0-or-later
// Suspects of made-up runs: none where nothing is wrong, and the one that was planted. Intervals of half a
// second to five minutes, noise up to 1 °C, one to 24 channels, whole degrees Fahrenheit among them; cooler
// zones, spreads, weld runs and thermocouples inside thick walls are nothing wrong. The seed is new at each
// run.
#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include <catch2/catch.hpp>

#include "core/phases/course.h"
#include "core/wording/result_words.h"
#include "core/wording/suspect_words.h"
#include "tests/core/phases/drawn_seed.h"
#include "tests/core/phases/suspects/planted_fault.h"

using namespace soakwright;
using Code = Suspect::Code;

namespace {

#if defined(SOAKWRIGHT_SANITIZED)
constexpr std::size_t kRuns = 40;  // ten times slower there, and there it is the memory that is looked at
#else
constexpr std::size_t kRuns = 200;
#endif

constexpr std::array<Code, 9> kCodes = {Code::open,    Code::stuck,    Code::copied,
                                        Code::clipped, Code::reversed, Code::detached,
                                        Code::noisy,   Code::spike,    Code::lag};

std::string name_of(Code code) { return std::string(result_word(code)); }

made::Wishes wishes() {
  made::Wishes wishes;
  wishes.most_noise_k = 1.0;
  return wishes;
}

/// Within three intervals; a hole in the rows is one, since nobody can see into it.
bool same_place(const Record& record, double found_s, double true_s) {
  if (std::abs(found_s - true_s) <= 3.0 * record.interval_s + 1e-6) return true;
  const auto row = [&](double at_s) {
    return std::lower_bound(record.times_s.begin(), record.times_s.end(), at_s - 1e-6) -
           record.times_s.begin();
  };
  return std::abs(row(found_s) - row(true_s)) <= 3;
}

/// A channel that stays where it is from a ramp on until the others are back looks like the end of a range,
/// and may be either.
bool same_fault(Code found, Code planted) {
  const auto stays = [](Code code) { return code == Code::stuck || code == Code::clipped; };
  return found == planted || (stays(found) && stays(planted));
}

/// One line; said piece by piece, since GCC warns of sums of strings.
void tell(std::string& text, const std::vector<std::string>& pieces) {
  for (const std::string& piece : pieces) text.append(piece).append(" ");
}

void tell(std::string& text, const Record& record, const Suspect& suspect) {
  tell(text, {"channel", std::to_string(suspect.channel), name_of(suspect.code), "from",
              std::to_string(suspect.from_s), suspect_sentence(suspect, record)});
}

/// A run that can show such a fault; the first from `seed` on, in steps that no other run uses.
made::Run run_for(Code code, std::uint64_t seed) {
  for (;; seed += 1'000'003) {
    made::Run run = made::make_run(seed, wishes());
    if (made::can_show(run, code)) return run;
  }
}

}  // namespace

namespace {

/// How many of `runs` clean records accuse anybody, and whom.
std::size_t accused_in_clean_records(std::uint64_t seed, std::size_t runs, const made::Wishes& wishes,
                                     std::string& who) {
  std::size_t accused = 0;
  for (std::uint64_t i = 0; i < runs; ++i) {
    const made::Run run = made::make_run(seed + i, wishes);
    const Course course = course_of(run.record);
    if (course.suspects.empty()) continue;
    ++accused;
    tell(who, {"\nseed", std::to_string(seed + i)});
    for (const Suspect& suspect : course.suspects) tell(who, run.record, suspect);
  }
  return accused;
}

}  // namespace

// One accusation in 10,000 clean records is what may be: then two or more in a run of these happen once in
// 5,000 runs.
TEST_CASE("in clean records drawn anew hardly ever a channel is suspect") {
  const std::uint64_t seed = made::draw_seed();
  std::string who;
  const std::size_t accused = accused_in_clean_records(seed, kRuns, wishes(), who);
  WARN(made::seed_text(seed) << ": accused in " << std::to_string(accused) << " of " << std::to_string(kRuns)
                             << who);
  CHECK(accused <= 1);
}

TEST_CASE("in a hundred clean records, of quiet furnaces and of 48 channels too, no channel is suspect") {
  struct Kind {
    const char* name;
    double most_noise_k;
    std::size_t most_channels;
  };
  const Kind kinds[] = {{"all", 1.0, 24}, {"quiet", 0.15, 24}, {"many channels", 1.0, 48}};
  for (const Kind& kind : kinds) {
    made::Wishes wanted = wishes();
    wanted.most_noise_k = kind.most_noise_k;
    wanted.most_channels = kind.most_channels;
    std::string who;
    INFO(kind.name << who);
    CHECK(accused_in_clean_records(20'311'128, kRuns / 6, wanted, who) == 0);
  }
}

TEST_CASE("a planted fault is found in nine of ten random records, with its kind and its place") {
  const std::uint64_t seed = made::draw_seed();
  std::array<std::size_t, kCodes.size()> planted{};
  std::array<std::size_t, kCodes.size()> found{};
  std::size_t all_found = 0;
  std::size_t others_accused = 0;
  std::string wrong;
  for (std::uint64_t i = 0; i < kRuns; ++i) {
    const std::size_t kind = i % kCodes.size();
    made::Run run = run_for(kCodes.at(kind), seed + i);
    made::Dice dice(seed ^ (i * 2'654'435'761U));
    const made::PlantedFault fault = made::Planter(run, dice).plant(kCodes.at(kind));
    const Course course = course_of(run.record);
    ++planted.at(kind);
    const bool right =
        std::any_of(course.suspects.begin(), course.suspects.end(), [&](const Suspect& suspect) {
          return suspect.channel == fault.channel && same_fault(suspect.code, fault.code) &&
                 same_place(run.record, suspect.from_s, fault.from_s);
        });
    const bool others = std::any_of(course.suspects.begin(), course.suspects.end(),
                                    [&](const Suspect& suspect) { return suspect.channel != fault.channel; });
    if (right) {
      ++found.at(kind);
      ++all_found;
    }
    if (others) ++others_accused;
    if (right && !others) continue;
    tell(wrong, {"\nseed", std::to_string(seed + i), name_of(kCodes.at(kind)), "in channel",
                 std::to_string(fault.channel), "from", std::to_string(fault.from_s), "but found:"});
    for (const Suspect& suspect : course.suspects) tell(wrong, run.record, suspect);
  }
  std::string shares;
  for (std::size_t kind = 0; kind < kCodes.size(); ++kind)
    tell(shares,
         {name_of(kCodes.at(kind)), std::to_string(found.at(kind)), "of", std::to_string(planted.at(kind))});
  WARN(made::seed_text(seed) << ": found " << std::to_string(all_found) << " of " << std::to_string(kRuns)
                             << ": " << shares << "; others accused in " << std::to_string(others_accused)
                             << wrong);
  // 97 in 100 are found and others accused in 2 of 1,000: chance fails neither in 1,000 runs.
  CHECK(all_found * 100 >= kRuns * 90);
  CHECK(others_accused * 100 <= kRuns * 4);
}
