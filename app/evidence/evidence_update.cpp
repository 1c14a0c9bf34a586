// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/evidence_update.h"

#include <algorithm>
#include <cctype>
#include <set>
#include <utility>

#include "app/evidence/deflate.h"
#include "app/evidence/md5.h"
#include "app/evidence/pdf_date.h"
#include "app/evidence/pdf_file.h"
#include "app/evidence/pdf_update.h"
#include "core/procedure/job/job_words.h"
#include "core/units/printable_text.h"

namespace soakwright::evidence {
namespace {

using Kind = AttachedFile::Kind;

Problem fault(const std::string& what) {
  return {ProblemKind::fault, "", 0, "the files cannot be put into the report: " + what,
          "please report this, with the files that were read"};
}

std::string lower_case(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

bool ends_in(const std::string& name, const char* ending) { return lower_case(name).ends_with(ending); }

/// The name that the kind has in every report; empty for logs, which keep their own.
std::string fixed_name(Kind kind) {
  switch (kind) {
    case Kind::procedure:
      return "procedure.toml";
    case Kind::job:
      return "job.toml";
    case Kind::review:
      return "review.toml";
    case Kind::result:
      return "result.json";
    case Kind::log:
    case Kind::previous_log:
    case Kind::previous_job:
    case Kind::picture:
      break;
  }
  return {};
}

std::string media_type(const AttachedFile& file) {
  switch (file.kind) {
    case Kind::result:
      return "application/json";
    case Kind::procedure:
    case Kind::job:
    case Kind::review:
    case Kind::previous_job:
      return "application/toml";
    case Kind::picture:
      return file.bytes.starts_with("\x89PNG") ? "image/png" : "image/jpeg";
    case Kind::log:
    case Kind::previous_log:
      break;
  }
  if (ends_in(file.name, ".csv")) return "text/csv";
  if (ends_in(file.name, ".tsv") || ends_in(file.name, ".tab")) return "text/tab-separated-values";
  return "text/plain";
}

std::string description(const AttachedFile& file) {
  switch (file.kind) {
    case Kind::log:
      return "Log of the heat treatment";
    case Kind::procedure:
      return "Procedure: what is required";
    case Kind::job:
      return "Job: what was heated, and where each thermocouple sat";
    case Kind::review:
      return "Review: dispositions of the findings, and who signs";
    case Kind::result:
      return "Result of the evaluation";
    case Kind::previous_log:
      return "Log of previous record " + std::to_string(file.previous + 1);
    case Kind::previous_job:
      return "Job of previous record " + std::to_string(file.previous + 1);
    case Kind::picture:
      return "Picture of the company that issues the report";
  }
  return {};
}

/// The name for readers that know no other than ASCII (ISO 32000-1, 7.11.2).
std::string ascii_name(const std::string& name) {
  std::string ascii;
  for (const char c : name) {
    const bool plain =
        c >= ' ' && c <= '~' && std::string_view("\\/:*?\"<>|").find(c) == std::string_view::npos;
    ascii += plain ? c : '_';
  }
  return ascii;
}

/// The embedded file; its file specification refers to it.
void put_file(PdfUpdate& update, ObjectNumber number, const AttachedFile& file, const PackedFile& packed,
              std::int64_t created_s) {
  PdfValue parameters = PdfValue::of_dictionary();
  parameters.set("Size", PdfValue::of_whole(file.bytes.size()));
  // No file is younger than the report that holds it.
  parameters.set("ModDate", pdf_date(std::min(file.modified_s.value_or(created_s), created_s)));
  parameters.set("CheckSum", PdfValue::of_bytes(packed.md5));
  PdfValue dictionary = PdfValue::of_dictionary();
  dictionary.set("Type", PdfValue::of_name("EmbeddedFile"));
  dictionary.set("Subtype", PdfValue::of_name(media_type(file)));
  dictionary.set("Params", std::move(parameters));
  dictionary.set("Filter", PdfValue::of_name("FlateDecode"));
  update.put_stream(number, std::move(dictionary), packed.deflated);
}

PdfValue specification_of(const AttachedFile& file, const std::string& name, ObjectNumber stream) {
  PdfValue embedded = PdfValue::of_dictionary();
  embedded.set("F", PdfValue::of_reference(stream));
  embedded.set("UF", PdfValue::of_reference(stream));
  PdfValue specification = PdfValue::of_dictionary();
  specification.set("Type", PdfValue::of_name("Filespec"));
  specification.set("F", PdfValue::of_bytes(ascii_name(name)));
  specification.set("UF", PdfValue::of_words(name));
  specification.set("Desc", PdfValue::of_words(description(file)));
  specification.set("AFRelationship", PdfValue::of_name(file.kind == Kind::result    ? "Data"
                                                        : file.kind == Kind::picture ? "Supplement"
                                                                                     : "Source"));
  specification.set("EF", std::move(embedded));
  return specification;
}

PdfValue private_entry(const AttachedFile& file, ObjectNumber specification) {
  PdfValue entry = PdfValue::of_dictionary();
  entry.set("Kind", PdfValue::of_name(std::string(kAttachedKindWords.of(file.kind))));
  if (file.kind == Kind::previous_log || file.kind == Kind::previous_job)
    entry.set("Record", PdfValue::of_whole(file.previous + 1));
  entry.set("Name", PdfValue::of_bytes(file.name));
  entry.set("File", PdfValue::of_reference(specification));
  return entry;
}

PdfValue box_entry(const SignatureBox& box, const std::vector<ObjectNumber>& pages) {
  PdfValue entry = PdfValue::of_dictionary();
  entry.set("Role", PdfValue::of_name(std::string(kPersonRoleWords.of(box.role))));
  if (!box.name.empty()) entry.set("Name", PdfValue::of_bytes(box.name));
  entry.set("Page", PdfValue::of_reference(pages[box.page]));
  PdfValue rectangle = PdfValue::of_array();
  for (const double edge : box.box) rectangle.items.push_back(PdfValue::of_real(edge));
  entry.set("Rect", std::move(rectangle));
  return entry;
}

const char* date_order_word(DateOrder order) {
  switch (order) {
    case DateOrder::dmy:
      return "dmy";
    case DateOrder::mdy:
      return "mdy";
    case DateOrder::ymd:
      return "ymd";
  }
  return "";
}

PdfValue facts_of(const PrintedReport& printed, const ReportContents& contents) {
  PdfValue facts = PdfValue::of_dictionary();
  facts.set("Layout", PdfValue::of_name("evidence-1"));
  facts.set("Version", PdfValue::of_bytes(contents.options.program_version));
  facts.set("SetUp", PdfValue::of_bytes(printed.set_up));
  facts.set("Deflate", PdfValue::of_bytes(deflate_version()));
  facts.set("Issued", PdfValue::of_bytes(printed.issued));
  facts.set("Paper", PdfValue::of_name(contents.options.paper == Paper::letter ? "letter" : "a4"));
  facts.set("Created", pdf_date(printed.created_s));
  if (contents.options.unit)
    facts.set("Unit", PdfValue::of_name(*contents.options.unit == TemperatureUnit::fahrenheit ? "F" : "C"));
  if (contents.options.both_units) facts.set("Units", PdfValue::of_name("both"));
  if (!contents.options.unsaved.empty()) {
    std::vector<PdfValue> changes;
    changes.reserve(contents.options.unsaved.size());
    for (const std::string& change : contents.options.unsaved) changes.push_back(PdfValue::of_words(change));
    facts.set("Unsaved", PdfValue::of_array(std::move(changes)));
  }
  if (contents.dates) facts.set("Dates", PdfValue::of_name(date_order_word(*contents.dates)));
  return facts;
}

}  // namespace

std::vector<std::string> attached_names(const std::vector<AttachedFile>& files) {
  std::set<std::string> taken;
  for (const AttachedFile& file : files)
    if (const std::string fixed = fixed_name(file.kind); !fixed.empty()) taken.insert(fixed);
  std::vector<std::string> names;
  names.reserve(files.size());
  for (const AttachedFile& file : files) {
    if (const std::string fixed = fixed_name(file.kind); !fixed.empty()) {
      names.push_back(fixed);
      continue;
    }
    const std::string own = printable(file.name);
    const std::size_t dot = own.find_last_of('.');
    const std::size_t stem = dot == std::string::npos || dot == 0 ? own.size() : dot;
    std::string name = own;
    // Folders that know no difference between a and A hold both.
    for (int number = 2; !taken.insert(lower_case(name)).second; ++number)
      name = own.substr(0, stem) + '-' + std::to_string(number) + own.substr(stem);
    names.push_back(std::move(name));
  }
  return names;
}

std::vector<PackedFile> packed(const std::vector<AttachedFile>& files, const Watch& watch) {
  std::vector<PackedFile> all;
  all.reserve(files.size());
  for (const AttachedFile& file : files) {
    if (watch.stopped()) break;
    all.push_back({md5_of(file.bytes), deflated(file.bytes)});
  }
  return all;
}

Result<std::string> with_evidence(const PrintedReport& printed, const ReportContents& contents,
                                  const std::vector<PackedFile>& files) {
  auto read = PdfFile::read(printed.document, "");
  if (!read) return fault(read.problems().front().what);
  const PdfFile& file = read.value();
  auto catalog = file.catalog();
  const std::vector<ObjectNumber> pages = file.pages();
  const PdfValue* root = file.trailer().find("Root");
  if (!catalog || root == nullptr || pages.empty()) return fault("the catalogue is not as expected");

  PdfUpdate update(file);
  PdfValue associated = PdfValue::of_array();
  PdfValue listed = PdfValue::of_array();
  PdfValue entries = PdfValue::of_array();
  std::vector<std::pair<std::string, ObjectNumber>> by_name;
  const std::vector<std::string> names = attached_names(contents.files);
  for (std::size_t i = 0; i < contents.files.size(); ++i) {
    const ObjectNumber stream = update.new_number();
    const ObjectNumber specification = update.new_number();
    put_file(update, stream, contents.files[i], files[i], printed.created_s);
    update.put(specification, specification_of(contents.files[i], names[i], stream));
    associated.items.push_back(PdfValue::of_reference(specification));
    entries.items.push_back(private_entry(contents.files[i], specification));
    by_name.emplace_back(PdfValue::of_words(names[i]).text, specification);
  }
  // A name tree is sorted by its keys' bytes (ISO 32000-1, 7.9.6).
  std::sort(by_name.begin(), by_name.end());
  for (const auto& [name, specification] : by_name) {
    listed.items.push_back(PdfValue::of_bytes(name));
    listed.items.push_back(PdfValue::of_reference(specification));
  }
  PdfValue boxes = PdfValue::of_array();
  for (const SignatureBox& box : printed.boxes) {
    if (box.page >= pages.size()) return fault("a signature's page is not there");
    boxes.items.push_back(box_entry(box, pages));
  }

  PdfValue facts = facts_of(printed, contents);
  facts.set("Files", std::move(entries));
  facts.set("Boxes", std::move(boxes));
  PdfValue piece = PdfValue::of_dictionary();
  piece.set("LastModified", pdf_date(printed.created_s));
  piece.set("Private", std::move(facts));
  PdfValue pieces = PdfValue::of_dictionary();
  pieces.set("Soakwright", std::move(piece));
  if (!contents.files.empty()) {
    PdfValue tree = PdfValue::of_dictionary();
    tree.set("Names", std::move(listed));
    PdfValue trees = PdfValue::of_dictionary();
    trees.set("EmbeddedFiles", std::move(tree));
    catalog->set("Names", std::move(trees));
    catalog->set("AF", std::move(associated));
  }
  catalog->set("Version", PdfValue::of_name("1.7"));
  catalog->set("PieceInfo", std::move(pieces));
  update.put(root->object, *catalog);
  return printed.document + update.finish();
}

}  // namespace soakwright::evidence
