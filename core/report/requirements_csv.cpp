// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/requirements_csv.h"

#include "core/explain/shortfall.h"
#include "core/report/csv_writer.h"
#include "core/wording/requirement_text.h"
#include "core/wording/result_words.h"
#include "core/wording/statement_words.h"

namespace soakwright {
namespace {

void moment(CsvWriter& csv, const Record& record, const std::optional<double>& at_s) {
  csv.number(at_s);
  csv.exact(at_s ? record.clock.iso(*at_s) : std::string{});
}

}  // namespace

std::string requirements_csv_header() {
  return "log,weld,requirement,limit,unit,measured,margin,verdict,thermocouple,thermocouple_2,at_s,at,from_s,"
         "from,"
         "to_s,to,standard_error,uncertainty,certain,possible,text,shortfall\n";
}

std::string requirements_csv(const Analysis& analysis, const std::string& log) {
  const Record& record = *analysis.record;
  const PrintedNumbers say{TemperatureUnit::celsius, record};
  CsvWriter csv;
  for (const Requirement& requirement : analysis.verdicts->requirements) {
    csv.text(log);
    csv.text(requirement.weld.value_or(""));
    csv.text(requirement.id);
    csv.number(requirement.limit);
    csv.text(result_word(requirement.quantity()));
    csv.number(requirement.measured);
    csv.number(requirement.margin);
    csv.text(result_word(requirement.verdict));
    csv.text(requirement.channel.value_or(""));
    csv.text(requirement.channel_2.value_or(""));
    moment(csv, record, requirement.at_s);
    moment(csv, record, requirement.from_s);
    moment(csv, record, requirement.to_s);
    csv.number(requirement.standard_error);
    csv.number(requirement.uncertainty);
    csv.number(requirement.certain_s);
    csv.number(requirement.possible_s);
    csv.text(requirement_text(requirement, *analysis.procedure, say));
    csv.text(words(shortfall(*analysis.procedure, requirement), say));
    csv.end_line();
  }
  return csv.str();
}

}  // namespace soakwright
