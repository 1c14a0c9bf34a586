// SPDX-License-Identifier: GPL-3.0-or-later
// The record and nothing after it, as a whole process: what of `inspect` is reading.
//   reading_alone FILE        prints rows and hash
//   reading_alone FILE sum    prints rows and the sum of all readings, to compare with what others read
#include <cstddef>
#include <cstdio>

#include "core/record/record_file.h"

namespace {

double sum_of_readings(const soakwright::Record& record) {
  double sum = 0.0;
  for (const soakwright::Channel& channel : record.channels)
    for (std::size_t row = 0; row < record.rows(); ++row) sum += channel.readings.celsius(row).value_or(0.0);
  return sum;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2 && argc != 3) return 64;
  const auto record = soakwright::read_record(argv[1], nullptr);
  if (!record) {
    std::fprintf(stderr, "%s\n", record.problems().front().text().c_str());
    return 65;
  }
  if (argc == 3) {
    std::printf("%zu %.1f\n", record.value()->rows(), sum_of_readings(*record.value()));
    return 0;
  }
  std::printf("%zu rows, %s\n", record.value()->rows(), record.value()->sha256.c_str());
  return 0;
}
