// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/phases/suspects/suspect_word.h"

namespace soakwright {

std::string_view suspect_word(Suspect::Code code) {
  switch (code) {
    case Suspect::Code::open:
      return "open";
    case Suspect::Code::stuck:
      return "stuck";
    case Suspect::Code::copied:
      return "copied";
    case Suspect::Code::clipped:
      return "clipped";
    case Suspect::Code::reversed:
      return "reversed";
    case Suspect::Code::detached:
      return "detached";
    case Suspect::Code::noisy:
      return "noisy";
    case Suspect::Code::spike:
      return "spike";
    case Suspect::Code::lag:
      return "lag";
  }
  return "";
}

}  // namespace soakwright
