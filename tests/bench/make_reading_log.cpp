// SPDX-License-Identifier: GPL-3.0-or-later
// Writes the logs that reading is measured on: ramps, holds and coolings with noise.
//   make_reading_log KIND ROWS CHANNELS FILE [SECONDS]     a row every so many seconds, 1 if not said
// KIND: plain (one decimal), lengths (cells of one to four digits, with and without decimals), commas
// (semicolons and decimal commas), missing (of 36 cells one is NaN, one OPEN, one empty).
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <string>

namespace {

enum class Kind { plain, lengths, commas, missing };

/// The same numbers on every machine.
struct Chance {
  unsigned long long state = 88172645463325252ULL;
  unsigned next() {
    state ^= state << 13;
    state ^= state >> 7;
    state ^= state << 17;
    return static_cast<unsigned>(state >> 32);
  }
};

/// Tenths of a degree: heating to 600, holding and cooling, again and again. Each channel follows the one
/// before by a few seconds, as on one piece of work.
int tenths_at(std::size_t second, std::size_t channel, Chance& chance) {
  const std::size_t cycle = (second + 7 * channel) % 43'200;
  const double hours = static_cast<double>(cycle) / 3600.0;
  const double celsius = hours < 5.0   ? 20.0 + 116.0 * hours
                         : hours < 8.0 ? 600.0
                                       : 600.0 - 145.0 * (hours - 8.0);
  return static_cast<int>(std::lround(celsius * 10.0)) + static_cast<int>(channel) +
         static_cast<int>(chance.next() % 9);
}

void add_number(std::string& text, int tenths, char decimal) {
  text.append(std::to_string(tenths / 10));
  text += decimal;
  text += static_cast<char>('0' + tenths % 10);
}

void add_cell(std::string& text, Kind kind, int tenths, Chance& chance) {
  switch (kind) {
    case Kind::plain:
      return add_number(text, tenths, '.');
    case Kind::commas:
      return add_number(text, tenths, ',');
    case Kind::lengths: {
      constexpr int kBounds[] = {10, 100, 1000, 10'000};
      const int value = static_cast<int>(chance.next() % static_cast<unsigned>(kBounds[chance.next() % 4]));
      if (chance.next() % 2 == 0)
        text.append(std::to_string(value % 1800));
      else
        add_number(text, value, '.');
      return;
    }
    case Kind::missing: {
      const unsigned what = chance.next() % 36;
      if (what == 0)
        text += "NaN";
      else if (what == 1)
        text += "OPEN";
      else if (what != 2)
        add_number(text, tenths, '.');
      return;
    }
  }
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 5 && argc != 6) return 64;
  const char* const kinds[] = {"plain", "lengths", "commas", "missing"};
  int kind = 0;
  while (kind < 4 && std::strcmp(kinds[kind], argv[1]) != 0) ++kind;
  if (kind == 4) return 64;
  const auto rows = static_cast<std::size_t>(std::atol(argv[2]));
  const auto channels = static_cast<std::size_t>(std::atol(argv[3]));
  const auto step = static_cast<std::size_t>(argc == 6 ? std::atol(argv[5]) : 1);
  const char delimiter = kind == static_cast<int>(Kind::commas) ? ';' : ',';
  std::ofstream file{argv[4], std::ios::binary};
  std::string text = "Time";
  for (std::size_t c = 1; c <= channels; ++c)
    text.append(1, delimiter).append("TC").append(std::to_string(c));
  text += '\n';
  Chance chance;
  for (std::size_t row = 0; row < rows; ++row) {
    char stamp[64];
    const std::size_t time = row * step;
    const std::size_t second = time % 86'400;
    std::snprintf(stamp, sizeof stamp, "2031-%02zu-%02zu %02zu:%02zu:%02zu", 4 + time / 86'400 / 28 % 8,
                  1 + time / 86'400 % 28, second / 3600, second / 60 % 60, second % 60);
    text += stamp;
    for (std::size_t c = 0; c < channels; ++c) {
      text += delimiter;
      add_cell(text, static_cast<Kind>(kind), tenths_at(time, c, chance), chance);
    }
    text += '\n';
    if (text.size() > (std::size_t{1} << 20)) {
      file << text;
      text.clear();
    }
  }
  file << text;
  return file.good() ? 0 : 73;
}
