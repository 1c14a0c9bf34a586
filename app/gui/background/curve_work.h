// SPDX-License-Identifier: GPL-3.0-or-later
// Works out rates, spreads and differences off the GUI thread; the result of the latest request is emitted.
#pragma once

#include <QObject>
#include <memory>

#include "app/gui/chart/curve_set.h"

class QThread;

namespace soakwright::gui {

class CurveWork : public QObject {
  Q_OBJECT

 public:
  using QObject::QObject;
  ~CurveWork() override;

  /// `analysis.record` must be there.
  void start(const Analysis& analysis, const WantedCurves& wanted);
  /// Nothing more is heard of what runs.
  void forget() { ++ticket_; }

 signals:
  void ready(const std::shared_ptr<const soakwright::gui::CurveSet>& curves);

 private:
  void next();

  QThread* thread_ = nullptr;
  WantedCurves parts_;
  std::shared_ptr<const Analysis> wanted_;  ///< asked for while another was being worked out
  quint64 ticket_ = 0;
};

}  // namespace soakwright::gui
