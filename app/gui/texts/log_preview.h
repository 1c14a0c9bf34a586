// SPDX-License-Identifier: GPL-3.0-or-later
// The first lines of a log as text, for the import settings: what the file says before anything is made of
// it.
#pragma once

#include <QString>
#include <QStringList>
#include <string>

namespace soakwright::gui {

struct LogPreview {
  QStringList lines;      ///< without their ends; control characters shown as their pictures
  bool more = false;      ///< the file goes on
  bool readable = false;  ///< false where the file could not be opened again
};

/// At most so many lines out of the first 64 KiB, decoded as the reader said (Reading::encoding).
LogPreview preview_of(const std::string& path, const std::string& encoding, int most_lines = 40);

/// How to show a file that the reader refused: by its mark, as UTF-8 where its first bytes are that, else as
/// Latin.
std::string preview_encoding(const std::string& path);

}  // namespace soakwright::gui
