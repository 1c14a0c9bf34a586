#include "core/problems/problem.h"

namespace soakwright {

std::string Problem::text() const {
  std::string out;
  if (!file.empty()) {
    out += file;
    out += ':';
    if (line != 0) {
      out += std::to_string(line);
      out += ':';
    }
    out += ' ';
  }
  out += what;
  if (!help.empty()) {
    out += "; ";
    out += help;
  }
  return out;
}

}  // namespace soakwright
