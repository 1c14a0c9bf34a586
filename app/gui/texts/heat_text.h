// SPDX-License-Identifier: GPL-3.0-or-later
// What the heat did, as rich text for the evidence card.
#pragma once

#include <QString>

#include "core/report/report.h"

namespace soakwright::gui {

/// Title, facts, each row as a line of its own (the card is narrow), and the notes.
QString figuresText(const FigureTable& table);

}  // namespace soakwright::gui
