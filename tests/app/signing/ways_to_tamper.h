// SPDX-License-Identifier: GPL-3.0-or-later
// Ways to change a signed report, each by somebody who would not be noticed.
#pragma once

#include <functional>
#include <string>
#include <vector>

struct Way {
  const char* what;
  std::function<std::string(const std::string&)> change;
};

const std::vector<Way>& ways_to_tamper();
