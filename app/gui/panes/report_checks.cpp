// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/report_checks.h"

#include <QAccessible>
#include <QClipboard>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QGridLayout>
#include <QGuiApplication>
#include <QLabel>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <algorithm>

#include "app/gui/panes/list_pane.h"
#include "app/gui/parts/plain_tip.h"
#include "app/gui/parts/table_copy.h"
#include "app/gui/texts/problem_text.h"
#include "app/modules/signing_loader.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr int kCheckSignSize = 28;
constexpr int kLinesOfText = 4;
constexpr int kProgressSteps = 1000;

Sign sign_for(CheckLine::State state) {
  switch (state) {
    case CheckLine::State::holds:
      return Sign::met;
    case CheckLine::State::fails:
      return Sign::not_met;
    case CheckLine::State::open:
      return Sign::inconclusive;
    case CheckLine::State::note:
      break;
  }
  return Sign::note;
}

QString state_of(const CheckLine& line) { return QString::fromLatin1(modules::state_words(line.state)); }

QString words_for(const std::vector<CheckLine>& lines) {
  const auto count = [&lines](CheckLine::State state) {
    return std::count_if(lines.begin(), lines.end(),
                         [state](const CheckLine& line) { return line.state == state; });
  };
  const auto failing = count(CheckLine::State::fails);
  const auto open = count(CheckLine::State::open);
  if (failing == 1) return ReportChecks::tr("1 check does not hold.");
  if (failing > 1) return ReportChecks::tr("%1 checks do not hold.").arg(failing);
  if (open == 1) return ReportChecks::tr("Nothing is wrong, but 1 check could not be shown to hold.");
  if (open > 1)
    return ReportChecks::tr("Nothing is wrong, but %1 checks could not be shown to hold.").arg(open);
  return ReportChecks::tr("Every check holds.");
}

}  // namespace

ReportChecks::ReportChecks(QWidget* parent)
    : QDialog(parent),
      colours_(ChartColours::of(palette())),
      mark_(new QLabel(this)),
      summary_(new QLabel(this)),
      file_(new QLabel(this)),
      progress_(new QProgressBar(this)),
      cancel_(new QPushButton(tr("Cancel"), this)),
      list_(new ListPane(tr("Checks of the report"), this)),
      line_(new QPlainTextEdit(this)),
      copy_(new QPushButton(tr("&Copy as text"), this)),
      again_(new QPushButton(tr("&Verify again"), this)) {
  setWindowTitle(tr("Verify report"));
  build();
  connect(&work_, &ReportVerification::finished, this,
          [this](const QString& report, const FoundChecks& found) {
            found_ = Found{report, trusting_, found};
            showFound(*found_);
          });
  connect(&work_, &ReportVerification::progressed, this,
          [this](double share) { progress_->setValue(qRound(share * kProgressSteps)); });
  connect(cancel_, &QPushButton::clicked, this, &ReportChecks::cancel);
  connect(again_, &QPushButton::clicked, this, [this] { emit againWanted(report_); });
  connect(list_, &ListPane::chosen, this, &ReportChecks::showLine);
  connect(copy_, &QPushButton::clicked, this, [this] { QGuiApplication::clipboard()->setText(text()); });
}

void ReportChecks::build() {
  mark_->setFixedSize(kCheckSignSize, kCheckSignSize);
  QFont bold = summary_->font();
  bold.setBold(true);
  summary_->setFont(bold);
  summary_->setAccessibleName(tr("Result of verifying"));
  file_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  for (QLabel* label : {summary_, file_}) {
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
  }
  summary_->setWordWrap(true);
  progress_->setRange(0, kProgressSteps);
  progress_->setTextVisible(false);
  progress_->setAccessibleName(tr("Progress"));
  cancel_->setToolTip(tr("Cancel verifying; what is open is kept"));
  line_->setReadOnly(true);
  line_->setTabChangesFocus(true);
  line_->setAccessibleName(tr("The chosen check"));
  line_->setFixedHeight(kLinesOfText * line_->fontMetrics().lineSpacing() + 12);
  // Enter on the list presses no button.
  for (QPushButton* button : {cancel_, copy_, again_}) button->setAutoDefault(false);
  copy_->setToolTip(tr("Copy the report's name and every check as text"));
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
  buttons->addButton(copy_, QDialogButtonBox::ActionRole);
  buttons->addButton(again_, QDialogButtonBox::ActionRole);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  auto* layout = new QGridLayout(this);
  layout->addWidget(mark_, 0, 0, 2, 1, Qt::AlignTop);
  layout->addWidget(summary_, 0, 1);
  layout->addWidget(file_, 1, 1);
  auto* running = new QHBoxLayout;
  running->addWidget(progress_, 1);
  running->addWidget(cancel_);
  layout->addLayout(running, 2, 0, 1, 2);
  layout->addWidget(list_, 3, 0, 1, 2);
  layout->addWidget(line_, 4, 0, 1, 2);
  layout->addWidget(buttons, 5, 0, 1, 2);
  layout->setColumnStretch(1, 1);
  layout->setRowStretch(3, 1);
  setTabOrder(list_, line_);
  setTabOrder(line_, copy_);
  setTabOrder(copy_, again_);
  setTabOrder(again_, buttons->button(QDialogButtonBox::Close));
  resize(820, 430);
}

void ReportChecks::verify(const ReportVerification::Request& request) {
  report_ = request.report;
  trusting_ = !request.trusted.isEmpty();
  lines_.clear();
  list_->setContent({});
  line_->clear();
  showName();
  progress_->setValue(0);
  showBusy(true);
  work_.start(request);
  say(tr("Verifying: the files inside are evaluated, and the pages printed, again …"), std::nullopt);
  list_->setFocus();
}

void ReportChecks::showBusy(bool busy) {
  progress_->setVisible(busy);
  cancel_->setVisible(busy);
  copy_->setEnabled(!busy);
  again_->setEnabled(!busy);
}

void ReportChecks::showName() {
  file_->setText(pdf::shown_text(QFileInfo(report_).fileName().toStdString()));
  file_->setToolTip(plain_tip(report_));
}

void ReportChecks::cancel() {
  if (!busy()) return;
  work_.cancel();
  list_->setFocus();
  if (found_) {
    report_ = found_->report;
    showName();
    return showFound(*found_);
  }
  showBusy(false);
  say(tr("Not verified: verifying was cancelled."), Sign::inconclusive);
}

void ReportChecks::forget() {
  work_.cancel();
  found_.reset();
  report_.clear();
}

void ReportChecks::showFound(const Found& found) {
  showBusy(false);
  if (!found.checks) {
    line_->setPlainText(problem_texts(found.checks.problems()).join(u'\n'));
    return say(tr("The report could not be verified."), std::nullopt);
  }
  lines_ = found.checks.value();
  // The notes are of certificates that nobody vouches for.
  if (!found.trusting)
    for (CheckLine& line : lines_)
      if (line.state == CheckLine::State::note) line.text.append(" Name it in Edit, Preferences.");
  ListContent content;
  content.headers = {tr("Check"), tr("State"), tr("What was found")};
  content.stretch = 2;
  for (std::size_t i = 0; i < lines_.size(); ++i)
    content.lines.push_back(
        {{pdf::shown_text(lines_[i].what), state_of(lines_[i]), pdf::shown_text(lines_[i].text)},
         sign_for(lines_[i].state),
         i});
  list_->setContent(std::move(content));
  list_->setColours(colours_);
  const CheckLine::State all = modules::state_of_all(lines_);
  const auto worst =
      std::find_if(lines_.begin(), lines_.end(), [all](const CheckLine& line) { return line.state == all; });
  const std::size_t first = worst == lines_.end() ? 0 : static_cast<std::size_t>(worst - lines_.begin());
  list_->mark(first);
  showLine(first);
  say(words_for(lines_), sign_for(all));
}

void ReportChecks::say(const QString& summary, std::optional<Sign> sign) {
  summary_->setText(summary);
  sign_ = sign;
  drawSign();
  QAccessibleEvent news(summary_, QAccessible::NameChanged);
  QAccessible::updateAccessibility(&news);
  emit changed();
}

void ReportChecks::showLine(std::size_t line) {
  if (line >= lines_.size()) return line_->clear();
  line_->setPlainText(QStringLiteral("%1: %2. %3")
                          .arg(pdf::shown_text(lines_[line].what), state_of(lines_[line]),
                               pdf::shown_text(lines_[line].text)));
}

void ReportChecks::drawSign() {
  if (!sign_) return mark_->clear();
  mark_->setPixmap(sign_icon(*sign_, colours_, kCheckSignSize)
                       .pixmap(QSize(kCheckSignSize, kCheckSignSize), devicePixelRatioF()));
}

void ReportChecks::setColours(const ChartColours& colours) {
  colours_ = colours;
  list_->setColours(colours);
  drawSign();
}

QString ReportChecks::summary() const { return summary_->text(); }

QString ReportChecks::text() const {
  const QString head = QStringLiteral("%1\n%2\n").arg(report_, summary());
  return lines_.empty() ? head + line_->toPlainText() + u'\n' : head + table_text(list_->lines());
}

}  // namespace soakwright::gui
