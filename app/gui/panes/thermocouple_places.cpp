// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/thermocouple_places.h"

#include <QFontInfo>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/gui/chart/chart_scene.h"
#include "app/gui/texts/window_text.h"
#include "app/pdf/pages/position_sketch.h"
#include "app/pdf/shown_text.h"

namespace soakwright::gui {
namespace {

constexpr int kLeastHeight = 130;
constexpr int kUsualHeight = 170;
constexpr double kRoomAround_mm = 8.0;  ///< less than on paper: a window is low

/// Millimetres of the sketch so large that its words have the size of the window's.
pdf::Scale scale_for(const QFont& font) {
  constexpr double kMillimetresPerPoint = 25.4 / 72.0;
  return pdf::Scale(QFontInfo(font).pixelSize() / (pdf::kBodyPoints * kMillimetresPerPoint));
}

bool is_thermocouple(const ChartTrace& trace) {
  return trace.role != ChartTrace::Role::set_point && (trace.role != ChartTrace::Role::off || trace.excluded);
}

QString no_sketch(const Chart& chart) {
  const auto placed = [&chart](const ChartTrace& trace) {
    return is_thermocouple(trace) && chart.record->channels[trace.channel].position_m.has_value();
  };
  if (std::any_of(chart.traces.begin(), chart.traces.end(), placed))
    return tr(
        "Every position given is the same. For a sketch give other positions, or `angle`, in the "
        "[[thermocouple]] tables of the text.");
  return tr(
      "For a sketch of the thermocouples give `position` or `angle` in the [[thermocouple]] tables of "
      "the text, such as position = \"300 mm\" and angle = \"90 deg\".");
}

}  // namespace

class PlacesCanvas : public QWidget {
 public:
  using QWidget::QWidget;
  void show(std::shared_ptr<const Report> report, std::vector<BandEntry> bands) {
    report_ = std::move(report);
    bands_ = std::move(bands);
    update();
  }
  [[nodiscard]] QSize sizeHint() const override { return {300, kUsualHeight}; }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    if (!report_) return;
    const ChartColours colours = ChartColours::of(palette());
    const pdf::SketchLook look{colours.background, colours.ink, colours.faint_ink,
                               colours.grid,       bands_,      trace_pens(report_->chart, colours),
                               kRoomAround_mm};
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), colours.background);
    const pdf::Scale scale = scale_for(font());
    const double edge = scale.mm(1.0);
    pdf::paint_sketch(painter, QRectF(rect()).adjusted(edge, edge, -edge, -edge), scale, report_->chart,
                      look);
  }

 private:
  std::shared_ptr<const Report> report_;
  std::vector<BandEntry> bands_;
};

ThermocouplePlaces::ThermocouplePlaces(QWidget* parent)
    : QWidget(parent), canvas_(new PlacesCanvas(this)), words_(new QLabel(this)) {
  setAccessibleName(tr("Where the thermocouples sit"));
  canvas_->setAccessibleName(tr("Sketch of the thermocouples' places"));
  canvas_->setMinimumHeight(kLeastHeight);
  canvas_->hide();
  words_->setTextFormat(Qt::PlainText);
  words_->setWordWrap(true);
  words_->setContentsMargins(8, 0, 8, 0);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 4, 0, 0);
  layout->addWidget(canvas_, 1);
  layout->addWidget(words_);
}

ThermocouplePlaces::~ThermocouplePlaces() = default;

QWidget* ThermocouplePlaces::sketch() const { return canvas_; }

QString ThermocouplePlaces::words() const { return words_->text(); }

void ThermocouplePlaces::show(const std::shared_ptr<const Report>& report,
                              const std::shared_ptr<const Job>& job) {
  setVisible(report != nullptr);
  const bool drawn = report && pdf::has_sketch(report->chart);
  canvas_->show(drawn ? report : nullptr, job ? job->bands : std::vector<BandEntry>{});
  canvas_->setVisible(drawn);
  if (!report) return words_->clear();
  if (!drawn) return words_->setText(no_sketch(report->chart));
  const std::vector<std::size_t> shown = pdf::traces_on_sketch(report->chart);
  QStringList placed;
  QStringList without;
  for (std::size_t i = 0; i < report->chart.traces.size(); ++i) {
    const ChartTrace& trace = report->chart.traces[i];
    const QString legend = pdf::shown_text(trace.legend);
    if (std::find(shown.begin(), shown.end(), i) != shown.end())
      placed.append(tr("%1 %2").arg(pdf::shown_text(trace.tag), legend));
    else if (is_thermocouple(trace))
      without.append(legend);
  }
  QString said = placed.join(QStringLiteral(" · "));
  if (!without.isEmpty())
    said += u'\n' + tr("Not on the sketch, no place given: %1").arg(without.join(QStringLiteral(", ")));
  words_->setText(said);
  canvas_->setAccessibleDescription(said);
}

}  // namespace soakwright::gui
