// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wording/notice_words.h"

#include "core/wording/statement_words.h"

namespace soakwright {

std::string notice_text(const Notice& notice, const Record& record) {
  return words(notice.what, PrintedNumbers{TemperatureUnit::celsius, record});
}

}  // namespace soakwright
