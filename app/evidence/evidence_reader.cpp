// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/evidence_reader.h"

#include <algorithm>
#include <array>
#include <utility>

#include "app/evidence/md5.h"
#include "app/evidence/pdf_date.h"
#include "core/problems/command_line_problems.h"
#include "core/procedure/job/job_words.h"

namespace soakwright::evidence {
namespace {

using Kind = AttachedFile::Kind;

/// All files together may hold no more.
constexpr std::size_t kMostBytes = std::size_t{1} << 30U;
constexpr std::size_t kMostFiles = 1000;

Problem damaged(const std::string& path, const std::string& what) {
  return {ProblemKind::bad_input, path, 0, "the report is damaged: " + what,
          "ask for the report as it was written"};
}

Problem not_ours(const std::string& path) {
  return helped_by({ProblemKind::bad_input,
                    path,
                    0,
                    "this is not a report of Soakwright with its source files inside",
                    {}},
                   CommandLineHelp::give_report);
}

std::optional<std::string> bytes_entry(const PdfValue& dictionary, std::string_view key) {
  const PdfValue* value = dictionary.find(key);
  if (value == nullptr || !value->is(PdfValue::Kind::string)) return std::nullopt;
  return value->text;
}

std::optional<DateOrder> date_order_named(const PdfValue& value) {
  if (value.is_name("dmy")) return DateOrder::dmy;
  if (value.is_name("mdy")) return DateOrder::mdy;
  if (value.is_name("ymd")) return DateOrder::ymd;
  return std::nullopt;
}

/// A name that is a file's own, and cannot lead out of a folder.
bool plain_name(const std::string& name) {
  constexpr std::size_t kLongest = 255;
  return !name.empty() && name.size() <= kLongest && name != "." && name != ".." &&
         name.find_first_of(std::string_view("/\\\0", 3)) == std::string::npos;
}

class Taking {
 public:
  Taking(const PdfFile& file, const Watch& watch) : file_(file), watch_(watch) {}

  /// What is wrong with the entry; empty if nothing is.
  std::string take(const PdfValue& entry, TakenEvidence& taken) {
    const PdfValue* kind = entry.find("Kind");
    const auto named = kind != nullptr && kind->is(PdfValue::Kind::name)
                           ? kAttachedKindWords.named(kind->text)
                           : std::nullopt;
    const auto name = bytes_entry(entry, "Name");
    if (!named || !name || !plain_name(*name)) return "a file inside has no proper name";
    AttachedFile attached{*named, 0, *name, {}, std::nullopt};
    const PdfValue* record = entry.find("Record");
    if (const auto number = record != nullptr ? record->whole() : std::nullopt; number && *number > 0)
      attached.previous = static_cast<std::size_t>(*number - 1);
    const auto specification = file_.entry(entry, "File", kEvidenceRevision);
    const PdfValue* embedded = specification ? specification->find("EF") : nullptr;
    const PdfValue* stream = embedded != nullptr ? embedded->find("F") : nullptr;
    if (stream == nullptr || !stream->is(PdfValue::Kind::reference)) return *name + " is not inside";
    const auto dictionary = file_.object(stream->object, kEvidenceRevision);
    auto content =
        file_.content(stream->object, kMostBytes - std::min(kMostBytes, bytes_), kEvidenceRevision, watch_);
    const PdfValue* parameters = dictionary ? dictionary->find("Params") : nullptr;
    if (!content || parameters == nullptr) return *name + " cannot be taken out";
    const PdfValue* size = parameters->find("Size");
    const auto sum = bytes_entry(*parameters, "CheckSum");
    if (size == nullptr || size->whole() != std::optional<std::uint64_t>{content->size()} || !sum ||
        *sum != md5_of(*content))
      return *name + " is not what its checksum says";
    const PdfValue* date = parameters->find("ModDate");
    const auto modified = date != nullptr ? unix_time(*date) : std::nullopt;
    if (!modified) return *name + " has no date";
    attached.modified_s = modified;
    bytes_ += content->size();
    attached.bytes = std::move(*content);
    for (const AttachedFile& other : taken.files)
      if (other.kind == attached.kind && other.previous == attached.previous)
        return "there are two files of the kind '" + kind->text + "' inside";
    taken.files.push_back(std::move(attached));
    return {};
  }

 private:
  const PdfFile& file_;
  const Watch& watch_;
  std::size_t bytes_ = 0;
};

std::optional<SignatureBox> box_of(const PdfValue& entry, const std::vector<ObjectNumber>& pages) {
  SignatureBox box;
  const PdfValue* role = entry.find("Role");
  const auto named =
      role != nullptr && role->is(PdfValue::Kind::name) ? kPersonRoleWords.named(role->text) : std::nullopt;
  const PdfValue* page = entry.find("Page");
  const PdfValue* rectangle = entry.find("Rect");
  if (!named || page == nullptr || rectangle == nullptr || rectangle->items.size() != box.box.size())
    return std::nullopt;
  const auto found = std::find(pages.begin(), pages.end(), page->object);
  if (!page->is(PdfValue::Kind::reference) || found == pages.end()) return std::nullopt;
  box.role = *named;
  box.name = bytes_entry(entry, "Name").value_or(std::string{});
  box.page = static_cast<std::size_t>(found - pages.begin());
  for (std::size_t i = 0; i < box.box.size(); ++i) {
    const auto edge = rectangle->items[i].real();
    if (!edge) return std::nullopt;
    box.box[i] = *edge;
  }
  return box;
}

}  // namespace

const AttachedFile* TakenEvidence::file(AttachedFile::Kind kind) const {
  const auto found =
      std::find_if(files.begin(), files.end(), [kind](const AttachedFile& one) { return one.kind == kind; });
  return found == files.end() ? nullptr : &*found;
}

Result<TakenEvidence> evidence_of(const PdfFile& file, const std::string& path, const Watch& watch) {
  if (file.revisions().size() <= kEvidenceRevision) return not_ours(path);
  const auto catalog = file.catalog(kEvidenceRevision);
  const PdfValue* facts = catalog ? &*catalog : nullptr;
  for (const char* key : {"PieceInfo", "Soakwright", "Private"})
    facts = facts != nullptr ? facts->find(key) : nullptr;
  const PdfValue* layout = facts != nullptr ? facts->find("Layout") : nullptr;
  if (layout == nullptr || !layout->is(PdfValue::Kind::name)) return not_ours(path);
  if (!layout->is_name("evidence-1"))
    return Problem{ProblemKind::bad_input, path, 0, "the report was written by a later version",
                   "use the version that wrote it"};
  const auto version = bytes_entry(*facts, "Version");
  const auto set_up = bytes_entry(*facts, "SetUp");
  const auto deflate = bytes_entry(*facts, "Deflate");
  const auto issued = bytes_entry(*facts, "Issued");
  const PdfValue* paper = facts->find("Paper");
  const PdfValue* date = facts->find("Created");
  const auto created = date != nullptr ? unix_time(*date) : std::nullopt;
  const PdfValue* entries = facts->find("Files");
  const PdfValue* boxes = facts->find("Boxes");
  if (!version || !set_up || !deflate || !issued || paper == nullptr || !created || entries == nullptr ||
      boxes == nullptr || entries->items.size() > kMostFiles)
    return damaged(path, "its list of files cannot be read");

  TakenEvidence taken;
  taken.version = *version;
  taken.set_up = *set_up;
  taken.deflate = *deflate;
  taken.created_s = *created;
  taken.issued = *issued;
  taken.paper = paper->is_name("letter") ? Paper::letter : Paper::a4;
  if (const PdfValue* unit = facts->find("Unit"))
    taken.unit = unit->is_name("F") ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
  if (const PdfValue* units = facts->find("Units")) taken.both_units = units->is_name("both");
  if (const PdfValue* changes = facts->find("Unsaved"))
    for (const PdfValue& change : changes->items) taken.unsaved.push_back(change.words());
  if (const PdfValue* dates = facts->find("Dates")) taken.dates = date_order_named(*dates);
  Taking taking(file, watch);
  for (const PdfValue& entry : entries->items) {
    const std::string wrong = taking.take(entry, taken);
    if (watch.stopped()) return Problems{};
    if (!wrong.empty()) return damaged(path, wrong);
  }
  const std::vector<ObjectNumber> pages = file.pages(kEvidenceRevision);
  for (const PdfValue& entry : boxes->items) {
    auto box = box_of(entry, pages);
    if (!box) return damaged(path, "a place for a signature cannot be read");
    taken.boxes.push_back(std::move(*box));
  }
  if (taken.file(Kind::log) == nullptr || taken.file(Kind::result) == nullptr)
    return damaged(path, "the log or the result is not inside");
  return taken;
}

}  // namespace soakwright::evidence
