// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/import_settings_pane.h"

#include <QEvent>
#include <QFileInfo>
#include <QFontDatabase>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/gui/panes/list_pane.h"
#include "app/gui/panes/reading_contents.h"
#include "app/gui/parts/plain_tip.h"
#include "app/gui/parts/read_only_look.h"

namespace soakwright::gui {
namespace {

QWidget* titled(const QString& title, QWidget* widget) {
  auto* box = new QWidget;
  auto* layout = new QVBoxLayout(box);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  auto* label = new QLabel(title, box);
  QFont bold = label->font();
  bold.setBold(true);
  label->setFont(bold);
  label->setBuddy(widget);
  label->setContentsMargins(8, 4, 8, 2);
  layout->addWidget(label);
  layout->addWidget(widget, 1);
  return box;
}

}  // namespace

ImportSettingsPane::ImportSettingsPane(QWidget* parent)
    : QWidget(parent),
      file_(new QLabel(this)),
      message_(new QLabel(this)),
      lines_(new ListPane(tr("First lines of the file"), this)),
      settings_(new SettingForm(this)),
      columns_(new ColumnTable(this)),
      undo_(new QPushButton(tr("Undo"), this)),
      write_(new QPushButton(tr("Save in the job…"), this)),
      drop_(new QPushButton(tr("Discard"), this)) {
  lines_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  file_->setTextFormat(Qt::PlainText);
  file_->setContentsMargins(8, 4, 8, 0);
  file_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  file_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  file_->installEventFilter(this);
  message_->setContentsMargins(8, 2, 8, 2);
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);
  message_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  message_->setAccessibleName(tr("Why the log cannot be read with these settings"));
  undo_->setToolTip(tr("Undo the last change; the log is read again"));
  write_->setToolTip(tr("Show what changes in the job file and save it; comments are kept"));
  drop_->setToolTip(tr("Return to the open record"));

  auto* form = new QScrollArea(this);
  form->setWidget(settings_);
  form->setWidgetResizable(true);
  form->setFrameShape(QFrame::NoFrame);
  form->setFocusPolicy(Qt::NoFocus);
  auto* right = new QSplitter(Qt::Vertical, this);
  right->addWidget(titled(tr("Import settings"), form));
  right->addWidget(titled(tr("Columns"), columns_));
  right->setStretchFactor(0, 0);
  right->setStretchFactor(1, 1);
  right->setChildrenCollapsible(false);
  right->setSizes({190, 180});
  auto* both = new QSplitter(Qt::Horizontal, this);
  both->addWidget(titled(tr("The file's first lines"), lines_));
  both->addWidget(right);
  both->setStretchFactor(0, 2);
  both->setStretchFactor(1, 3);
  both->setChildrenCollapsible(false);
  both->setSizes({430, 850});
  auto* head = new QHBoxLayout;
  head->setContentsMargins(0, 2, 8, 0);
  head->addWidget(file_, 1);
  for (QPushButton* button : {drop_, undo_, write_}) head->addWidget(button);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(2);
  layout->addLayout(head);
  layout->addWidget(message_);
  layout->addWidget(both, 1);

  connect(settings_, &SettingForm::changed, this,
          [this](const JobChange& change) { emit changed({change}); });
  connect(columns_, &ColumnTable::changed, this, &ImportSettingsPane::changed);
  connect(undo_, &QPushButton::clicked, this, &ImportSettingsPane::undoWanted);
  connect(write_, &QPushButton::clicked, this, &ImportSettingsPane::writeWanted);
  connect(drop_, &QPushButton::clicked, this, &ImportSettingsPane::dropWanted);
}

QString ImportSettingsPane::fileLine() const { return file_->text(); }

/// A hash that is cut must show that it is.
void ImportSettingsPane::fitFileLine() {
  file_->setText(file_->fontMetrics().elidedText(file_line_, Qt::ElideRight, file_->contentsRect().width()));
}

bool ImportSettingsPane::eventFilter(QObject* watched, QEvent* event) {
  if (watched == file_ && event->type() == QEvent::Resize) fitFileLine();
  return QWidget::eventFilter(watched, event);
}

QString ImportSettingsPane::message() const { return message_->isHidden() ? QString() : message_->text(); }

void ImportSettingsPane::show(Session& session) {
  const bool canUndo = session.edits().canUndo();
  const OpenCase& open = session.open();
  const auto& refused = session.refusedLog();
  const Record* record = refused ? nullptr : open.analysis.record.get();
  const QString path = refused ? refused->path : open.log_path;
  const bool fixed = open.read_only() && !refused;
  const QString sha = session.logSha();
  const QString place = fixed ? read_only_words(open) : path;
  QStringList head;
  if (!path.isEmpty()) head.append(QFileInfo(path).fileName());
  if (!session.wanted().empty()) head.append(tr("changed, not yet saved in the job"));
  if (!sha.isEmpty()) head.append(tr("SHA-256 %1").arg(sha));
  file_line_ = head.join(QStringLiteral("   ·   "));
  file_->setToolTip(plain_tip(sha.isEmpty() ? place : place + u'\n' + tr("SHA-256 %1").arg(sha)));
  fitFileLine();

  QStringList texts = session.sheetTexts();
  if (!texts.isEmpty())
    texts.prepend(
        refused
            ? tr("This log cannot be read as it is. Change the import settings here:")
            : tr("The log cannot be read with these settings. The chart still shows the previous reading:"));
  message_->setText(texts.join(u'\n'));
  message_->setVisible(!texts.isEmpty());

  const LogPreview* preview = refused ? refused->preview.get() : open.preview.get();
  lines_->setContent(file_lines(preview, record));
  const Job* job = open.analysis.job.get();
  settings_->show(record, refused ? nullptr : job, session.wanted(),
                  refused ? refused->given : std::vector<JobChange>{}, preview);
  columns_->show(record, job, refused ? nullptr : open.report.get());
  if (fixed) settings_->setEnabled(false);
  columns_->setEnabled(!fixed);
  for (QWidget* part : {static_cast<QWidget*>(settings_), static_cast<QWidget*>(columns_)})
    show_as_read_only(part, fixed);
  undo_->setEnabled(canUndo);
  write_->setEnabled(!session.wanted().empty() && session.sheetTexts().isEmpty() && !refused);
  drop_->setVisible(refused.has_value());
}

void ImportSettingsPane::setColours(const ChartColours& colours) {
  lines_->setColours(colours);
  QPalette palette = message_->palette();
  palette.setColor(QPalette::WindowText, colour_of(Sign::not_met, colours));
  message_->setPalette(palette);
}

}  // namespace soakwright::gui
