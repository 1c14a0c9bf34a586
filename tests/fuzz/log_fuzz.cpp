// SPDX-License-Identifier: GPL-3.0-or-later
// Any bytes as a log: an error that says something, or a sound record, the same by the fast and the careful
// way, on one thread and on two, in small blocks and in large ones.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include <sys/mman.h>
#include <unistd.h>

#include "core/read/log_file.h"
#include "core/record/record_file.h"

namespace {

using namespace soakwright;

void must(bool holds) {
  if (!holds) std::abort();
}

/// A file in memory with a path: the reader takes nothing else.
class FileInMemory {
 public:
  FileInMemory(const std::uint8_t* data, std::size_t size) : descriptor_(memfd_create("log", MFD_CLOEXEC)) {
    must(descriptor_ >= 0);
    std::size_t done = 0;
    while (done < size) {
      const ssize_t written = ::write(descriptor_, data + done, size - done);
      must(written > 0);
      done += static_cast<std::size_t>(written);
    }
  }
  ~FileInMemory() { ::close(descriptor_); }
  FileInMemory(const FileInMemory&) = delete;
  FileInMemory& operator=(const FileInMemory&) = delete;
  [[nodiscard]] std::string path() const { return "/proc/self/fd/" + std::to_string(descriptor_); }

 private:
  int descriptor_;
};

bool same(const LineIssue& a, const LineIssue& b) {
  return a.count == b.count && a.line == b.line && a.text == b.text;
}

void must_be_same(const LogTable& a, const LogTable& b) {
  must(a.sha256 == b.sha256 && a.stamps_ns == b.stamps_ns && a.columns.size() == b.columns.size());
  must(same(a.repeat_rows, b.repeat_rows) && same(a.repeated_headers, b.repeated_headers));
  must(same(a.short_rows, b.short_rows) && same(a.long_rows, b.long_rows) && same(a.odd_lines, b.odd_lines));
  for (std::size_t c = 0; c < a.columns.size(); ++c) {
    const LogColumn& x = a.columns[c];
    const LogColumn& y = b.columns[c];
    must(x.places == y.places && x.numbers == y.numbers && x.wide.size() == y.wide.size());
    must(same(x.texts, y.texts) && same(x.grouped, y.grouped));
    for (std::size_t row = 0; row < a.rows(); ++row) {
      if (x.wide.empty())
        must(a.store->at(x.store_column, row) == b.store->at(y.store_column, row));
      else
        must(x.wide[row] == y.wide[row] || (x.wide[row] != x.wide[row] && y.wide[row] != y.wide[row]));
    }
  }
}

void must_be_sound(const Record& record) {
  must(record.rows() >= 2 && !record.channels.empty() && record.interval_s > 0.0);
  for (std::size_t row = 1; row < record.rows(); ++row) must(record.times_s[row] > record.times_s[row - 1]);
  for (const Channel& channel : record.channels) must(channel.readings.rows() == record.rows());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const FileInMemory file{data, size};
  const std::string path = file.path();
  const auto record = read_record(path, nullptr);
  if (record)
    must_be_sound(*record.value());
  else
    must(!record.problems().empty() && !record.problems().front().what.empty());

  const auto careful = read_log(path, {}, {1, std::size_t{1} << 20, true});
  // The size picks the blocks, so that a finding is found again.
  const auto fast = read_log(path, {}, {1 + static_cast<unsigned>(size % 2), 256 + size % 512, false});
  must(careful.ok() == fast.ok());
  if (careful) must_be_same(careful.value(), fast.value());
  return 0;
}
