// SPDX-License-Identifier: GPL-3.0-or-later
// The procedure: every key in a form, stage by stage, and its whole text beside it. Both edit the same text,
// so that comments stay; each change is evaluated at once and can be undone. What is wrong is said beside its
// field.
#pragma once

#include <QWidget>

#include "app/gui/session.h"
#include "core/procedure/toml/toml_shown.h"

class QLabel;
class QPlainTextEdit;
class QPushButton;
class QVBoxLayout;

namespace soakwright::gui {

class KeyForm;
class SourceText;
class StageCard;

class ProcedurePane : public QWidget {
  Q_OBJECT

 public:
  explicit ProcedurePane(QWidget* parent = nullptr);

  void show(const Session& session);
  [[nodiscard]] QPlainTextEdit* text() const;
  /// The fields of the keys before every table (`table` empty), of [evaluation] or [record].
  [[nodiscard]] KeyForm* form(const std::string& table) const;
  [[nodiscard]] const std::vector<StageCard*>& stages() const { return stages_; }
  /// What is wrong with the text as a whole; empty: nothing.
  [[nodiscard]] QString message() const;
  /// The same edit as in the fields of that key, in one step for all of the tables.
  void change(const std::vector<TomlTableName>& tables, const std::string& key, const std::string& value);
  /// Typed into the text and not applied.
  [[nodiscard]] bool typed() const;

 signals:
  /// The whole text as it is to be, and what was changed, in words.
  void changed(const std::string& text, const QString& words);
  void newWanted();
  void saveWanted();
  void saveAsWanted();
  void editorWanted();

 private:
  struct Section {
    std::string table;
    KeyForm* form;
  };
  void build();
  void showForm(const Problems& problems);
  void matchStages(const std::vector<TomlShownTable>& tables);
  void setKey(const TomlTableName& table, const std::string& key, const std::optional<std::string>& value);
  void take(const Result<std::string>& text, const QString& words);
  void addStage(const std::string& kind);

  std::string now_;     ///< the procedure's text as it is wanted
  std::string name_;    ///< of its file, as in messages
  bool fixed_ = false;  ///< read from a report: nothing can be changed
  QLabel* file_;
  SourceText* source_;
  QPushButton* save_;
  QPushButton* save_as_;
  QPushButton* editor_;
  QPushButton* fresh_;
  QPushButton* add_;
  QWidget* fields_ = nullptr;
  QVBoxLayout* stage_column_ = nullptr;
  std::vector<Section> sections_;
  std::vector<StageCard*> stages_;
};

}  // namespace soakwright::gui
