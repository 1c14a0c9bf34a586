// SPDX-License-Identifier: GPL-3.0-or-later
// The members of the result's objects: how names, moments and lists of it are written.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/evaluate/verdict.h"
#include "core/record/record.h"
#include "core/report/json/json_writer.h"
#include "core/wording/result_words.h"

namespace soakwright {

/// The members of one object, each under its name; what is not there is null.
class Members {
 public:
  Members(JsonWriter& json, const Record& record) : json_(json), record_(record) {}

  void text(std::string_view name, std::string_view value) {
    json_.key(name);
    json_.text(value);
  }
  /// An array of objects in the line of the object that holds it; `fill` writes what one holds.
  template <typename Items, typename Fill>
  void inner_objects(std::string_view name, const Items& items, Fill fill) {
    json_.key(name);
    json_.begin_array();
    for (const auto& item : items) {
      json_.begin_object();
      fill(item);
      json_.end_object();
    }
    json_.end_array();
  }
  void text_or_null(std::string_view name, const std::optional<std::string>& value) {
    json_.key(name);
    value ? json_.text(*value) : json_.null();
  }
  void number(std::string_view name, std::optional<double> value) {
    json_.key(name);
    value ? json_.number(*value) : json_.null();
  }
  void integer(std::string_view name, std::uint64_t value) {
    json_.key(name);
    json_.integer(value);
  }
  /// A line of the log; 0 is none.
  void line(std::string_view name, std::size_t value) {
    json_.key(name);
    value != 0 ? json_.integer(value) : json_.null();
  }
  /// `name`_s in seconds, and `name` beside it: the moment as the recorder showed it.
  void moment(std::string_view name, std::optional<double> at_s) {
    number(std::string(name) + "_s", at_s);
    json_.key(name);
    at_s ? json_.text(record_.clock.iso(*at_s)) : json_.null();
  }
  void setting(std::string_view name, const Setting<std::string>& setting) {
    json_.key(name);
    json_.begin_object();
    text_or_null("value", setting.value.empty() ? std::nullopt : std::optional(setting.value));
    text("by", result_word(setting.by));
    json_.end_object();
  }
  void span(const TimeSpan& span) {
    json_.begin_array();
    json_.number(span.first);
    json_.number(span.second);
    json_.end_array();
  }
  void spans(std::string_view name, const std::vector<TimeSpan>& spans) {
    json_.key(name);
    json_.begin_array();
    for (const TimeSpan& each : spans) span(each);
    json_.end_array();
  }
  void numbers_by_name(std::string_view name,
                       const std::vector<std::pair<std::string, std::optional<double>>>& numbers) {
    json_.key(name);
    json_.begin_object();
    for (const auto& [label, value] : numbers) number(label, value);
    json_.end_object();
  }
  /// An array of objects, one to a line, each filled by `fill`.
  template <typename Items, typename Fill>
  void objects(std::string_view name, const Items& items, Fill fill) {
    json_.key(name);
    json_.begin_array(JsonWriter::Layout::lines);
    for (const auto& item : items) {
      json_.begin_object();
      fill(item);
      json_.end_object();
    }
    json_.end_array();
  }
  void object(std::string_view name, JsonWriter::Layout layout) {
    json_.key(name);
    json_.begin_object(layout);
  }
  void null(std::string_view name) {
    json_.key(name);
    json_.null();
  }

  [[nodiscard]] JsonWriter& json() { return json_; }

 private:
  JsonWriter& json_;
  const Record& record_;
};

}  // namespace soakwright
