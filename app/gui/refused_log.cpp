#include "app/gui/refused_log.h"

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <utility>

namespace soakwright::gui {
namespace {

constexpr int kPreviewLines = 40;
constexpr qint64 kHashedAtOnce = 1 << 20;

bool blames_log(const Problem& problem) {
  const QString path = QString::fromStdString(problem.file);
  return problem.kind == ProblemKind::bad_input && !path.isEmpty() && QFileInfo(path).isFile() &&
         file_kind(path) == FileKind::log;
}

bool stopped(const Watch& watch) { return watch.cancelled && *watch.cancelled; }

/// Empty where the file cannot be read to its end or nobody waits for it any more.
QString sha256_of(const QString& path, const Watch& watch) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) return {};
  QCryptographicHash hash(QCryptographicHash::Sha256);
  QByteArray piece(kHashedAtOnce, Qt::Uninitialized);
  for (;;) {
    if (stopped(watch)) return {};
    const qint64 got = file.read(piece.data(), piece.size());
    if (got < 0) return {};
    if (got == 0) return QString::fromLatin1(hash.result().toHex());
    hash.addData(QByteArrayView(piece.constData(), got));
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
  log.path = QString::fromStdString(problem->file);
  log.preview = std::make_shared<const LogPreview>(
      preview_of(problem->file, preview_encoding(problem->file), kPreviewLines));
  log.given = given_in(named.job.isEmpty() ? kept.job : named.job);
  log.sha256 = sha256_of(log.path, watch);
  if (stopped(watch)) return std::nullopt;
  return log;
}

}  // namespace soakwright::gui
