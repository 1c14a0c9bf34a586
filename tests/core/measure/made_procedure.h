// SPDX-License-Identifier: GPL-3.0-or-later
// Procedures and jobs for tests from the text that a user would write, without its first lines.
#pragma once

#include <string>

#include <catch2/catch.hpp>

#include "core/procedure/job/job_file.h"
#include "core/procedure/procedure_file.h"

namespace soakwright {

/// `text` in degrees Celsius: keys of the file itself first, then [evaluation], [record] and stages.
inline Procedure procedure_of(const std::string& text, const std::string& unit = "C") {
  std::string whole = "soakwright = \"procedure 1\"\nnumber = \"HTP-900\"\nunit = \"";
  whole += unit + "\"\n" + text;
  auto procedure = parse_procedure(whole, "made.toml");
  if (!procedure) FAIL(procedure.problems().front().text());
  return std::move(procedure).value();
}

inline Job job_of(const std::string& text) {
  auto job = parse_job("soakwright = \"job 1\"\n" + text, "made-job.toml");
  if (!job) FAIL(job.problems().front().text());
  return std::move(job).value();
}

}  // namespace soakwright
