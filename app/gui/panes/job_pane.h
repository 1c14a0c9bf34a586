// SPDX-License-Identifier: GPL-3.0-or-later
// The job: the lines of its head in fields, and its whole text. Both edit the same text, so that comments
// stay; each change is evaluated at once and can be undone.
#pragma once

#include <QWidget>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "app/gui/session.h"

class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace soakwright::gui {

class JobHeatForm;
class SourceText;
class ThermocouplePlaces;
class WeldCards;

class JobPane : public QWidget {
  Q_OBJECT

 public:
  explicit JobPane(QWidget* parent = nullptr);

  void show(const Session& session);
  /// By table (empty: the head) and key.
  [[nodiscard]] QLineEdit* field(const std::string& table, const std::string& key) const {
    return fields_.at({table, key}).line;
  }
  /// What is wrong with a field; empty: nothing.
  [[nodiscard]] QString problemOf(const std::string& table, const std::string& key) const;
  [[nodiscard]] QPlainTextEdit* text() const;
  /// Preheat, bands, tempering, hydrogen.
  [[nodiscard]] JobHeatForm* heat() const { return heat_; }
  /// The cards of several welds.
  [[nodiscard]] WeldCards* welds() const { return welds_; }
  /// The sketch above the text.
  [[nodiscard]] ThermocouplePlaces* places() const { return places_; }

 signals:
  void changed(const std::vector<soakwright::JobChange>& changes);

 private:
  using Place = std::pair<std::string, std::string>;
  struct Field {
    QLineEdit* line = nullptr;
    QLabel* problem = nullptr;
    QString shown;  ///< as the job says it
  };
  void finish(const Place& place);
  void showField(const Place& place, const std::optional<std::string>& value, const QStringList& problems);

  std::map<Place, Field> fields_;
  QWidget* form_ = nullptr;  ///< all of the fields
  WeldCards* welds_;
  JobHeatForm* heat_;
  ThermocouplePlaces* places_;
  SourceText* source_;
};

}  // namespace soakwright::gui
