// SPDX-License-Identifier: GPL-3.0-or-later
// The record and nothing after it, as a whole process: what of `inspect` is reading.
//   reading_alone FILE
#include <cstdio>

#include "core/record/record_file.h"

int main(int argc, char** argv) {
  if (argc != 2) return 64;
  const auto record = soakwright::read_record(argv[1], nullptr);
  if (!record) {
    std::fprintf(stderr, "%s\n", record.problems().front().text().c_str());
    return 65;
  }
  std::printf("%zu rows, %s\n", record.value()->rows(), record.value()->sha256.c_str());
  return 0;
}
