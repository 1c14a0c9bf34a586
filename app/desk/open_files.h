// The files of one case, as the user named them; what is empty is taken from the job where that names it.
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

#include "core/procedure/job.h"

namespace soakwright::desk {

struct OpenFiles {
  QString log;
  QString procedure;
  QString job;
  QString review;
  std::optional<DateOrder> dates;  ///< settled on the reading sheet

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

}  // namespace soakwright::desk
