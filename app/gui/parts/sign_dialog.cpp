// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/sign_dialog.h"

#include <QAccessible>
#include <QDialogButtonBox>
#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <filesystem>
#include <utility>

#include "app/gui/background/report_printer.h"
#include "app/gui/parts/choice_box.h"
#include "app/gui/texts/problem_text.h"
#include "app/gui/verdict_sign.h"
#include "app/modules/signing_loader.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr int kWidth = 640;

std::string bytes_of(const QLineEdit* path) {
  return QFile::encodeName(path->text().trimmed()).toStdString();
}

Problems signed_as(const SignOrder& order, const std::filesystem::path& folder) {
  const auto module = modules::SigningModule::open("signing a report is", folder);
  if (!module) return module.problems();
  if (auto problem = module.value().sign(order, report_printer())) return {std::move(*problem)};
  return {};
}

}  // namespace

SignDialog::SignDialog(const QString& report, QString modules, QWidget* parent)
    : QDialog(parent),
      modules_(std::move(modules)),
      fields_(new QWidget(this)),
      problem_(new QLabel(this)),
      progress_(new QProgressBar(this)),
      sign_(new QPushButton(tr("&Sign"), this)),
      cancel_(new QPushButton(tr("Cancel"), this)) {
  setWindowTitle(tr("Sign report"));
  build();
  report_->setText(report);
  connect(sign_, &QPushButton::clicked, this, &SignDialog::sign);
  connect(cancel_, &QPushButton::clicked, this, &QDialog::reject);
  connect(&work_, &ExportWork::busyChanged, this, &SignDialog::showBusy);
  connect(&work_, &ExportWork::finished, this,
          [this](const QString& /*path*/, const Problems& problems) { take(problems); });
  resize(kWidth, sizeHint().height());
  (report.isEmpty() ? report_ : key_)->setFocus();
  check();
}

QLineEdit* SignDialog::addLine(QGridLayout* grid, int row, const QString& name, const QString& help) {
  auto* line = new QLineEdit(fields_);
  line->setAccessibleName(QString(name).remove(u'&'));
  line->setPlaceholderText(help);
  auto* label = new QLabel(name, fields_);
  label->setBuddy(line);
  grid->addWidget(label, row, 0);
  grid->addWidget(line, row, 1);
  connect(line, &QLineEdit::textChanged, this, &SignDialog::check);
  return line;
}

void SignDialog::addFile(QGridLayout* grid, int row, QLineEdit* line, const QString& filter) {
  auto* choose = new QPushButton(tr("Choose…"), fields_);
  choose->setAccessibleName(tr("Choose: %1").arg(line->accessibleName()));
  choose->setAutoDefault(false);
  grid->addWidget(choose, row, 2);
  connect(choose, &QPushButton::clicked, this, [this, line, filter] {
    const bool save = line == save_as_;
    const QString known = line->text().isEmpty() ? report_->text() : line->text();
    QFileDialog dialog(this, line->accessibleName(), QFileInfo(known).absolutePath(), filter);
    dialog.setAcceptMode(save ? QFileDialog::AcceptSave : QFileDialog::AcceptOpen);
    dialog.setFileMode(save ? QFileDialog::AnyFile : QFileDialog::ExistingFile);
    // Replacing a file is confirmed once, before signing.
    dialog.setOption(QFileDialog::DontConfirmOverwrite);
    if (save) dialog.setDefaultSuffix(QStringLiteral("pdf"));
    if (dialog.exec() == QDialog::Accepted && !dialog.selectedFiles().isEmpty())
      line->setText(dialog.selectedFiles().first());
  });
}

void SignDialog::build() {
  const QString pdf = tr("PDF (*.pdf);;All files (*)");
  const QString keys = tr("Keys and certificates (*.pem *.key *.crt *.cer *.p12 *.pfx);;All files (*)");
  auto* grid = new QGridLayout(fields_);
  grid->setContentsMargins(0, 0, 0, 0);
  report_ = addLine(grid, 0, tr("&Report"), tr("PDF that Soakwright wrote"));
  addFile(grid, 0, report_, pdf);
  key_ = addLine(grid, 1, tr("&Key"), tr("PEM, or PKCS#12 with its certificate"));
  addFile(grid, 1, key_, keys);
  certificate_ = addLine(grid, 2, tr("C&ertificate"), tr("optional: the one in the key's file"));
  addFile(grid, 2, certificate_, keys);
  password_ = addLine(grid, 3, tr("&Password of the key"), tr("if it has one; it is not kept"));
  password_->setEchoMode(QLineEdit::Password);
  name_ = addLine(grid, 4, tr("&Name"), tr("as the review names it for the role"));
  role_ = new ChoiceBox(fields_);
  role_->setAccessibleName(tr("Role"));
  role_->addItem(tr("Performed by"), static_cast<int>(Person::Role::performed));
  role_->addItem(tr("Reviewed by"), static_cast<int>(Person::Role::reviewed));
  role_->addItem(tr("Witnessed by"), static_cast<int>(Person::Role::witnessed));
  auto* role = new QLabel(tr("R&ole"), fields_);
  role->setBuddy(role_);
  grid->addWidget(role, 5, 0);
  grid->addWidget(role_, 5, 1, Qt::AlignLeft);
  save_as_ = addLine(grid, 6, tr("Save &as"), tr("optional: into the report itself"));
  addFile(grid, 6, save_as_, pdf);

  problem_->setTextFormat(Qt::PlainText);
  problem_->setWordWrap(true);
  problem_->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  problem_->setAccessibleName(tr("Why the report is not signed"));
  QPalette ink = problem_->palette();
  ink.setColor(QPalette::WindowText, colour_of(Sign::not_met, ChartColours::of(palette())));
  problem_->setPalette(ink);
  problem_->hide();
  progress_->setRange(0, 0);
  progress_->setTextVisible(false);
  progress_->setAccessibleName(tr("Progress"));
  progress_->hide();
  sign_->setDefault(true);
  auto* buttons = new QDialogButtonBox(this);
  buttons->addButton(sign_, QDialogButtonBox::AcceptRole);
  buttons->addButton(cancel_, QDialogButtonBox::RejectRole);
  auto* layout = new QVBoxLayout(this);
  layout->addWidget(fields_);
  layout->addWidget(problem_);
  layout->addWidget(progress_);
  layout->addStretch(1);
  layout->addWidget(buttons);
}

void SignDialog::check() {
  const auto given = [](const QLineEdit* line) { return line && !line->text().trimmed().isEmpty(); };
  sign_->setEnabled(given(report_) && given(key_) && given(name_) && !work_.busy());
}

QString SignDialog::signedFile() const {
  const QString other = save_as_->text().trimmed();
  return other.isEmpty() ? report_->text().trimmed() : other;
}

QString SignDialog::problem() const { return problem_->isHidden() ? QString() : problem_->text(); }

SignOrder SignDialog::order() const {
  SignOrder order;
  order.report = bytes_of(report_);
  order.key = bytes_of(key_);
  order.certificate = bytes_of(certificate_);
  order.name = name_->text().trimmed().toStdString();
  order.role = static_cast<Person::Role>(role_->currentData().toInt());
  order.out = bytes_of(save_as_);
  order.password = password_->text().toStdString();
  return order;
}

bool SignDialog::mayReplace(const QString& path) {
  const QFileInfo file(path);
  if (!file.exists()) return true;
  QMessageBox box(
      QMessageBox::Question, tr("Replace the file"),
      tr("%1 is replaced by the signed report.").arg(pdf::shown_text(file.fileName().toStdString())),
      QMessageBox::Cancel, this);
  box.setTextFormat(Qt::PlainText);
  box.setInformativeText(tr("To keep it, name another file under Save as."));
  QPushButton* replace = box.addButton(tr("&Replace"), QMessageBox::AcceptRole);
  box.setDefaultButton(replace);
  box.setEscapeButton(QMessageBox::Cancel);
  box.exec();
  return box.clickedButton() == replace;
}

void SignDialog::sign() {
  problem_->hide();
  if (!mayReplace(signedFile())) return;
  const std::filesystem::path folder = QFile::encodeName(modules_).toStdString();
  work_.start(report_->text(), [order = order(), folder] { return signed_as(order, folder); });
}

void SignDialog::take(const Problems& problems) {
  if (problems.empty()) return accept();
  problem_->setText(problem_texts(problems).join(u'\n'));
  problem_->show();
  QAccessibleEvent alert(problem_, QAccessible::Alert);
  QAccessible::updateAccessibility(&alert);
}

void SignDialog::showBusy(bool busy) {
  fields_->setEnabled(!busy);
  cancel_->setEnabled(!busy);
  progress_->setVisible(busy);
  check();
}

void SignDialog::reject() {
  if (!work_.busy()) QDialog::reject();
}

}  // namespace soakwright::gui
