#include "app/gui/exports.h"

#include <QSaveFile>

#include "app/pdf/report_writer.h"
#include "core/report/result_json.h"

namespace soakwright::gui {
namespace {

Problem cannot_write(const QString& path, const QString& why) {
  Problem problem;
  problem.kind = ProblemKind::cannot_write;
  problem.file = path.toStdString();
  problem.what = "cannot be written: " + why.toStdString();
  problem.help = "choose another place";
  return problem;
}

}  // namespace

Problems export_report(const Report& report, const QString& path) {
  if (auto problem = write_report(report, path.toStdString())) return {std::move(*problem)};
  return {};
}

Problems export_result(const Analysis& analysis, const QString& path) {
  const std::string text = result_json(analysis);
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly) ||
      file.write(text.data(), static_cast<qint64>(text.size())) != static_cast<qint64>(text.size()) ||
      !file.commit())
    return {cannot_write(path, file.errorString())};
  return {};
}

Problems write_job(const QString& path, const std::vector<JobChange>& changes, const QString& log,
                   const QString& procedure) {
  const auto text = job_text_of(path, changes, log, procedure);
  if (!text) return text.problems();
  QSaveFile file(path);
  const auto bytes = static_cast<qint64>(text.value().size());
  if (!file.open(QIODevice::WriteOnly) || file.write(text.value().data(), bytes) != bytes || !file.commit())
    return {cannot_write(path, file.errorString())};
  return {};
}

Problems export_picture(const QImage& picture, const QString& path) {
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly) || !picture.save(&file, "PNG") || !file.commit())
    return {cannot_write(path, file.errorString())};
  return {};
}

}  // namespace soakwright::gui
