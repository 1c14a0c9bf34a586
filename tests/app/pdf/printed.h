// SPDX-License-Identifier: GPL-3.0-or-later
// A report printed into a folder of its own and read back with poppler's tools.
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "core/report/report.h"

namespace soakwright {

/// Brings the application object that fonts need, without a display, and demands a font: without one every
/// letter is an empty box and nothing that is read back means anything.
void need_application_and_font();

/// What a program printed; the test fails where it did not end well.
std::string output_of(const std::string& program, const std::vector<std::string>& arguments);

class Printed {
 public:
  explicit Printed(const Report& report, const std::string& name = "report.pdf");
  ~Printed();
  Printed(const Printed&) = delete;
  Printed& operator=(const Printed&) = delete;

  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] int pages() const;
  /// Of one page, from 1, or of all; spaces and line ends as one blank.
  [[nodiscard]] std::string text(int page = 0) const;

 private:
  std::string folder_, path_;
};

}  // namespace soakwright
