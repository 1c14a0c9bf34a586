// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/procedure/heat/preheat_problems.h"

#include <fmt/format.h>

#include "core/procedure/toml/toml_problems.h"
#include "core/units/printed_quantity.h"

namespace soakwright::preheat_problems {
namespace {

Problem of_job(const Job& job, std::size_t line, std::string what, std::string help) {
  return {ProblemKind::bad_input, job.file, line, std::move(what), std::move(help)};
}

}  // namespace

ProblemWords too_much_of_an_element(const std::string& element, double percent, double most) {
  return {fmt::format("`{}` is {} %, more than any weldable steel has", element, short_text(percent, 4)),
          fmt::format("give per cent by mass as the certificate prints it: at most {}", short_text(most, 2))};
}

ProblemWords over_a_whole(double sum) {
  return {fmt::format("the composition adds up to {} %", short_text(sum, 4)),
          "the elements of a steel are at most 100 % by mass: check each against the certificate"};
}

ProblemWords empty_composition() {
  return {"the composition names no element", "give per cent by mass: composition = { C = 0.16, Mn = 1.2 }"};
}

ProblemWords needs_soak_band(const std::string& key) {
  return {fmt::format("`{}` does nothing without `soak_band`", key),
          "give the whole width of the soak band, or leave it out"};
}

ProblemWords wall_fills_the_pipe() {
  return {"twice the wall is as much as the diameter", "`diameter` is the outside diameter of the pipe"};
}

ProblemWords used_by_no_weld(const std::string& key) {
  return {fmt::format("`{}` counts for no weld: each [[weld]] has its own", key), "leave it out"};
}

ProblemWords band_of_which_weld() {
  return {"the job has several welds, and this [[band]] names none", "name one: weld = \"W-118\""};
}

ProblemWords band_of_no_weld(const std::string& weld, const std::vector<std::string>& known) {
  return {fmt::format("the job has no weld \"{}\"", shown(weld)), suggestion(weld, known)};
}

ProblemWords two_bands(std::size_t line_of_first) {
  return {fmt::format("the [[band]] at line {} is of the same weld", line_of_first), "keep one of them"};
}

Problem band_without_wall(const Job& job, const BandEntry& band) {
  return of_job(job, band.line, "the [[band]] has no wall thickness",
                "add `wall`, or a thickness to the weld or the procedure");
}

Problem band_wall_fills_the_pipe(const Job& job, const BandEntry& band) {
  ProblemWords words = wall_fills_the_pipe();
  return of_job(job, band.line, std::move(words.what), std::move(words.help));
}

Problem preheat_without_thickness(const Job& job, std::size_t line, const std::string& weld) {
  return of_job(
      job, line,
      weld.empty()
          ? "`minimum_preheat` depends on the thickness, but no thickness is given"
          : fmt::format("`minimum_preheat` depends on the thickness of {}, but no thickness is given", weld),
      "add `thickness` to the weld or the procedure");
}

Problem preheat_too_thin(const Job& job, std::size_t line, const std::string& weld, Thickness thickness) {
  const std::string in_mm = short_text(thickness.millimetres(), 3);
  return of_job(job, line,
                weld.empty()
                    ? fmt::format("the table of `minimum_preheat` does not cover the thickness, {} mm", in_mm)
                    : fmt::format("the table of `minimum_preheat` does not cover the thickness of {}, {} mm",
                                  weld, in_mm),
                "its thicknesses begin at 3 mm; leave out `minimum_preheat`");
}

}  // namespace soakwright::preheat_problems
