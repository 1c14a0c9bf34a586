// SPDX-License-Identifier: GPL-3.0-or-later
// Runs a fuzz target without libFuzzer: every stored input once, then inputs made from them by small damages
// until the seconds given are over. The damages are drawn from a fixed seed, so that a failure can be
// repeated.
//   fuzz_stored_TARGET SECONDS ENDING FOLDER...
#include <algorithm>
#include <chrono>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

namespace fs = std::filesystem;
using Bytes = std::vector<std::uint8_t>;

constexpr std::uintmax_t kLargest = 65536;
constexpr std::uintmax_t kLargestReport = 262144;
constexpr std::uint32_t kSeed = 20310402;

std::vector<fs::path> stored_inputs(const std::string& ending, int count, char** folders) {
  const std::uintmax_t largest = ending == ".pdf" ? kLargestReport : kLargest;
  std::vector<fs::path> paths;
  for (int i = 0; i < count; ++i)
    for (const auto& entry : fs::recursive_directory_iterator(folders[i]))
      if (entry.is_regular_file() && entry.path().extension() == ending && entry.file_size() <= largest)
        paths.push_back(entry.path());
  std::sort(paths.begin(), paths.end());
  return paths;
}

Bytes bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

/// One to four bytes changed, dropped or doubled, or the end cut off.
Bytes damaged(Bytes input, std::mt19937& random) {
  for (std::uint32_t n = 1 + random() % 4; n > 0 && !input.empty(); --n) {
    const auto at = static_cast<std::ptrdiff_t>(random() % input.size());
    switch (random() % 4) {
      case 0:
        input[static_cast<std::size_t>(at)] = static_cast<std::uint8_t>(random() % 256);
        break;
      case 1:
        input.erase(input.begin() + at);
        break;
      case 2:
        input.insert(input.begin() + at, input[static_cast<std::size_t>(at)]);
        break;
      default:
        if (random() % 8 == 0) input.resize(static_cast<std::size_t>(at));
    }
  }
  return input;
}

}  // namespace

int main(int count, char** arguments) {
  if (count < 4) {
    std::cerr << "usage: fuzz_stored_TARGET SECONDS ENDING FOLDER...\n";
    return EXIT_FAILURE;
  }
  const auto end = std::chrono::steady_clock::now() + std::chrono::seconds(std::atoi(arguments[1]));
  const std::vector<fs::path> paths = stored_inputs(arguments[2], count - 3, arguments + 3);
  if (paths.empty()) {
    std::cerr << "no stored input with the ending " << arguments[2] << '\n';
    return EXIT_FAILURE;
  }
  std::vector<Bytes> inputs;
  for (const fs::path& path : paths) {
    std::cout << path.string() << std::endl;  // flushed: the last line names the input that ended the program
    inputs.push_back(bytes_of(path));
    LLVMFuzzerTestOneInput(inputs.back().data(), inputs.back().size());
  }
  std::mt19937 random(kSeed);
  std::size_t made = 0;
  for (; std::chrono::steady_clock::now() < end; ++made) {
    const Bytes input = damaged(inputs[random() % inputs.size()], random);
    LLVMFuzzerTestOneInput(input.data(), input.size());
  }
  std::cout << paths.size() << " stored inputs and " << made << " made from them, seed " << kSeed << '\n';
  return EXIT_SUCCESS;
}
