// SPDX-License-Identifier: GPL-3.0-or-later
// What a job says about preheat, bands, tempering and hydrogen, in fields: [composition] and
// `minimum_preheat`, [[band]], [qualified], [hydrogen]. Every change is an edit of the job's text, so that
// its comments stay.
#pragma once

#include <QWidget>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/toml/toml_shown.h"

class QFrame;
class QPushButton;
class QVBoxLayout;

namespace soakwright::gui {

class ProblemLabel;

class KeyForm;

class JobHeatForm : public QWidget {
  Q_OBJECT

 public:
  explicit JobHeatForm(QWidget* parent = nullptr);

  /// `text` is the job's as it is wanted now, `name` the file's in `problems`.
  void show(const std::string& text, const std::string& name, const Problems& problems);
  /// Of the job itself (empty), "composition", "qualified" or "hydrogen".
  [[nodiscard]] KeyForm* form(const std::string& table) const;
  [[nodiscard]] std::size_t bands() const { return bands_.size(); }
  [[nodiscard]] KeyForm* band(std::size_t entry) const { return bands_[entry].form; }
  [[nodiscard]] QPushButton* addBand() const { return add_band_; }
  /// What is wrong with a table as a whole; empty: nothing.
  [[nodiscard]] QString problemOf(const std::string& table) const;

 signals:
  /// The whole text as it is to be.
  void changed(const std::string& text);

 private:
  struct Section {
    std::string table;
    KeyForm* form = nullptr;
    ProblemLabel* problem = nullptr;
  };
  struct Band {
    QFrame* card = nullptr;
    KeyForm* form = nullptr;
    ProblemLabel* problem = nullptr;
  };
  void matchBands(std::size_t count);
  void setKey(const TomlTableName& table, const std::string& key, const std::optional<std::string>& value);
  void take(const Result<std::string>& text);

  std::string now_, name_;
  std::vector<Section> sections_;
  std::vector<Band> bands_;
  QVBoxLayout* band_column_ = nullptr;
  QPushButton* add_band_;
};

}  // namespace soakwright::gui
