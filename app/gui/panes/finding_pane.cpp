// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/finding_pane.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <utility>

#include "app/gui/panes/list_contents.h"
#include "app/gui/parts/choice_box.h"

namespace soakwright::gui {

FindingPane::FindingPane(QWidget* parent)
    : QWidget(parent),
      filter_(new QLineEdit(this)),
      groups_(new ChoiceBox(this)),
      order_(new ChoiceBox(this)),
      list_(new ListPane(tr("Findings"), this)) {
  filter_->setPlaceholderText(tr("Filter: words of a finding"));
  filter_->setAccessibleName(tr("Filter of the findings"));
  filter_->setClearButtonEnabled(true);
  groups_->setAccessibleName(tr("Groups of the findings"));
  groups_->addItem(tr("No groups"), static_cast<int>(FindingGroups::none));
  groups_->addItem(tr("By weld"), static_cast<int>(FindingGroups::weld));
  groups_->addItem(tr("By stage"), static_cast<int>(FindingGroups::stage));
  groups_->addItem(tr("By event"), static_cast<int>(FindingGroups::event));
  order_->setAccessibleName(tr("Order of the findings"));
  order_->addItem(tr("Worst first"), static_cast<int>(FindingOrder::worst_first));
  order_->addItem(tr("In order of time"), static_cast<int>(FindingOrder::time));
  auto* head = new QHBoxLayout;
  head->setContentsMargins(4, 2, 4, 2);
  head->addWidget(filter_, 1);
  head->addWidget(groups_);
  head->addWidget(order_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addLayout(head);
  layout->addWidget(list_, 1);
  setFocusProxy(list_);
  connect(filter_, &QLineEdit::textChanged, this, &FindingPane::fill);
  for (const QComboBox* box : {groups_, order_})
    connect(box, &QComboBox::currentIndexChanged, this, &FindingPane::fill);
}

void FindingPane::show(std::shared_ptr<const Report> report) {
  report_ = std::move(report);
  fill();
}

void FindingPane::fill() {
  ListContent content =
      finding_lines(report_.get(), static_cast<FindingOrder>(order_->currentData().toInt()));
  if (report_)
    content = finding_groups(std::move(content), *report_, filter_->text(),
                             static_cast<FindingGroups>(groups_->currentData().toInt()));
  list_->setContent(std::move(content));
  emit filtered();
}

std::vector<std::size_t> FindingPane::listed() const {
  std::vector<std::size_t> findings;
  for (const ListLine& line : list_->lines().content().lines)
    if (!line.heading) findings.push_back(line.index);
  return findings;
}

}  // namespace soakwright::gui
