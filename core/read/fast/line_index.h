// SPDX-License-Identifier: GPL-3.0-or-later
// Where the cells of a piece of text end: every delimiter and every line end, found 64 bytes at a time.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>

namespace soakwright {

class LineIndex {
 public:
  void clear() { count_ = line_count_ = 0; }
  /// Room for the ends of `bytes` bytes at once, and for what is left over of a row.
  void reserve(std::size_t bytes);
  /// Keeps the ends from place `from` on as the first ones and adds those of text[begin, end). Offsets are
  /// from `text`.
  void add(const char* text, std::size_t begin, std::size_t end, char delimiter, char line_end,
           std::size_t from);

  /// Offsets of delimiters and line ends, ascending.
  [[nodiscard]] std::uint32_t* ends() { return ends_.get(); }
  [[nodiscard]] std::size_t count() const { return count_; }
  /// The places in ends() of the line ends that the last add() found.
  [[nodiscard]] const std::uint32_t* lines() const { return lines_.get(); }
  [[nodiscard]] std::size_t line_count() const { return line_count_; }

 private:
  std::unique_ptr<std::uint32_t[]> ends_;
  std::unique_ptr<std::uint32_t[]> lines_;
  std::size_t capacity_ = 0;
  std::size_t line_capacity_ = 0;
  std::size_t count_ = 0;
  std::size_t line_count_ = 0;
};

}  // namespace soakwright
