// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/exports.h"

#include <QBuffer>

#include "app/gui/background/report_printer.h"
#include "app/gui/texts/window_text.h"
#include "app/pdf/report_writer.h"
#include "core/report/json/result_json.h"
#include "core/system/atomic_file.h"

namespace soakwright::gui {
namespace {

/// The bytes of the file's name, as the file system has them.
Problems none_or(std::optional<Problem> problem) {
  if (problem) return {std::move(*problem)};
  return {};
}

}  // namespace

Problems export_report(const Analysis& analysis, const ReportOptions& options, const QString& path) {
  const auto contents = report_contents(analysis, options);
  if (!contents) return contents.problems();
  const auto turn = printing_turn();
  return none_or(write_report(contents.value(), path_bytes(path)));
}

Problems export_result(const Analysis& analysis, const QString& path) {
  return none_or(write_file_whole(path_bytes(path), result_json(analysis)));
}

Problems write_text(const QString& path, const std::string& text) {
  return none_or(write_file_whole(path_bytes(path), text));
}

Problems export_picture(const QImage& picture, const QString& path) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!picture.save(&buffer, "PNG"))
    return {{ProblemKind::fault, path_bytes(path), 0, "the picture could not be made",
             "make the window smaller"}};
  return none_or(
      write_file_whole(path_bytes(path), {bytes.constData(), static_cast<std::size_t>(bytes.size())}));
}

}  // namespace soakwright::gui
