// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/refused_log.h"

#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <utility>

#include "core/units/sha256.h"

namespace soakwright::gui {
namespace {

constexpr qint64 kHashedAtOnce = 1 << 20;

bool blames_log(const Problem& problem) {
  const QString path = QFile::decodeName(problem.file.c_str());
  return problem.kind == ProblemKind::bad_input && !path.isEmpty() && QFileInfo(path).isFile() &&
         file_kind(path) == FileKind::log;
}

/// Empty where the file cannot be read to its end or nobody waits for it any more.
QString sha256_of(const QString& path, const Watch& watch) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return {};
  Sha256 hash;
  QByteArray piece(kHashedAtOnce, Qt::Uninitialized);
  for (;;) {
    if (watch.stopped()) return {};
    const qint64 got = file.read(piece.data(), piece.size());
    if (got < 0) return {};
    if (got == 0) return QString::fromStdString(hash.hex());
    hash.update(piece.constData(), static_cast<std::size_t>(got));
  }
}

std::vector<JobChange> given_in(const QString& job) {
  QFile file(job);
  if (job.isEmpty() || !file.open(QIODevice::ReadOnly)) return {};
  auto given = given_in_job(file.readAll().toStdString(), job.toStdString());
  // A job that cannot be read was refused itself.
  return given ? std::move(given).value() : std::vector<JobChange>{};
}

}  // namespace

std::optional<RefusedLog> refused_log(const Problems& problems, const OpenFiles& kept, const OpenFiles& named,
                                      const Watch& watch) {
  const auto problem = std::find_if(problems.begin(), problems.end(), blames_log);
  if (problem == problems.end()) return std::nullopt;
  RefusedLog log;
  log.kept = kept;
  log.named = named;
  log.path = QFile::decodeName(problem->file.c_str());
  log.preview =
      std::make_shared<const LogPreview>(preview_of(problem->file, preview_encoding(problem->file)));
  log.given = given_in(named.job.isEmpty() ? kept.job : named.job);
  log.sha256 = sha256_of(log.path, watch);
  if (watch.stopped()) return std::nullopt;
  return log;
}

}  // namespace soakwright::gui
