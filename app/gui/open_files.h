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

  [[nodiscard]] bool none() const {
    return log.isEmpty() && procedure.isEmpty() && job.isEmpty() && review.isEmpty();
  }
  [[nodiscard]] QStringList all() const {
    QStringList paths;
    for (const QString& path : {job, log, procedure, review})
      if (!path.isEmpty()) paths.append(path);
    return paths;
  }
  bool operator==(const OpenFiles&) const = default;
};

enum class FileKind { log, procedure, job, review };

/// What a file is, from its first lines: `soakwright = "procedure 1"` and the like; anything else is a log.
FileKind file_kind(const QString& path);

}  // namespace soakwright::gui
