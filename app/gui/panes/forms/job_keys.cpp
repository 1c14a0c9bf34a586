// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/gui/panes/forms/job_keys.h"

#include "app/gui/texts/window_text.h"

namespace soakwright::gui {
namespace {

using Kind = FormKey::Kind;

std::vector<FormKey> composition_keys() {
  const QString percent = QStringLiteral("%");
  std::vector<FormKey> keys;
  for (const auto& [key, name] :
       std::initializer_list<std::pair<const char*, QString>>{{"C", tr("C, carbon")},
                                                              {"Si", tr("Si, silicon")},
                                                              {"Mn", tr("Mn, manganese")},
                                                              {"Cr", tr("Cr, chromium")},
                                                              {"Mo", tr("Mo, molybdenum")},
                                                              {"Ni", tr("Ni, nickel")},
                                                              {"Cu", tr("Cu, copper")},
                                                              {"V", tr("V, vanadium")},
                                                              {"B", tr("B, boron")}})
    keys.push_back(
        {key, name, Kind::value, percent,
         tr("per cent by mass; empty: not known; 0 where the certificate says that there is none")});
  return keys;
}

FormKey preheat_key(const QString& tip) {
  return {"minimum_preheat",
          tr("Published minimum preheat"),
          Kind::choice,
          {},
          tip,
          {{tr("AWS D1.1, category B"), QStringLiteral("AWS D1.1 category B")}}};
}

std::vector<FormKey> weld_keys() {
  return {{"number", tr("Number"), Kind::words},
          {"thickness", tr("Thickness"), Kind::value, {}, tr("in place of the procedure's, such as 38 mm")},
          {"material", tr("Material"), Kind::words},
          preheat_key(tr("the published table to compare with, in place of the job's"))};
}

std::vector<FormKey> band_keys() {
  const QString width = tr("such as 150 mm");
  return {{"weld", tr("Weld"), Kind::words, {}, tr("needed where the job has several welds")},
          {"diameter", tr("Outside diameter"), Kind::value, {}, tr("such as 508 mm")},
          {"wall",
           tr("Wall thickness"),
           Kind::value,
           {},
           tr("such as 38 mm; empty: the thickness of the weld, else the procedure's")},
          {"soak_band", tr("Soak band, whole width"), Kind::value, {}, width},
          {"heated_band", tr("Heated band, whole width"), Kind::value, {}, width},
          {"centre",
           tr("Position of the weld"),
           Kind::value,
           {},
           tr("on the scale of the thermocouples' positions, such as 0 mm")}};
}

std::vector<FormKey> hydrogen_keys() {
  return {
      {"shape",
       tr("Shape"),
       Kind::choice,
       {},
       {},
       {{tr("Plate"), QStringLiteral("plate")}, {tr("Cylinder"), QStringLiteral("cylinder")}}},
      {"thickness",
       tr("Thickness of a plate"),
       Kind::value,
       {},
       tr("such as 38 mm; empty: the weld's, else the procedure's")},
      {"diameter", tr("Diameter of a cylinder"), Kind::value, {}, tr("such as 60 mm")},
      {"diffusivity",
       tr("Diffusivity"),
       Kind::words,
       {},
       tr("Coe and Moreton 1969, EUROFER'97, or a value such as 5.1e-5 cm2/s; or D0 and activation energy")},
      {"d0", tr("D0"), Kind::words, {}, tr("such as 4.57e-7 m2/s")},
      {"activation_energy", tr("Activation energy"), Kind::words, {}, tr("such as 22.3 kJ/mol")},
      {"temperature_min",
       tr("Valid from"),
       Kind::words,
       {},
       tr("a typed diffusivity holds from here, such as 103 C")},
      {"temperature_max", tr("Valid to"), Kind::words, {}, tr("such as 450 C")},
      {"source", tr("Source"), Kind::words, {}, tr("of a typed diffusivity")},
      {"after", tr("Counted after"), Kind::words, {}, tr("a period of the job; counted from its end")}};
}

}  // namespace

std::vector<FormKey> job_keys(const std::string& table) {
  if (table == "composition") return composition_keys();
  if (table == "band") return band_keys();
  if (table == "weld") return weld_keys();
  if (table == "hydrogen") return hydrogen_keys();
  if (table == "qualified")
    return {{"parameter",
             tr("Tempering parameter"),
             Kind::value,
             {},
             tr("Hollomon–Jaffe parameter / 1000, such as 18.6; this, or holds")},
            {"holds",
             tr("Holds"),
             Kind::value,
             {},
             tr("such as %1").arg(QStringLiteral("[[\"620 C\", \"8 h\"]]"))},
            {"source", tr("Source"), Kind::words, {}, tr("the procedure qualification record, say")}};
  return {preheat_key(tr("the published table to compare with"))};
}

}  // namespace soakwright::gui
