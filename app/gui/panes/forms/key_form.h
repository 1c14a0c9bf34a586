// SPDX-License-Identifier: GPL-3.0-or-later
// The keys of one table of a TOML file, each in a field with its unit behind it and what is wrong with it
// below. Fields show what the text says, right or wrong, so that it can be put right.
#pragma once

#include <QWidget>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/procedure/toml/toml_shown.h"

class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace soakwright::gui {

struct FormKey {
  enum class Kind { words, value, choice };  ///< `value`: a number, a rule in braces, a time
  std::string key;
  QString name;
  Kind kind = Kind::value;
  QString unit = {};  ///< behind the field; %1 stands for the degree of the file
  QString tip = {};
  std::vector<std::pair<QString, QString>> choices = {};  ///< words, and the value as the file has it
};

class KeyForm : public QWidget {
  Q_OBJECT

 public:
  /// `columns` fields side by side.
  KeyForm(std::vector<FormKey> keys, int columns, QWidget* parent = nullptr);

  /// What the text says; none: the table is not there. `degree` is "C" or "F".
  void show(const TomlShownTable* table, const QString& degree);
  /// What is wrong, by key; beside the field of any other key nothing is said.
  void say(const std::map<std::string, QString>& problems);
  [[nodiscard]] bool has(const std::string& key) const { return fields_.count(key) > 0; }
  [[nodiscard]] QLineEdit* line(const std::string& key) const { return fields_.at(key).line; }
  [[nodiscard]] QComboBox* box(const std::string& key) const { return fields_.at(key).box; }
  [[nodiscard]] QString problemOf(const std::string& key) const;
  [[nodiscard]] const std::vector<FormKey>& keys() const { return keys_; }

 signals:
  /// As TOML writes it; none: the key goes.
  void changed(const std::string& key, const std::optional<std::string>& value);

 private:
  struct Field {
    QLineEdit* line = nullptr;  ///< or
    QComboBox* box = nullptr;
    QLabel* unit = nullptr;
    QLabel* problem = nullptr;
    QString shown;
  };
  void add(QGridLayout* grid, const FormKey& key, int row, int column);
  void finish(const FormKey& key);

  std::vector<FormKey> keys_;
  std::map<std::string, Field> fields_;
};

}  // namespace soakwright::gui
