// SPDX-License-Identifier: GPL-3.0-or-later
// A procedure as the text of its file, the way back from procedure_file.h.
#pragma once

#include <string>
#include <vector>

#include "core/procedure/procedure.h"

namespace soakwright {

/// Lines to stand above the file, its [record] and each stage as comments; each is one line of text. Where
/// there are fewer stages than the procedure has, the others have no comment.
struct ProcedureComments {
  std::vector<std::string> head;
  std::vector<std::string> record;
  std::vector<std::vector<std::string>> stages;
};

/// TOML that reads back to the same procedure but for file, hash and lines. Numbers are in `procedure.unit`:
/// the decimal that a person wrote where there is one with at most six places, else the shortest text of the
/// exact value. Lengths are in inches and feet where the unit is F and they come out as such decimals.
std::string procedure_text(const Procedure& procedure, const ProcedureComments& comments = {});

}  // namespace soakwright
