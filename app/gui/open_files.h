// SPDX-License-Identifier: GPL-3.0-or-later
// The files of one case, as the user named them; what is empty is taken from the job where that names it.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <string>
#include <vector>

#include "core/procedure/job/job_changes.h"
#include "core/units/temperature.h"

namespace soakwright::gui {

/// The text of a procedure that was changed and is not written yet.
struct DraftText {
  std::string text;
  bool in_a_file = true;  ///< false: a new procedure, whatever file is named
  bool operator==(const DraftText&) const = default;
};

struct OpenFiles {
  QString log;
  QString procedure;
  QString job;
  QString review;
  /// Settled on the import settings and not yet written into the job; none: as before.
  std::optional<std::vector<JobChange>> changes;
  std::optional<DraftText> draft = std::nullopt;  ///< stands in for the procedure that a file has

  /// To show temperatures in; none: the procedure's, else the log's.
  std::optional<TemperatureUnit> unit = std::nullopt;
  bool both_units = false;  ///< on the report's certificate
  /// The PDF that the other files were taken out of; empty: they are the user's own.
  QString report = {};

  [[nodiscard]] bool none() const {
    return log.isEmpty() && procedure.isEmpty() && job.isEmpty() && review.isEmpty() && report.isEmpty();
  }
  /// As a user knows them.
  [[nodiscard]] QStringList all() const {
    if (!report.isEmpty()) return {report};
    QStringList paths;
    for (const QString& path : {job, log, procedure, review})
      if (!path.isEmpty()) paths.append(path);
    return paths;
  }
  /// Nothing, shown in the same units: they were chosen for the window, not for these files.
  [[nodiscard]] OpenFiles nothing_in_these_units() const {
    OpenFiles nothing;
    nothing.unit = unit;
    nothing.both_units = both_units;
    return nothing;
  }
  bool operator==(const OpenFiles&) const = default;
};

enum class FileKind { log, procedure, job, review, report };

/// What a file is, from its first lines: `soakwright = "procedure 1"` and the like; a PDF is a report;
/// anything else is a log.
FileKind file_kind(const QString& path);

}  // namespace soakwright::gui
