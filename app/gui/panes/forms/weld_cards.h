// SPDX-License-Identifier: GPL-3.0-or-later
// The welds of a job that has several, a card for each `[[weld]]` with its own composition. Every change is
// an edit of the job's text, so that its comments stay.
#pragma once

#include <QWidget>
#include <string>
#include <vector>

#include "core/problems/problem.h"
#include "core/procedure/toml/toml_shown.h"

class QFrame;
class QVBoxLayout;

namespace soakwright::gui {

class ProblemLabel;

class KeyForm;

class WeldCards : public QWidget {
  Q_OBJECT

 public:
  explicit WeldCards(QWidget* parent = nullptr);

  /// `text` is the job's as it is wanted now, `name` the file's in `problems`. Hidden where the job names its
  /// only weld in its head.
  void show(const std::string& text, const std::string& name, const Problems& problems);
  [[nodiscard]] std::size_t welds() const { return cards_.size(); }
  [[nodiscard]] KeyForm* form(std::size_t entry) const { return cards_[entry].form; }
  [[nodiscard]] KeyForm* composition(std::size_t entry) const { return cards_[entry].composition; }
  /// What is wrong with a weld beyond its fields; empty: nothing.
  [[nodiscard]] QString problemOf(std::size_t entry) const;

 signals:
  /// The whole text as it is to be.
  void changed(const std::string& text);

 private:
  struct Card {
    QFrame* frame = nullptr;
    ProblemLabel* problem = nullptr;
    KeyForm* form = nullptr;
    KeyForm* composition = nullptr;
    std::vector<TomlShownKey> elements;  ///< as the text has them
  };
  void match(std::size_t count);
  [[nodiscard]] Card makeCard(std::size_t entry);
  void showComposition(Card& card, const TomlShownTable& weld);
  void setElement(std::size_t entry, const std::string& element, const std::optional<std::string>& value);
  void take(const Result<std::string>& text);

  std::string now_, name_;
  std::vector<Card> cards_;
  QVBoxLayout* column_ = nullptr;
};

}  // namespace soakwright::gui
