// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/page_arena.h"

#include <utility>

#if defined(__unix__) || defined(__APPLE__)
#include <sys/mman.h>
#else
#include <cstdlib>
#endif

namespace soakwright {

PageArena::PageArena(std::size_t bytes) : bytes_(bytes) {
  if (bytes == 0) return;
#if defined(__unix__) || defined(__APPLE__)
#ifndef MAP_NORESERVE
#define MAP_NORESERVE 0
#endif
  void* const start =
      mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS | MAP_NORESERVE, -1, 0);
  if (start == MAP_FAILED) {
    bytes_ = 0;
    return;
  }
  start_ = start;
#ifdef MADV_HUGEPAGE
  constexpr std::size_t kWorthHugePages = std::size_t{4} << 20;
  if (bytes >= kWorthHugePages) madvise(start, bytes, MADV_HUGEPAGE);
#endif
#else
  start_ = std::calloc(bytes, 1);
  if (start_ == nullptr) bytes_ = 0;
#endif
}

PageArena::~PageArena() { release(); }

PageArena::PageArena(PageArena&& other) noexcept
    : start_(std::exchange(other.start_, nullptr)), bytes_(std::exchange(other.bytes_, 0)) {}

PageArena& PageArena::operator=(PageArena&& other) noexcept {
  if (this != &other) {
    release();
    start_ = std::exchange(other.start_, nullptr);
    bytes_ = std::exchange(other.bytes_, 0);
  }
  return *this;
}

void PageArena::release() {
  if (start_ == nullptr) return;
#if defined(__unix__) || defined(__APPLE__)
  munmap(start_, bytes_);
#else
  std::free(start_);
#endif
  start_ = nullptr;
}

}  // namespace soakwright
