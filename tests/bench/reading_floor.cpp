// SPDX-License-Identifier: GPL-3.0-or-later
// The floor that reading is measured against: a loop that knows beforehand what `make_reading_log plain`
// writes, and nothing else. Whole process: file in, int32 columns and seconds out, on two threads; no hash,
// no check of anything.
//   reading_floor FILE     prints rows, and a sum over all cells so that nothing is left out
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <thread>
#include <vector>

#include <fcntl.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

namespace {

constexpr std::size_t kBlock = std::size_t{256} << 10;
constexpr std::size_t kStamp = 20;  // 2031-04-02 06:00:00 and the comma

/// Columns of one half of the file, tile by tile: row r of column c at [(r / 512 * columns + c) * 512 + r %
/// 512].
struct Half {
  std::int32_t* cells = nullptr;
  std::vector<std::int64_t> seconds;
  long long sum = 0;
};

std::int32_t* columns_for(std::size_t bytes) {
  void* const start =
      mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS | MAP_NORESERVE, -1, 0);
  if (start == MAP_FAILED) std::exit(71);
  madvise(start, bytes, MADV_HUGEPAGE);
  return static_cast<std::int32_t*>(start);
}

std::int64_t seconds_of(const char* stamp) {
  const auto two = [stamp](std::size_t at) { return (stamp[at] - '0') * 10 + stamp[at + 1] - '0'; };
  return ((two(5) * 31 + two(8)) * 24 + two(11)) * 3600 + two(14) * 60 + two(17);
}

/// One row; gives the start of the next.
const char* read_row(const char* at, std::size_t columns, Half& half) {
  const std::size_t row = half.seconds.size();
  half.seconds.push_back(seconds_of(at));
  at += kStamp;
  std::int32_t* out = half.cells + row / 512 * columns * 512 + row % 512;
  for (std::size_t c = 0; c < columns; ++c, out += 512) {
    std::int32_t value = 0;
    for (; *at != '.'; ++at) value = value * 10 + (*at - '0');
    value = value * 10 + (at[1] - '0');
    at += 3;
    *out = value;
    half.sum += value;
  }
  return at;
}

void read_half(int file, std::size_t from, std::size_t to, std::size_t columns, Half& half) {
  auto buffer = std::make_unique_for_overwrite<char[]>(2 * kBlock);
  std::size_t left = 0;
  while (from < to) {
    const std::size_t wanted = kBlock < to - from ? kBlock : to - from;
    const ssize_t got = pread(file, buffer.get() + left, wanted, static_cast<off_t>(from));
    if (got <= 0) std::exit(74);
    from += static_cast<std::size_t>(got);
    const char* const end = buffer.get() + left + got;
    const char* const last =
        static_cast<const char*>(memrchr(buffer.get(), '\n', left + static_cast<std::size_t>(got)));
    const char* at = buffer.get();
    if (last != nullptr)
      while (at <= last) at = read_row(at, columns, half);
    left = static_cast<std::size_t>(end - at);
    std::memmove(buffer.get(), at, left);
  }
}

/// The beginning of the first line at or behind `from`.
std::size_t line_at(int file, std::size_t from) {
  char piece[4096];
  const ssize_t got = pread(file, piece, sizeof piece, static_cast<off_t>(from));
  const void* const end = got > 0 ? std::memchr(piece, '\n', static_cast<std::size_t>(got)) : nullptr;
  return end == nullptr ? from : from + static_cast<std::size_t>(static_cast<const char*>(end) - piece) + 1;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) return 64;
  const int file = open(argv[1], O_RDONLY | O_CLOEXEC);
  struct stat status {};
  if (file < 0 || fstat(file, &status) != 0) return 66;
  const auto bytes = static_cast<std::size_t>(status.st_size);
  const std::size_t first = line_at(file, 0);
  std::vector<char> header(first);
  if (pread(file, header.data(), first, 0) != static_cast<ssize_t>(first)) return 74;
  std::size_t columns = 0;
  for (const char c : header) columns += c == ',' ? 1 : 0;
  const std::size_t middle = line_at(file, first + (bytes - first) / 2);
  const std::size_t bounds[] = {first, middle, bytes};
  Half halves[2];
  const auto work = [&](std::size_t i) {
    const std::size_t size = bounds[i + 1] - bounds[i];
    // A row has at least four bytes a cell.
    const std::size_t rows = size / (4 * columns + kStamp) + 513;
    halves[i].cells = columns_for(rows * columns * sizeof(std::int32_t));
    halves[i].seconds.reserve(rows);
    read_half(file, bounds[i], bounds[i + 1], columns, halves[i]);
  };
  std::thread other{work, 1};
  work(0);
  other.join();
  std::printf("%zu rows, sum %lld\n", halves[0].seconds.size() + halves[1].seconds.size(),
              halves[0].sum + halves[1].sum);
  return 0;
}
