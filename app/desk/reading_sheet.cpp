#include "app/desk/reading_sheet.h"

#include <QComboBox>
#include <QFileInfo>
#include <QFontDatabase>
#include <QHBoxLayout>
#include <QLabel>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/desk/list_pane.h"
#include "app/desk/reading_contents.h"

namespace soakwright::desk {
namespace {

QWidget* titled(const QString& title, QWidget* widget, QWidget* beside = nullptr) {
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
  auto* head = new QHBoxLayout;
  head->addWidget(label);
  head->addStretch(1);
  if (beside) head->addWidget(beside);
  layout->addLayout(head);
  layout->addWidget(widget, 1);
  return box;
}

}  // namespace

ReadingSheet::ReadingSheet(QWidget* parent)
    : QWidget(parent),
      file_(new QLabel(this)),
      lines_(new ListPane(tr("First lines of the file"), this)),
      settings_(new ListPane(tr("How the file was read"), this)),
      columns_(new ListPane(tr("Columns of the file"), this)),
      dates_(new QComboBox(this)) {
  lines_->setFont(QFontDatabase::systemFont(QFontDatabase::FixedFont));
  file_->setContentsMargins(8, 4, 8, 0);
  file_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  dates_->setAccessibleName(tr("Order of day and month"));
  dates_->setToolTip(tr("Settles what the file leaves open; the log is read again at once"));
  dates_->addItem(tr("Dates as found"), -1);
  dates_->addItem(tr("Day, month, year"), static_cast<int>(DateOrder::dmy));
  dates_->addItem(tr("Month, day, year"), static_cast<int>(DateOrder::mdy));
  dates_->addItem(tr("Year, month, day"), static_cast<int>(DateOrder::ymd));

  auto* right = new QSplitter(Qt::Vertical, this);
  right->addWidget(titled(tr("What was made of it"), settings_, dates_));
  right->addWidget(titled(tr("Columns"), columns_));
  right->setStretchFactor(0, 2);
  right->setStretchFactor(1, 3);
  auto* both = new QSplitter(Qt::Horizontal, this);
  both->addWidget(titled(tr("The file's first lines"), lines_));
  both->addWidget(right);
  both->setStretchFactor(0, 1);
  both->setStretchFactor(1, 1);
  both->setSizes({500, 500});
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(file_);
  layout->addWidget(both, 1);

  connect(dates_, &QComboBox::currentIndexChanged, this, [this] {
    if (showing_) return;
    const int order = dates_->currentData().toInt();
    emit datesChosen(order < 0 ? std::nullopt : std::optional(static_cast<DateOrder>(order)));
  });
}

void ReadingSheet::show(const OpenCase& open) {
  showing_ = true;
  file_->setText(open.has_record() ? tr("%1   ·   SHA-256 %2")
                                         .arg(QFileInfo(open.log_path).fileName(),
                                              QString::fromStdString(open.analysis.record->sha256))
                                   : QString());
  file_->setToolTip(open.log_path);
  lines_->setContent(file_lines(open.preview.get(), open.analysis.record.get()));
  settings_->setContent(setting_lines(open.report.get()));
  columns_->setContent(column_lines(open.report.get()));
  dates_->setEnabled(open.has_record());
  dates_->setCurrentIndex(
      open.files.dates ? dates_->findData(static_cast<int>(*open.files.dates)) : 0);
  showing_ = false;
}

void ReadingSheet::setColours(const ChartColours& colours) {
  for (ListPane* list : {lines_, settings_, columns_}) list->setColours(colours);
}

}  // namespace soakwright::desk
