// SPDX-License-Identifier: GPL-3.0-or-later
// Writes JSON text, one value after the other: keys in the order given, doubles in the shortest text that
// reads back to the same double, strings always valid UTF-8. Knows nothing of what it writes.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace soakwright {

/// Calls must nest as JSON does: a key before every value in an object, and an end for every begin.
class JsonWriter {
 public:
  /// One member to a line, or all in one line.
  enum class Layout { lines, line };

  void begin_object(Layout layout = Layout::line) { begin('{', layout); }
  void end_object() { end('}'); }
  void begin_array(Layout layout = Layout::line) { begin('[', layout); }
  void end_array() { end(']'); }

  void key(std::string_view name);

  void text(std::string_view value);
  /// Null where the number is not finite: JSON has no other word for it.
  void number(double value);
  void integer(std::uint64_t value);
  void boolean(bool value);
  void null();

  /// The text so far.
  [[nodiscard]] const std::string& str() const { return out_; }

 private:
  struct Level {
    Layout layout;
    bool empty = true;
  };

  void begin(char bracket, Layout layout);
  void end(char bracket);
  void before_value();
  void separate();
  void quoted(std::string_view value);

  std::string out_;
  std::vector<Level> levels_;
  bool after_key_ = false;
};

}  // namespace soakwright
