// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/block_reader.h"

#include <algorithm>
#include <cstring>
#include <utility>

#include "core/read/fast/hot_loops.h"
#include "core/read/log_file_problems.h"
#include "core/read/log_head.h"
#include "core/read/text_encoding.h"

namespace soakwright {
namespace {

constexpr std::size_t kMargin = 64;

bool is_wide(TextEncoding encoding) {
  return encoding == TextEncoding::utf_16_le || encoding == TextEncoding::utf_16_be;
}

const char* last_line_end(const char* begin, const char* end, char line_end) {
  while (end > begin)
    if (*--end == line_end) return end;
  return nullptr;
}

}  // namespace

BlockReader::BlockReader(const SourceFile& file, std::string path, Layout layout)
    : file_(file), path_(std::move(path)), layout_(layout) {
  if (is_wide(layout_.encoding)) undecoded_ = std::make_unique<char[]>(layout_.block_bytes);
}

void BlockReader::reserve(Block& block, std::size_t bytes, std::size_t keep) {
  if (block.capacity >= bytes) return;
  auto memory = std::make_unique_for_overwrite<char[]>(bytes);
  if (keep != 0) std::memcpy(memory.get(), block.memory.get(), keep);
  block.memory = std::move(memory);
  block.capacity = bytes;
}

bool BlockReader::next(Block& block) {
  const std::lock_guard<std::mutex> lock{mutex_};
  if (problem_ || stopped_.load()) return false;
  while (!at_end_ || !tail_.empty()) {
    if (!fill(block)) return false;
    place(block);
    block.sequence = sequence_++;  // last: a block that is not given out must not be waited for
    return true;
  }
  return false;
}

double BlockReader::share_read() {
  const std::lock_guard<std::mutex> lock{mutex_};
  return file_.bytes() == 0 ? 1.0 : static_cast<double>(offset_) / static_cast<double>(file_.bytes());
}

/// Up to `room` bytes of text, UTF-16 decoded; 0 at the end or at a problem.
std::size_t BlockReader::fetch(char* into, std::size_t room) {
  const bool wide = is_wide(layout_.encoding);
  char* const raw = wide ? undecoded_.get() : into;
  // A UTF-16 unit becomes at most three bytes.
  const std::size_t wanted = wide ? std::max<std::size_t>(room / 3 * 2, 2) & ~std::size_t{1} : room;
  const std::ptrdiff_t got =
      file_.read_at(offset_, raw, std::min(wanted, wide ? layout_.block_bytes : wanted));
  if (got < 0) {
    problem_ = log_file_problems::not_read_to_end(path_);
    at_end_ = true;
    return 0;
  }
  const bool first = offset_ == 0;
  offset_ += static_cast<std::uint64_t>(got);
  if (offset_ >= file_.bytes() || got == 0) at_end_ = true;
  if (at_end_ && offset_ < file_.bytes()) {
    problem_ = log_file_problems::became_shorter(path_);
    return 0;
  }
  if (!wide) return static_cast<std::size_t>(got);
  hash_.update(raw, static_cast<std::size_t>(got));
  decoded_.clear();
  const std::size_t skip = first ? layout_.mark_bytes : 0;
  append_utf16({raw + skip, static_cast<std::size_t>(got) - skip},
               layout_.encoding == TextEncoding::utf_16_be, high_half_, decoded_);
  std::memcpy(into, decoded_.data(), decoded_.size());
  return decoded_.size();
}

bool BlockReader::fill(Block& block) {
  const bool wide = is_wide(layout_.encoding);
  const std::size_t front = kMargin + line_before_.size() + 2;
  std::size_t used = front + tail_.size();
  reserve(block, used + layout_.block_bytes + 2 * kMargin, 0);
  std::memset(block.memory.get(), layout_.line_end, kMargin);
  std::memcpy(block.memory.get() + kMargin, line_before_.data(), line_before_.size());
  std::memset(block.memory.get() + front - 2, layout_.line_end, 2);
  std::memcpy(block.memory.get() + front, tail_.data(), tail_.size());
  const std::size_t raw_from = used;
  const bool at_front = offset_ == 0;
  const char* last = nullptr;
  while (last == nullptr && !at_end_) {
    reserve(block, used + layout_.block_bytes + 2 * kMargin, used);
    const std::size_t got = fetch(block.memory.get() + used, layout_.block_bytes);
    if (problem_) return false;
    last = last_line_end(block.memory.get() + used, block.memory.get() + used + got, layout_.line_end);
    used += got;
    if (last == nullptr && used - front > kLongestLine) {
      problem_ = log_file_problems::endless_line(path_, line_);
      return false;
    }
  }
  char* const memory = block.memory.get();
  block.raw = wide ? nullptr : memory + raw_from;
  block.raw_bytes = wide ? 0 : used - raw_from;
  block.begin = memory + front;
  if (at_front && !wide) block.begin += layout_.mark_bytes;
  block.cut_at_end = false;
  if (at_end_) {
    if (used > static_cast<std::size_t>(block.begin - memory) && memory[used - 1] != layout_.line_end) {
      memory[used++] = layout_.line_end;
      block.cut_at_end = true;
    }
    block.end = memory + used;
    tail_.clear();
  } else {
    block.end = memory + (last - memory) + 1;
    tail_.assign(block.end, memory + used);
  }
  if (block.end < block.begin) block.end = block.begin;
  std::memset(memory + used, layout_.line_end, std::min(kMargin, block.capacity - used));
  block.line_before = {memory + kMargin, line_before_.size()};
  return true;
}

void BlockReader::place(Block& block) {
  while (line_ <= layout_.lines_before && block.begin < block.end) {
    block.begin = std::find(block.begin, block.end, layout_.line_end) + 1;
    ++line_;
  }
  block.first_line = line_;
  block.first_row = rows_;
  const LineCount count = hot_loops().count_lines(block.begin, block.end, layout_.line_end);
  block.rows = count.lines - count.blank;
  line_ += count.lines;
  rows_ += block.rows;
  // The last line with something on it, for the next block.
  const char* end = block.end;
  while (end > block.begin) {
    const char* const line_stop = end - 1;
    const char* const before = last_line_end(block.begin, line_stop, layout_.line_end);
    const char* const start = before != nullptr ? before + 1 : block.begin;
    const std::size_t length = static_cast<std::size_t>(line_stop - start);
    if (length > 1 || (length == 1 && *start != '\r')) {
      line_before_.assign(start, length);
      break;
    }
    end = start;
  }
}

void BlockReader::feed_hash(const Block& block) {
  if (block.raw == nullptr) return;
  for (std::size_t turn = hash_turn_.load(std::memory_order_acquire); turn != block.sequence;
       turn = hash_turn_.load(std::memory_order_acquire))
    hash_turn_.wait(turn, std::memory_order_acquire);
  hash_.update(block.raw, block.raw_bytes);
  hash_turn_.store(block.sequence + 1, std::memory_order_release);
  hash_turn_.notify_all();
}

}  // namespace soakwright
