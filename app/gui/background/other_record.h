// SPDX-License-Identifier: GPL-3.0-or-later
// The record that the open one is compared with, evaluated against the same procedure.
#pragma once

#include <QObject>
#include <memory>
#include <string>

#include "app/gui/background/background_work.h"

namespace soakwright::gui {

class OtherRecord : public QObject {
  Q_OBJECT

 public:
  explicit OtherRecord(QObject* parent = nullptr);

  /// Reads the log at `path`, or the log of the job there, and evaluates it as `beside` is.
  void open(const QString& path, const OpenCase& beside);
  /// Evaluates it again where the procedure of `beside` is another than it was.
  void follow(const OpenCase& beside);
  void close();
  /// Null where nothing is compared.
  [[nodiscard]] std::shared_ptr<const OpenCase> get() const { return other_; }
  [[nodiscard]] bool busy() const { return work_.busy(); }

 signals:
  void changed();
  /// What was compared before stays.
  void refused(const soakwright::Problems& problems);

 private:
  BackgroundWork work_;
  std::shared_ptr<const OpenCase> other_;
  std::string wanted_source_;  ///< the procedure's text that the work in hand evaluates against
};

}  // namespace soakwright::gui
