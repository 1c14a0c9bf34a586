// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/deflate.h"

#include <algorithm>
#include <array>
#include <new>

#include <zlib.h>

namespace soakwright::evidence {
namespace {

constexpr std::size_t kPiece = std::size_t{64} << 10U;
constexpr std::size_t kLargest = std::size_t{1} << 30U;  // of one call's input: zlib counts in 32 bits

Bytef* input_of(std::string_view bytes) {
  // zlib's z_stream has no const, and does not write to what it reads.
  return const_cast<Bytef*>(reinterpret_cast<const Bytef*>(bytes.data()));  // NOLINT
}

}  // namespace

std::string deflated(std::string_view bytes) {
  z_stream stream{};
  if (deflateInit(&stream, Z_DEFAULT_COMPRESSION) != Z_OK) throw std::bad_alloc();
  std::string out;
  std::array<char, kPiece> piece;
  int state = Z_OK;
  while (state != Z_STREAM_END) {
    if (stream.avail_in == 0) {
      const std::string_view next = bytes.substr(0, kLargest);
      stream.next_in = input_of(next);
      stream.avail_in = static_cast<uInt>(next.size());
      bytes.remove_prefix(next.size());
    }
    stream.next_out = reinterpret_cast<Bytef*>(piece.data());
    stream.avail_out = static_cast<uInt>(piece.size());
    state = deflate(&stream, bytes.empty() ? Z_FINISH : Z_NO_FLUSH);
    out.append(piece.data(), piece.size() - stream.avail_out);
  }
  deflateEnd(&stream);
  return out;
}

std::optional<std::string> inflated(std::string_view stored, std::size_t most) {
  if (stored.size() > kLargest) return std::nullopt;
  z_stream stream{};
  if (inflateInit(&stream) != Z_OK) throw std::bad_alloc();
  stream.next_in = input_of(stored);
  stream.avail_in = static_cast<uInt>(stored.size());
  std::string out;
  std::array<char, kPiece> piece;
  int state = Z_OK;
  while (state == Z_OK && out.size() <= most) {
    stream.next_out = reinterpret_cast<Bytef*>(piece.data());
    stream.avail_out = static_cast<uInt>(piece.size());
    state = inflate(&stream, Z_NO_FLUSH);
    out.append(piece.data(), piece.size() - stream.avail_out);
  }
  const bool whole = state == Z_STREAM_END && stream.avail_in == 0;
  inflateEnd(&stream);
  if (!whole || out.size() > most) return std::nullopt;
  return out;
}

std::string deflate_version() { return std::string("zlib ") + zlibVersion(); }

}  // namespace soakwright::evidence
