// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/column_words.h"

namespace soakwright {

std::string content_text(ColumnContent content) {
  switch (content) {
    case ColumnContent::none:
    case ColumnContent::other_unit:
      return {};
    case ColumnContent::set_point:
      return "set point";
    case ColumnContent::cold_junction:
      return "cold junction";
    case ColumnContent::emf_without_cold_junction:
      return "mV without a cold junction";
    case ColumnContent::text:
      return "text";
    case ColumnContent::empty:
      return "empty";
    case ColumnContent::counter:
      return "counter";
    case ColumnContent::output:
      return "output";
    case ColumnContent::pressure:
      return "pressure";
    case ColumnContent::heat_flux:
      return "heat flux";
    case ColumnContent::alarm:
      return "alarm or event";
    case ColumnContent::other_quantity:
      return "another quantity";
  }
  return {};
}

std::string one_of_text(ColumnContent content) {
  const std::string text = content_text(content);
  switch (content) {
    case ColumnContent::pressure:
    case ColumnContent::heat_flux:
    case ColumnContent::other_quantity:
      return text;
    case ColumnContent::output:
    case ColumnContent::alarm:
      return std::string{"an "}.append(text);
    default:
      return std::string{"a "}.append(text);
  }
}

std::string reason_text(const ColumnReason& reason) {
  return reason.content == ColumnContent::other_unit ? std::string{"unit "}.append(reason.unit)
                                                     : content_text(reason.content);
}

}  // namespace soakwright
