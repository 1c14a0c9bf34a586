// SPDX-License-Identifier: GPL-3.0-or-later
// The columns of the log as they were read, and what can be said of each: name, unit, role, and for an emf
// its type and cold junction.
#pragma once

#include <QTableWidget>
#include <map>
#include <optional>
#include <vector>

#include "core/procedure/job/job_changes.h"
#include "core/record/record.h"
#include "core/report/report.h"

namespace soakwright::gui {

class ColumnTable : public QTableWidget {
  Q_OBJECT

 public:
  enum Part { number, name, unit, kind, type, cold_junction, first_values, missing, parts };

  explicit ColumnTable(QWidget* parent = nullptr);
  ~ColumnTable() override;

  /// Nothing where the log could not be read.
  void show(const Record* record, const Job* job, const Report* report);

 protected:
  void paintEvent(QPaintEvent* event) override;

 signals:
  /// To be made at once, and undone at once.
  void changed(const std::vector<soakwright::JobChange>& changes);

 private:
  struct Line;
  static void addEntry(Line& line, std::optional<std::size_t> place, const Job* job);
  static ColumnNames namesOf(const Line& line, const std::map<std::size_t, Line>& lines);
  void showLine(int row, const Line& line);
  void setBox(int row, Part part, const QString& label,
              const std::vector<std::pair<QString, QString>>& choices, const QString& now);
  void tell(int row, const std::string& key, const QString& value);

  void showAgain();

  std::vector<ColumnNames> names_;  ///< by row
  std::vector<Line> lines_;         ///< likewise
  bool showing_ = false;
};

}  // namespace soakwright::gui
