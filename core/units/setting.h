// SPDX-License-Identifier: GPL-3.0-or-later
// A setting and who chose it: the file itself, or a person. A person's choice wins, and where the file
// contradicts it both are shown.
#pragma once

#include <utility>

namespace soakwright {

enum class SettingBy { found, given };

template <typename T>
struct Setting {
  T value{};
  SettingBy by = SettingBy::found;
  [[nodiscard]] bool given() const { return by == SettingBy::given; }
  bool operator==(const Setting&) const = default;
};

/// Given where there is a choice of a person, else found.
template <typename T>
Setting<T> setting_of(T value, bool is_given) {
  return {std::move(value), is_given ? SettingBy::given : SettingBy::found};
}

}  // namespace soakwright
