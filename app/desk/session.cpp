#include "app/desk/session.h"

#include <algorithm>
#include <utility>

namespace soakwright::desk {
namespace {

void name_file(OpenFiles& files, FileKind kind, const QString& path) {
  switch (kind) {
    case FileKind::log:
      files.log = path;
      break;
    case FileKind::procedure:
      files.procedure = path;
      break;
    case FileKind::job:
      files.job = path;
      break;
    case FileKind::review:
      files.review = path;
      break;
  }
}

OpenFiles together(OpenFiles first, const OpenFiles& then) {
  for (QString OpenFiles::*file : {&OpenFiles::log, &OpenFiles::procedure, &OpenFiles::job, &OpenFiles::review})
    if (!(then.*file).isEmpty()) first.*file = then.*file;
  if (then.dates) first.dates = then.dates;
  return first;
}

/// The same log with the same columns: what is hidden stays hidden, and the chart stays where it is.
bool same_channels(const OpenCase& a, const OpenCase& b) {
  if (!a.has_record() || !b.has_record() || a.log_path != b.log_path) return false;
  const auto& x = a.analysis.record->channels;
  const auto& y = b.analysis.record->channels;
  return std::equal(x.begin(), x.end(), y.begin(), y.end(),
                    [](const Channel& one, const Channel& other) { return one.column == other.column; });
}

/// A chosen requirement stays chosen where the new report has it too; places of other lists may mean something else.
Selection still_chosen(const Selection& chosen, const Report* before, const Report* after) {
  if (chosen.kind != Selection::Kind::requirement || !before || !after) return {};
  const RequirementRow& row = before->requirements[chosen.index];
  for (std::size_t i = 0; i < after->requirements.size(); ++i)
    if (after->requirements[i].id == row.id && after->requirements[i].weld == row.weld)
      return {Selection::Kind::requirement, i};
  return {};
}

}  // namespace

Session::Session(QObject* parent) : QObject(parent) {
  connect(&work_, &BackgroundWork::busyChanged, this, &Session::busyChanged);
  connect(&work_, &BackgroundWork::progressed, this, &Session::progressed);
  connect(&work_, &BackgroundWork::finished, this, &Session::take);
}

void Session::openFiles(const QStringList& paths) {
  OpenFiles named;
  for (const QString& path : paths) name_file(named, file_kind(path), path);
  openNamed(named);
}

void Session::openAs(FileKind kind, const QString& path) {
  OpenFiles named;
  name_file(named, kind, path);
  openNamed(named);
}

void Session::openNamed(OpenFiles named) {
  if (named.none()) return;
  // What is still being read is opened together with what comes now, not dropped for it.
  if (busy()) named = together(pending_, named);
  const bool only_procedure = named.log.isEmpty() && named.job.isEmpty() && named.review.isEmpty();
  if (only_procedure && open_.has_record())
    judgeAgain(named.procedure);
  else
    read(open_.files, named);
}

void Session::read(const OpenFiles& kept, const OpenFiles& named) {
  pending_ = named;
  work_.start([kept, named](const Watch& watch) { return read_case(kept, named, watch); });
}

void Session::judgeAgain(const QString& procedure) {
  pending_ = {};
  pending_.procedure = procedure;
  work_.start([open = open_, procedure](const Watch&) { return judge_case_again(open, procedure); });
}

void Session::reload() {
  if (open_.files.none()) return;
  if (must_read_again(open_) || open_.procedure_path.isEmpty())
    read(open_.files, {});
  else
    judgeAgain(open_.procedure_path);
}

void Session::chooseDates(std::optional<DateOrder> dates) {
  if (open_.log_path.isEmpty() || dates == open_.files.dates) return;
  OpenFiles files = open_.files;
  files.dates = dates;
  read(files, {});
}

void Session::closeJob() {
  if (open_.files.job.isEmpty()) return;
  // What the job named stays open, now by its own name.
  OpenFiles files = open_.files;
  files.log = open_.log_path;
  files.procedure = open_.procedure_path;
  files.job.clear();
  read(files, {});
}

void Session::closeAll() {
  work_.cancel();
  adopt({});
}

void Session::cancel() { work_.cancel(); }

void Session::take(const BackgroundWork::Outcome& outcome) {
  if (outcome->ok()) {
    adopt(outcome->value());
    return;
  }
  QStringList texts;
  for (const Problem& problem : outcome->problems()) texts.append(QString::fromStdString(problem.text()));
  emit refused(texts);
}

void Session::adopt(OpenCase next) {
  const bool other_record = !same_channels(next, open_);
  const Selection kept = still_chosen(selection_, open_.report.get(), next.report.get());
  open_ = std::move(next);
  selection_ = kept;
  if (other_record) {
    hidden_.assign(open_.has_record() ? open_.analysis.record->channels.size() : 0, false);
    for (std::size_t i = 0; i < hidden_.size(); ++i)
      hidden_[i] = open_.analysis.record->channels[i].duty == Duty::off;
  }
  emit caseChanged(other_record);
  if (selection_.kind != Selection::Kind::none) emit selectionChanged();
}

void Session::select(const Selection& selection) {
  if (selection == selection_) return;
  selection_ = selection;
  emit selectionChanged();
}

void Session::setVisible(std::size_t channel, bool visible) {
  if (channel >= hidden_.size() || hidden_[channel] == !visible) return;
  hidden_[channel] = !visible;
  emit visibilityChanged();
}

void Session::setAllVisible(bool visible) {
  hidden_.assign(hidden_.size(), !visible);
  emit visibilityChanged();
}

}  // namespace soakwright::desk
