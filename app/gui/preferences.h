// SPDX-License-Identifier: GPL-3.0-or-later
// What a person set for every record: how it is shown, and whom they trust. Nothing of it changes a verdict.
#pragma once

#include <QString>
#include <optional>

#include "core/units/temperature.h"

namespace soakwright::gui {

/// What an axis of time counts from. Moments in words stay as the recorder shows them.
enum class TimeOrigin { recorder, record, hold };

struct Preferences {
  enum class Colours { desktop, light, dark };
  static constexpr int kLeastText_percent = 80;
  static constexpr int kMostText_percent = 160;

  Colours colours = Colours::desktop;
  int text_percent = 100;               ///< of the desktop's size of text
  std::optional<TemperatureUnit> unit;  ///< at the start; none: the procedure's
  TimeOrigin time = TimeOrigin::recorder;
  QString trusted;  ///< file of certificates (PEM) that vouch for signers of reports; empty: none
  bool operator==(const Preferences&) const = default;
};

}  // namespace soakwright::gui
