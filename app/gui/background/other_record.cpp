// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/background/other_record.h"

namespace soakwright::gui {

OtherRecord::OtherRecord(QObject* parent) : QObject(parent) {
  connect(&work_, &BackgroundWork::finished, this, [this](const BackgroundWork::Outcome& outcome) {
    if (!outcome->open) {
      emit refused(outcome->open.problems());
      return;
    }
    other_ = std::make_shared<const OpenCase>(outcome->open.value());
    emit changed();
  });
}

void OtherRecord::open(const QString& path, const OpenCase& beside) {
  OpenFiles named;
  (file_kind(path) == FileKind::job ? named.job : named.log) = path;
  named.procedure = beside.procedure_path;
  named.draft = beside.files.draft;
  wanted_source_ = beside.procedure_source;
  work_.start([named](const Watch& watch) { return WorkOutcome{read_case({}, named, watch)}; });
}

void OtherRecord::follow(const OpenCase& beside) {
  if (!other_ || beside.procedure_source.empty() || beside.procedure_source == wanted_source_) return;
  wanted_source_ = beside.procedure_source;
  work_.start([other = *other_, path = beside.procedure_path, draft = beside.files.draft](const Watch&) {
    return WorkOutcome{evaluate_case_again(other, path, draft)};
  });
}

void OtherRecord::close() {
  work_.cancel();
  wanted_source_.clear();
  if (!other_) return;
  other_.reset();
  emit changed();
}

}  // namespace soakwright::gui
