// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/parts/people_dialog.h"

#include <QDate>
#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

namespace soakwright::gui {
namespace {

constexpr Person::Role kRoles[] = {Person::Role::performed, Person::Role::reviewed, Person::Role::witnessed};

QString role_words(Person::Role role) {
  switch (role) {
    case Person::Role::performed:
      return PeopleDialog::tr("Performed by");
    case Person::Role::reviewed:
      return PeopleDialog::tr("Reviewed by");
    case Person::Role::witnessed:
      break;
  }
  return PeopleDialog::tr("Witnessed by");
}

std::optional<std::string> text_of(const QLineEdit* line) {
  const QString text = line->text().trimmed();
  return text.isEmpty() ? std::nullopt : std::optional(text.toStdString());
}

}  // namespace

PeopleDialog::PeopleDialog(std::vector<Person> people, QWidget* parent)
    : QDialog(parent),
      before_(std::move(people)),
      buttons_(new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this)) {
  setWindowTitle(tr("Performed, reviewed and witnessed by"));
  auto* grid = new QGridLayout;
  const QStringList heads = {tr("Name"), tr("Company"), tr("Date (year-month-day)"), tr("Remark")};
  for (int i = 0; i < heads.size(); ++i) grid->addWidget(new QLabel(heads[i], this), 0, i + 1);
  int line = 1;
  for (const Person::Role role : kRoles) {
    auto* label = new QLabel(role_words(role), this);
    grid->addWidget(label, line, 0);
    const auto field = [&](int column, const QString& text) {
      auto* edit = new QLineEdit(text, this);
      edit->setAccessibleName(QStringLiteral("%1, %2").arg(role_words(role), heads[column - 1]));
      grid->addWidget(edit, line, column);
      connect(edit, &QLineEdit::textChanged, this, &PeopleDialog::check);
      return edit;
    };
    const auto known =
        std::find_if(before_.begin(), before_.end(), [role](const Person& one) { return one.role == role; });
    const Person person = known == before_.end() ? Person{} : *known;
    const QString date =
        person.date ? QDate(person.date->year, person.date->month, person.date->day).toString(Qt::ISODate)
                    : QString();
    rows_[role] = {field(1, QString::fromStdString(person.name)),
                   field(2, QString::fromStdString(person.company.value_or(std::string{}))), field(3, date),
                   field(4, QString::fromStdString(person.remark.value_or(std::string{})))};
    label->setBuddy(rows_[role].name);
    ++line;
  }
  auto* layout = new QVBoxLayout(this);
  layout->addLayout(grid);
  layout->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  resize(720, height());
  check();
}

void PeopleDialog::check() {
  const bool sound = std::all_of(rows_.begin(), rows_.end(), [](const auto& row) {
    const QString date = row.second.date->text().trimmed();
    const bool named = text_of(row.second.name).has_value();
    const bool more = text_of(row.second.company) || text_of(row.second.remark) || !date.isEmpty();
    return (date.isEmpty() || QDate::fromString(date, Qt::ISODate).isValid()) && (named || !more);
  });
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(sound);
}

std::vector<Person> PeopleDialog::people() const {
  std::vector<Person> all;
  for (const auto& [role, row] : rows_) {
    if (const auto name = text_of(row.name)) {
      Person person;
      person.role = role;
      person.name = *name;
      person.company = text_of(row.company);
      person.remark = text_of(row.remark);
      if (const QDate day = QDate::fromString(row.date->text().trimmed(), Qt::ISODate); day.isValid())
        person.date = CivilDate{day.year(), day.month(), day.day()};
      all.push_back(std::move(person));
    }
    bool first = true;
    for (const Person& one : before_) {
      if (one.role != role) continue;
      if (!std::exchange(first, false)) all.push_back(one);
    }
  }
  return all;
}

}  // namespace soakwright::gui
