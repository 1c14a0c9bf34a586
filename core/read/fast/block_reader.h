// SPDX-License-Identifier: GPL-3.0-or-later
// A log in blocks of whole lines: one buffer of fixed size per thread, used again and again. Lines and rows
// are counted while the block is fetched, so that every block knows its place in the table before any is
// parsed.
#pragma once

#include <atomic>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>

#include "core/problems/problem.h"
#include "core/read/reading_settings.h"
#include "core/read/source_file.h"
#include "core/units/sha256.h"

namespace soakwright {

/// Whole lines, each with its end behind it. At least 64 bytes before and behind the text may be read.
struct Block {
  std::unique_ptr<char[]> memory;
  std::size_t capacity = 0;
  char* begin = nullptr;
  char* end = nullptr;
  std::string_view line_before;  ///< the last line with something on it before `begin`; empty at the start
  std::size_t sequence = 0;
  std::size_t first_line = 0;  ///< number in the file of the line at `begin`
  std::size_t first_row = 0;   ///< rows are lines with something on them
  std::size_t rows = 0;
  bool cut_at_end = false;  ///< the last line ends with the file and not with a line end
  const char* raw = nullptr;
  std::size_t raw_bytes = 0;
};

class BlockReader {
 public:
  struct Layout {
    TextEncoding encoding = TextEncoding::utf_8;
    std::size_t mark_bytes = 0;
    char line_end = '\n';
    std::size_t lines_before = 0;  ///< lines that are no rows, at the front
    std::size_t block_bytes = std::size_t{256} << 10;
  };
  BlockReader(const SourceFile& file, std::string path, Layout layout);

  /// The next block, or false at the end or at a problem. From any thread; each call must be followed by
  /// feed_hash().
  bool next(Block& block);
  /// Waits for the blocks before to be fed.
  void feed_hash(const Block& block);
  /// Lets next() give nothing more.
  void stop() { stopped_.store(true); }
  /// Share of the file that has been fetched, from 0 to 1.
  [[nodiscard]] double share_read();

  // Once next() has given false to every thread:
  [[nodiscard]] const std::optional<Problem>& problem() const { return problem_; }
  [[nodiscard]] std::string finish_hash() { return hash_.hex(); }
  [[nodiscard]] std::uint64_t bytes() const { return offset_; }
  [[nodiscard]] std::size_t rows() const { return rows_; }

 private:
  bool fill(Block& block);
  std::size_t fetch(char* into, std::size_t room);
  void place(Block& block);
  static void reserve(Block& block, std::size_t bytes, std::size_t keep);

  const SourceFile& file_;
  std::string path_;
  Layout layout_;
  std::mutex mutex_;
  std::optional<Problem> problem_;
  std::uint64_t offset_ = 0;
  bool at_end_ = false;
  std::string tail_;  ///< the beginning of a line whose end has not been read
  std::string line_before_;
  std::string decoded_;  ///< UTF-16 only
  std::unique_ptr<char[]> undecoded_;
  unsigned high_half_ = 0;
  std::size_t line_ = 1;
  std::size_t rows_ = 0;
  std::size_t sequence_ = 0;
  std::atomic<bool> stopped_{false};
  std::atomic<std::size_t> hash_turn_{0};
  Sha256 hash_;
};

}  // namespace soakwright
