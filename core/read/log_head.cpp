// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/read/log_head.h"

#include <algorithm>
#include <utility>

#include "core/read/log_file_problems.h"
#include "core/read/text_encoding.h"

namespace soakwright {
namespace {

constexpr std::size_t kFewLines = 12;

void cut_into_lines(LogHead& head) {
  const std::string_view text{*head.text};
  head.lines.clear();
  head.line_end =
      text.find('\n') == std::string_view::npos && text.find('\r') != std::string_view::npos ? '\r' : '\n';
  std::size_t at = 0;
  while (at < text.size()) {
    std::size_t end = text.find(head.line_end, at);
    if (end == std::string_view::npos) {
      if (!head.atomic_file) break;  // cut by the end of the piece that was read
      end = text.size();
    }
    std::string_view line = text.substr(at, end - at);
    if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
    head.lines.push_back(line);
    at = end + 1;
  }
}

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

Result<LogHead> head_of(const std::string& raw, bool atomic_file, const std::string& path,
                        std::optional<TextEncoding> given) {
  LogHead head;
  head.atomic_file = atomic_file;
  const auto mark = byte_order_mark(raw);
  const auto found = detect_encoding(raw);
  if (!found) return log_file_problems::not_text(path);
  // Plain ASCII is the same in both 8-bit encodings; bytes that are not UTF-8 are refused with their line.
  const bool fits = !given || found->encoding == *given ||
                    (!mark && *given == TextEncoding::windows_1252 && is_ascii(raw)) ||
                    (*given == TextEncoding::utf_8 && found->encoding == TextEncoding::windows_1252);
  if (!fits && mark)
    return log_file_problems::byte_order_mark_of_another_encoding(path, *given, found->encoding);
  if (!fits) return log_file_problems::bytes_of_another_encoding(path, *given, found->encoding);
  head.encoding = setting_of(given.value_or(found->encoding), given.has_value());
  head.mark_bytes = found->mark_bytes;
  const std::string_view body = std::string_view{raw}.substr(head.mark_bytes);
  if (head.encoding.value == TextEncoding::utf_16_le || head.encoding.value == TextEncoding::utf_16_be) {
    unsigned high = 0;
    std::string decoded;
    append_utf16(body, head.encoding.value == TextEncoding::utf_16_be, high, decoded);
    if (!detect_encoding(decoded)) return log_file_problems::not_text(path);
    head.text = std::make_shared<const std::string>(std::move(decoded));
  } else {
    head.text = std::make_shared<const std::string>(body);
  }
  cut_into_lines(head);
  if (given == TextEncoding::utf_8)
    for (std::size_t line = 0; line < head.lines.size(); ++line)
      if (const std::size_t wrong = first_not_utf8(head.lines[line]); wrong != std::string_view::npos)
        return log_file_problems::not_utf8(path, line + 1, head.lines[line][wrong]);
  return head;
}

}  // namespace

Result<LogHead> read_head(const SourceFile& file, const std::string& path, std::optional<TextEncoding> given,
                          std::size_t wanted_bytes) {
  for (std::size_t bytes = wanted_bytes;; bytes *= 4) {
    std::string raw(static_cast<std::size_t>(std::min<std::uint64_t>(bytes, file.bytes())), '\0');
    const std::ptrdiff_t got = file.read_at(0, raw.data(), raw.size());
    if (got < 0) return log_file_problems::not_read_to_end(path);
    if (static_cast<std::size_t>(got) < raw.size()) return log_file_problems::became_shorter(path);
    const bool atomic_file = raw.size() == file.bytes();
    if (raw.empty()) return log_file_problems::empty_file(path);
    Result<LogHead> head = head_of(raw, atomic_file, path, given);
    if (!head || atomic_file || head.value().lines.size() >= kFewLines) return head;
    if (bytes >= kLongestLine) {
      if (!head.value().lines.empty()) return head;
      return log_file_problems::endless_first_line(path);
    }
  }
}

}  // namespace soakwright
