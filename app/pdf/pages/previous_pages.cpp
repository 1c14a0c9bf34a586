// SPDX-License-Identifier: GPL-3.0-or-later
// The records before this one of a job that took several: chart, holds, rates, thermocouples and file
// warnings of each.
#include <QPainter>

#include "app/pdf/pages/page_facts.h"
#include "app/pdf/pages/page_sections.h"

namespace soakwright::pdf {

void put_previous_records(PageFlow& flow, const Report& report) {
  for (const std::shared_ptr<const Report>& record : report.previous_records) {
    flow.heading(QStringLiteral("Previous record: ") + text(record->subject), flow.mm(30.0));
    put_charts(flow, record);
    put_facts(flow, record->record);
    if (record->verdict)
      put_facts(flow, {{"Verdict by itself", record->verdict_text + ". " + record->verdict_sentence}});
    put_holds(flow, record);
    put_rates(flow, *record);
    put_channels(flow, *record);
    put_course(flow, *record);
    put_file_warnings(flow, *record);
  }
}

}  // namespace soakwright::pdf
