// SPDX-License-Identifier: GPL-3.0-or-later
// File warnings about columns and their cells.
#pragma once

#include <string_view>

#include "core/units/sentence.h"

namespace soakwright {

/// Empty for a sentence of another section.
constexpr std::string_view column_notice_pattern(Sentence sentence) {
  switch (sentence) {
    case Sentence::cells_empty:
      return "{0:cell is|cells are} empty: no reading there.";
    case Sentence::cells_of_one_text:
      return "{0:cell holds|cells hold} '{1}' and no number; taken as missing.";
    case Sentence::cells_of_text:
      return "{0:cell holds|cells hold} no number, the first '{1}'; taken as missing.";
    case Sentence::cells_of_texts:
      return "{0:cell holds|cells hold} no number: {1}; taken as missing.";
    case Sentence::cells_of_many_texts:
      return "{0:cell holds|cells hold} no number: {1}, {2} with other texts; taken as missing.";
    case Sentence::digits_grouped:
      return "{0:number is|numbers are} written with digit grouping, the first '{1}'; taken as missing.";
    case Sentence::numbers_out_of_range:
      return "{0:number is|numbers are} no temperature that a thermocouple measures, the first {1}; taken as "
             "missing.";
    case Sentence::name_may_end_in_unit:
      return "The name '{0}' ends in what may be a unit, but the column reads like a thermocouple and is "
             "evaluated. If it is none, give its role in the job.";
    case Sentence::name_suggests:
      return "The name '{0}' suggests {1}, but the column reads like a thermocouple and is evaluated. If it "
             "is none, give its role in the job.";
    case Sentence::name_of_several_columns:
      return "Columns {0} have one and the same name. Give each a name in the job.";
    case Sentence::name_of_many_columns:
      return "Columns {0} and more have one and the same name. Give each a name in the job.";
    case Sentence::unit_against_job:
      return "The job gives the unit {0}, the log says '{1}'; the job is followed.";
    case Sentence::emf_type_assumed:
      return "The job names no type for this emf; type K is assumed.";
    case Sentence::unit_of_column_assumed:
      return "The log names no unit for this column; degrees Celsius are assumed. If that is wrong, give "
             "`unit` in [import] of the job.";
    case Sentence::unit_of_columns_assumed:
      return "The log names no unit for these columns; degrees Celsius are assumed. If that is wrong, give "
             "`unit` in [import] of the job.";
    case Sentence::column_not_in_job:
      return "The job lists other columns but not this one; it is evaluated as a monitor in the soak zone.";
    case Sentence::column_off_in_job:
      return "The job does not list this column and leaves such columns out: it is not evaluated.";
    case Sentence::column_not_evaluated:
      return "This column is not evaluated: {0}.";
    case Sentence::column_of_other_unit:
      return "This column is not evaluated: unit {0}.";
    default:
      return {};
  }
}

}  // namespace soakwright
