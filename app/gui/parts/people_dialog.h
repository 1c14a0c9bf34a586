// SPDX-License-Identifier: GPL-3.0-or-later
// Who performed, reviewed and witnessed the heat treatment: the names on the report's signature lines.
#pragma once

#include <QDialog>
#include <map>
#include <vector>

#include "core/procedure/review/review.h"

class QDialogButtonBox;
class QLineEdit;

namespace soakwright::gui {

class PeopleDialog : public QDialog {
  Q_OBJECT

 public:
  explicit PeopleDialog(std::vector<Person> people, QWidget* parent = nullptr);

  /// Of each role the first as it was typed; further ones as they were.
  [[nodiscard]] std::vector<Person> people() const;

 private:
  struct Row {
    QLineEdit* name;
    QLineEdit* company;
    QLineEdit* date;
    QLineEdit* remark;
  };
  void check();

  std::vector<Person> before_;
  std::map<Person::Role, Row> rows_;
  QDialogButtonBox* buttons_;
};

}  // namespace soakwright::gui
