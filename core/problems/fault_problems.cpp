// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/problems/fault_problems.h"

namespace soakwright::fault_problems {
namespace {

constexpr const char* kReportIt = "please report it, with the files that were read";

}  // namespace

Problem too_little_memory(const std::string& file) {
  return {ProblemKind::fault, file, 0, "there is not enough memory for this",
          "close other programs, or split the log"};
}

Problem unknown_fault(const std::string& file) {
  return {ProblemKind::fault, file, 0, "a fault of the program itself", kReportIt};
}

Problem fault(const std::string& file, std::string_view reason) {
  return {ProblemKind::fault, file, 0, std::string{"a fault of the program itself: "}.append(reason),
          kReportIt};
}

}  // namespace soakwright::fault_problems
