// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/fast/page_arena.h"

#include <cstdlib>
#include <utility>

#if defined(__unix__) || defined(__APPLE__)
#include <sys/mman.h>
#ifndef MAP_NORESERVE
#define MAP_NORESERVE 0
#endif
#endif

namespace soakwright {
namespace {

constexpr std::size_t kWorthHugePages = std::size_t{4} << 20;

/// Null where the system refuses or has nothing of the kind.
void* own_pages([[maybe_unused]] std::size_t bytes) {
#if defined(__unix__) || defined(__APPLE__)
  void* const start =
      mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS | MAP_NORESERVE, -1, 0);
  if (start == MAP_FAILED) return nullptr;
#ifdef MADV_HUGEPAGE
  if (bytes >= kWorthHugePages) madvise(start, bytes, MADV_HUGEPAGE);
#endif
  return start;
#else
  return nullptr;
#endif
}

#if defined(__unix__) || defined(__APPLE__)
constexpr bool kHasOwnPages = true;
#else
constexpr bool kHasOwnPages = false;
#endif

}  // namespace

PageArena::PageArena(std::size_t bytes, Content content) {
  if (bytes == 0) return;
  const bool any = content == Content::any && bytes < kWorthHugePages;
  on_heap_ = any || !kHasOwnPages;
  if (on_heap_)
    start_ = any ? std::malloc(bytes) : std::calloc(bytes, 1);
  else
    start_ = own_pages(bytes);
  if (start_ != nullptr) bytes_ = bytes;
}

PageArena::~PageArena() { release(); }

PageArena::PageArena(PageArena&& other) noexcept
    : start_(std::exchange(other.start_, nullptr)),
      bytes_(std::exchange(other.bytes_, 0)),
      on_heap_(other.on_heap_) {}

PageArena& PageArena::operator=(PageArena&& other) noexcept {
  if (this != &other) {
    release();
    start_ = std::exchange(other.start_, nullptr);
    bytes_ = std::exchange(other.bytes_, 0);
    on_heap_ = other.on_heap_;
  }
  return *this;
}

void PageArena::release() {
  if (start_ == nullptr) return;
  if (on_heap_) {
    std::free(start_);
  } else {
#if defined(__unix__) || defined(__APPLE__)
    munmap(start_, bytes_);
#endif
  }
  start_ = nullptr;
}

}  // namespace soakwright
