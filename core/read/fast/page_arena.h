// SPDX-License-Identifier: GPL-3.0-or-later
// Address space for the columns of one log: reserved once from the file's size, touched as rows come, never
// grown or moved. Huge pages where the system has them: first-touched memory is what reading costs most.
#pragma once

#include <cstddef>

namespace soakwright {

class PageArena {
 public:
  PageArena() = default;
  enum class Content { zeroed, any };
  /// Empty() where the system refuses. Of any content, a small one is of memory that others gave back, where
  /// there is some: nothing is touched for the first time then.
  explicit PageArena(std::size_t bytes, Content content = Content::zeroed);
  ~PageArena();
  PageArena(PageArena&& other) noexcept;
  PageArena& operator=(PageArena&& other) noexcept;
  PageArena(const PageArena&) = delete;
  PageArena& operator=(const PageArena&) = delete;

  [[nodiscard]] bool empty() const { return start_ == nullptr; }
  [[nodiscard]] void* data() const { return start_; }
  [[nodiscard]] std::size_t bytes() const { return bytes_; }

 private:
  void release();
  void* start_ = nullptr;
  std::size_t bytes_ = 0;
  bool on_heap_ = false;
};

}  // namespace soakwright
