// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/deflate.h"

#include <algorithm>
#include <array>
#include <memory>
#include <new>

#include <fmt/format.h>
#include <libdeflate.h>
#include <zlib.h>

namespace soakwright::evidence {
namespace {

constexpr int kLevel = 6;  // as small as zlib makes it, in a fifth of the time
constexpr int kSampleNumbers = 2000;
using Compressor = std::unique_ptr<libdeflate_compressor, decltype(&libdeflate_free_compressor)>;
constexpr std::size_t kPiece = std::size_t{64} << 10U;
constexpr std::size_t kLargest = std::size_t{1} << 30U;  // of one call's input: zlib counts in 32 bits

Bytef* input_of(std::string_view bytes) {
  // zlib's z_stream has no const, and does not write to what it reads.
  return const_cast<Bytef*>(reinterpret_cast<const Bytef*>(bytes.data()));  // NOLINT
}

}  // namespace

std::string deflated(std::string_view bytes) {
  const Compressor compressor{libdeflate_alloc_compressor(kLevel), &libdeflate_free_compressor};
  if (!compressor) throw std::bad_alloc();
  std::string out(libdeflate_zlib_compress_bound(compressor.get(), bytes.size()), '\0');
  out.resize(libdeflate_zlib_compress(compressor.get(), bytes.data(), bytes.size(), out.data(), out.size()));
  return out;
}

std::optional<std::string> inflated(std::string_view stored, std::size_t most, const Watch& watch) {
  if (stored.size() > kLargest) return std::nullopt;
  z_stream stream{};
  if (inflateInit(&stream) != Z_OK) throw std::bad_alloc();
  stream.next_in = input_of(stored);
  stream.avail_in = static_cast<uInt>(stored.size());
  std::string out;
  std::array<char, kPiece> piece;
  int state = Z_OK;
  while (state == Z_OK && out.size() <= most && !watch.stopped()) {
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

std::string deflate_version() {
  // The version is that of the header; the sample tells another library apart.
  std::string sample;
  for (int i = 0; i < kSampleNumbers; ++i) sample.append(std::to_string(i * i)).append(",");
  const std::string small = deflated(sample);
  return fmt::format("libdeflate {}, sample {:08x}", LIBDEFLATE_VERSION_STRING,
                     libdeflate_crc32(0, small.data(), small.size()));
}

}  // namespace soakwright::evidence
