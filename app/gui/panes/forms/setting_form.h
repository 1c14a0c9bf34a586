// SPDX-License-Identifier: GPL-3.0-or-later
// The settings by which a log is read, each in a box: as found, or what a person gives.
#pragma once

#include <QWidget>
#include <map>
#include <string>
#include <vector>

#include "app/gui/texts/log_preview.h"
#include "core/procedure/job/job_changes.h"
#include "core/record/record.h"

class QComboBox;
class QGridLayout;
class QLineEdit;

namespace soakwright::gui {

class SettingForm : public QWidget {
  Q_OBJECT

 public:
  explicit SettingForm(QWidget* parent = nullptr);

  /// `record` is null where the log could not be read: what the job gives is `by_job` then. `wanted` wins
  /// over it.
  void show(const Record* record, const Job* job, const std::vector<JobChange>& wanted,
            const std::vector<JobChange>& by_job, const LogPreview* preview);
  /// By the job's key: delimiter, dates …
  [[nodiscard]] QComboBox* box(const std::string& key) const;
  /// By the job's key: date, start.
  [[nodiscard]] QLineEdit* field(const std::string& key) const;

 signals:
  void changed(const soakwright::JobChange& change);

 private:
  void add(QGridLayout* layout, const std::string& key, const QString& name,
           const std::vector<std::pair<QString, const char*>>& choices);
  void addField(QGridLayout* layout, const std::string& key, const QString& name, const QString& form,
                const QString& tip);
  void finishField(const std::string& key);
  void showFields(const Record* record, const Job* job, const std::vector<JobChange>& by_hand);
  void put(QGridLayout* layout, const QString& name, QWidget* widget);
  void showChoice(const std::string& key, const QString& found, const QString& given);

  std::map<std::string, QComboBox*> boxes_;
  std::map<std::string, QLineEdit*> fields_;
  std::map<std::string, QString> shown_;  ///< what each field says while nobody types
  bool showing_ = false;
};

}  // namespace soakwright::gui
