// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/house/module_rules.h"

#include <catch2/catch.hpp>

namespace {

const std::filesystem::path top = SOAKWRIGHT_SOURCE_DIR;

ModuleRules rules() {
  return {lines_of(top / "tests/house/modules.txt"), lines_of(top / "core/public_headers.txt")};
}

}  // namespace

TEST_CASE("every include keeps to the modules") {
  const ModuleRules house = rules();
  std::size_t read = 0;
  for (const std::string& file : cpp_files(top)) {
    for (const IncludeLine& include : includes_in(lines_of(top / file))) {
      ++read;
      const auto objection = house.objection(file, include);
      if (objection) FAIL_CHECK(file << ":" << include.line << ": " << *objection);
    }
  }
  CHECK(read > 50);
}

TEST_CASE("the module rules object to what the table does not allow") {
  struct Row {
    const char* file;
    const char* line;
    bool allowed;
  };
  const Row rows[] = {
      {"core/units/a.h", "#include \"core/units/b.h\"", true},
      {"core/units/a.h", "#include \"core/problems/problem.h\"", false},
      {"core/read/a.cpp", "#include \"core/procedure/job/job.h\"", false},
      {"core/record/a.cpp", "#include \"core/procedure/job/job.h\"", true},
      {"core/measure/a.cpp", "#include \"core/evaluate/verdict.h\"", false},
      {"core/evaluate/a.cpp", "#include \"core/phases/phase.h\"", true},
      {"core/evaluate/a.cpp", "#include \"core/report/json/result_json.h\"", false},
      {"core/evaluate/a.cpp", "#include \"core/analyse.h\"", false},
      {"core/analyse.cpp", "#include \"core/evaluate/evaluation.h\"", true},
      {"core/analyse.cpp", "#include \"app/pdf/a.h\"", false},
      {"core/evaluate/a.cpp", "#include <QString>", false},
      {"core/evaluate/a.cpp", "#include <QtGui/QPainter>", false},
      {"core/evaluate/a.cpp", "#include \"problem.h\"", false},
      {"core/evaluate/a.cpp", "#include \"../problems/problem.h\"", false},
      {"core/evaluate/a.cpp", "#  include <core/measure/a.h>", false},
      {"core/evaluate/a.cpp", "#include <vector>", true},
      {"core/new-module/a.cpp", "#include <vector>", false},
      {"app/new-module/a.cpp", "#include <vector>", false},
      {"app/cli/a.cpp", "#include \"core/analyse.h\"", true},
      {"app/cli/a.cpp", "#include \"core/record/record.h\"", true},
      {"app/cli/a.cpp", "#include \"core/units/local_time.h\"", true},
      {"app/cli/a.cpp", "#include \"core/record/record_file.h\"", false},
      {"app/cli/a.cpp", "#include \"core/measure/a.h\"", false},
      {"app/cli/a.cpp", "#include \"app/pdf/a.h\"", false},
      {"app/cli/a.cpp", "#include <QCoreApplication>", false},
      {"app/pdf/a.cpp", "#include <QPainter>", true},
      {"app/pdf/a.cpp", "#include \"app/gui/a.h\"", false},
      {"app/gui/parts/a.cpp", "#include \"app/pdf/a.h\"", true},
      {"app/gui/a.cpp", "#include \"core/evaluate/evaluation.h\"", false},
      {"tests/core/a_test.cpp", "#include \"core/measure/a.h\"", true},
  };
  const ModuleRules house = rules();
  for (const Row& row : rows) {
    const auto includes = includes_in({row.line});
    REQUIRE(includes.size() == 1);
    INFO(row.file << " with " << row.line);
    CHECK(house.objection(row.file, includes[0]).has_value() != row.allowed);
  }
}
