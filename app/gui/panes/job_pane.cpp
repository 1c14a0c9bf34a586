// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/job_pane.h"

#include <QFile>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "app/gui/panes/forms/job_heat_form.h"
#include "app/gui/panes/forms/weld_cards.h"
#include "app/gui/panes/thermocouple_places.h"
#include "app/gui/parts/read_only_look.h"
#include "app/gui/parts/source_text.h"
#include "app/gui/verdict_sign.h"
#include "core/units/printed_quantity.h"

namespace soakwright::gui {
namespace {

struct Line {
  const char* table;
  const char* key;
  const char* name;
};

constexpr Line kLines[] = {
    {"", "work", QT_TR_NOOP("Work")},
    {"", "weld", QT_TR_NOOP("Weld")},
    {"", "client", QT_TR_NOOP("Client")},
    {"", "contractor", QT_TR_NOOP("Contractor")},
    {"", "material", QT_TR_NOOP("Material")},
    {"", "drawing", QT_TR_NOOP("Drawing")},
    {"", "equipment", QT_TR_NOOP("Equipment")},
    {"", "report_number", QT_TR_NOOP("Report number")},
    {"", "cycle", QT_TR_NOOP("Cycle")},
    {"recorder", "certificate", QT_TR_NOOP("Recorder certificate")},
    {"recorder", "valid_until", QT_TR_NOOP("Recorder valid until")},
};

std::optional<std::string> value_of(const Job& job, const std::string& table, const std::string& key) {
  if (table == "recorder") {
    if (!job.recorder) return std::nullopt;
    if (key == "certificate") return job.recorder->certificate;
    return job.recorder->valid_until ? std::optional(date_text(*job.recorder->valid_until)) : std::nullopt;
  }
  if (key == "cycle") return job.cycle ? std::optional(std::to_string(*job.cycle)) : std::nullopt;
  const std::pair<const char*, const std::optional<std::string>*> texts[] = {
      {"work", &job.work},           {"weld", &job.weld},
      {"client", &job.client},       {"contractor", &job.contractor},
      {"material", &job.material},   {"drawing", &job.drawing},
      {"equipment", &job.equipment}, {"report_number", &job.report_number}};
  for (const auto& [name, text] : texts)
    if (key == name) return *text;
  return std::nullopt;
}

}  // namespace

JobPane::JobPane(QWidget* parent)
    : QWidget(parent),
      welds_(new WeldCards(this)),
      heat_(new JobHeatForm(this)),
      places_(new ThermocouplePlaces(this)),
      source_(new SourceText(tr("Text of the job"), tr("Why the job cannot be used"),
                             tr("Evaluate with this text; it is saved with Save in the job"), this)) {
  form_ = new QWidget(this);
  QWidget* const form = form_;
  auto* grid = new QGridLayout(form);
  int row = 0;
  for (const Line& line : kLines) {
    const Place place{line.table, line.key};
    Field field;
    field.line = new QLineEdit(form);
    field.line->setAccessibleName(tr(line.name));
    field.problem = new QLabel(form);
    field.problem->setTextFormat(Qt::PlainText);
    field.problem->setWordWrap(true);
    field.problem->hide();
    auto* label = new QLabel(tr(line.name), form);
    label->setBuddy(field.line);
    grid->addWidget(label, row, 0);
    grid->addWidget(field.line, row, 1);
    grid->addWidget(field.problem, row + 1, 1);
    row += 2;
    fields_[place] = field;
    connect(field.line, &QLineEdit::editingFinished, this, [this, place] { finish(place); });
  }
  grid->addWidget(welds_, row++, 0, 1, 2);
  grid->addWidget(heat_, row++, 0, 1, 2);
  grid->setRowStretch(row, 1);
  auto* scroll = new QScrollArea(this);
  scroll->setWidget(form);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setFocusPolicy(Qt::NoFocus);

  // Above the text: the thermocouples' tables are in it.
  auto* written = new QSplitter(Qt::Vertical, this);
  written->addWidget(places_);
  written->addWidget(source_);
  written->setStretchFactor(0, 0);
  written->setStretchFactor(1, 1);
  written->setCollapsible(1, false);
  auto* both = new QSplitter(Qt::Horizontal, this);
  both->addWidget(scroll);
  both->addWidget(written);
  both->setStretchFactor(0, 2);
  both->setStretchFactor(1, 3);
  both->setChildrenCollapsible(false);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->addWidget(both);
  const auto whole = [this](const std::string& text) {
    emit changed({{std::nullopt, {}, std::nullopt, std::nullopt, text}});
  };
  connect(source_, &SourceText::applied, this, whole);
  connect(welds_, &WeldCards::changed, this, whole);
  connect(heat_, &JobHeatForm::changed, this, whole);
}

QPlainTextEdit* JobPane::text() const { return source_->editor(); }

void JobPane::finish(const Place& place) {
  Field& field = fields_.at(place);
  const QString typed = field.line->text().trimmed();
  if (typed == field.shown) return;
  field.shown = typed;
  JobChange change{std::nullopt, place.second,
                   typed.isEmpty() ? std::nullopt : std::optional(typed.toStdString())};
  change.table = place.first;
  emit changed({change});
}

QString JobPane::problemOf(const std::string& table, const std::string& key) const {
  const QLabel* problem = fields_.at({table, key}).problem;
  return problem->isHidden() ? QString() : problem->text();
}

void JobPane::showField(const Place& place, const std::optional<std::string>& value,
                        const QStringList& problems) {
  Field& field = fields_.at(place);
  const QString name = QStringLiteral("`%1`").arg(QString::fromStdString(place.second));
  QString wrong;
  for (const QString& problem : problems)
    if (problem.contains(name)) wrong = problem;
  field.problem->setText(wrong);
  field.problem->setVisible(!wrong.isEmpty());
  QPalette ink = field.problem->palette();
  ink.setColor(QPalette::WindowText, colour_of(Sign::not_met, ChartColours::of(palette())));
  field.problem->setPalette(ink);
  // What was typed and refused stays, so that it can be put right.
  if (!wrong.isEmpty()) return;
  field.shown = QString::fromStdString(value.value_or(std::string{}));
  if (field.line->text() != field.shown) field.line->setText(field.shown);
}

void JobPane::show(const Session& session) {
  const OpenCase& open = session.open();
  const Job none;
  const Job& job = open.analysis.job ? *open.analysis.job : none;
  const QStringList& problems = session.sheetTexts();
  places_->show(open.report, open.analysis.job);
  for (const auto& [place, field] : fields_) {
    field.line->setEnabled(open.has_record() && !open.read_only());
    if (place.second == "weld" && !job.welds.empty()) {
      field.line->setEnabled(false);
      field.line->setPlaceholderText(tr("several welds: see below"));
    }
    std::optional<std::string> value = value_of(job, place.first, place.second);
    // What was typed and is not in the job yet, or was refused, stays so that it can be put right.
    for (const JobChange& change : session.wanted())
      if (!change.column && !change.added && !change.whole && change.table == place.first &&
          change.key == place.second)
        value = change.value;
    showField(place, value, problems);
  }
  source_->say(problems);
  std::string text;
  // A report without a job has none to show.
  if (open.has_record() && !(open.read_only() && open.files.job.isEmpty())) {
    auto made = job_text_of(open.files.job, session.wanted(), open.log_path, open.procedure_path);
    if (made) text = std::move(made).value();
  }
  source_->show(text, open.has_record() && !open.read_only());
  const std::string name = open.files.job.isEmpty() ? unwritten_job_name().toStdString()
                                                    : QFile::encodeName(open.files.job).toStdString();
  Problems of_job;
  for (const Problem& problem : session.problems())
    if (problem.file == name) of_job.push_back(problem);
  welds_->show(text, name, of_job);
  heat_->show(text, name, of_job);
  if (open.read_only()) heat_->setEnabled(false);
  show_as_read_only(form_, open.read_only());
}

}  // namespace soakwright::gui
