// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/looks.h"

#include <QApplication>
#include <QFont>
#include <initializer_list>
#include <optional>
#include <utility>

namespace soakwright::gui {
namespace {

struct RoleColour {
  QPalette::ColorRole role;
  QRgb colour;
};

QPalette palette_of(std::initializer_list<RoleColour> colours, QRgb disabled_ink) {
  QPalette palette;
  for (const RoleColour& one : colours) palette.setColor(one.role, QColor::fromRgb(one.colour));
  for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, QColor::fromRgb(disabled_ink));
  return palette;
}

QPalette light_palette() {
  return palette_of({{QPalette::Window, 0xefefef},
                     {QPalette::WindowText, 0x111315},
                     {QPalette::Base, 0xffffff},
                     {QPalette::AlternateBase, 0xf6f7f8},
                     {QPalette::Text, 0x111315},
                     {QPalette::PlaceholderText, 0x5f666d},
                     {QPalette::Button, 0xefefef},
                     {QPalette::ButtonText, 0x111315},
                     {QPalette::ToolTipBase, 0xfffff2},
                     {QPalette::ToolTipText, 0x111315},
                     {QPalette::Highlight, 0x2f74b0},
                     {QPalette::HighlightedText, 0xffffff},
                     {QPalette::Link, 0x1d5fa8}},
                    0x8b9197);
}

}  // namespace

QPalette dark_palette() {
  return palette_of({{QPalette::Window, 0x2a2f36},
                     {QPalette::WindowText, 0xe6e9ec},
                     {QPalette::Base, 0x1d2126},
                     {QPalette::AlternateBase, 0x22272d},
                     {QPalette::Text, 0xe6e9ec},
                     {QPalette::PlaceholderText, 0x9aa2aa},
                     {QPalette::Button, 0x2a2f36},
                     {QPalette::ButtonText, 0xe6e9ec},
                     {QPalette::ToolTipBase, 0x2a2f36},
                     {QPalette::ToolTipText, 0xe6e9ec},
                     {QPalette::Highlight, 0x3d6f9e},
                     {QPalette::HighlightedText, 0xffffff},
                     {QPalette::Link, 0x8fc1f0}},
                    0x707780);
}

void apply_looks(const Preferences& preferences) {
  static std::optional<QPalette> desktop_palette;  // as they were before the first change
  static std::optional<QFont> desktop_font;
  if (preferences.colours != Preferences::Colours::desktop) {
    if (!desktop_palette) desktop_palette = QApplication::palette();
    QApplication::setPalette(preferences.colours == Preferences::Colours::dark ? dark_palette()
                                                                               : light_palette());
  } else if (desktop_palette) {
    QApplication::setPalette(*std::exchange(desktop_palette, std::nullopt));
  }
  if (preferences.text_percent != 100) {
    if (!desktop_font) desktop_font = QApplication::font();
    QFont font = *desktop_font;
    font.setPointSizeF(font.pointSizeF() * preferences.text_percent / 100.0);
    QApplication::setFont(font);
  } else if (desktop_font) {
    QApplication::setFont(*std::exchange(desktop_font, std::nullopt));
  }
}

}  // namespace soakwright::gui
