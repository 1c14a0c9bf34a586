// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/evidence/pdf_file.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>
#include <system_error>
#include <utility>

#include "app/evidence/deflate.h"
#include "app/evidence/pdf_syntax.h"
#include "core/problems/command_line_problems.h"

namespace soakwright::evidence {
namespace {

constexpr std::size_t kEntryBytes = 20;  // ISO 32000-1, 7.5.4
constexpr std::size_t kMostRevisions = 200;
constexpr const char* kNotOurs = "this is not a report of Soakwright";
constexpr const char* kEncrypted = "the file is encrypted";

Problem refusal(const std::string& path, const std::string& what) {
  if (what == kEncrypted)
    return {ProblemKind::bad_input, path, 0, what,
            "take the encryption off, or ask for the report as it was written"};
  return helped_by({ProblemKind::bad_input, path, 0, what, {}}, CommandLineHelp::give_report);
}

Problem cannot_open(const std::string& path, const std::string& what, const std::string& help) {
  return {ProblemKind::cannot_open, path, 0, what, help};
}

std::optional<std::uint64_t> digits(std::string_view text) {
  std::uint64_t number = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    number = 10 * number + static_cast<std::uint64_t>(c - '0');
  }
  return number;
}

}  // namespace

Result<PdfFile> PdfFile::read_file(const std::string& path) {
  std::error_code error;
  const auto status = std::filesystem::status(path, error);
  if (!std::filesystem::exists(status)) return cannot_open(path, "there is no such file", "check the path");
  if (!std::filesystem::is_regular_file(status))
    return cannot_open(path, "this is a folder, a pipe or a device, not a file", "name a report");
  const auto size = std::filesystem::file_size(path, error);
  if (!error && size > kLargestReport) return refusal(path, "the file is larger than 512 MB");
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> file{std::fopen(path.c_str(), "rb"), std::fclose};
  if (!file)
    return cannot_open(path, std::string("cannot be opened: ") + std::strerror(errno),
                       "check its permissions");
  std::string bytes(static_cast<std::size_t>(size), '\0');
  bytes.resize(std::fread(bytes.data(), 1, bytes.size(), file.get()));
  if (std::ferror(file.get()) != 0) return cannot_open(path, "cannot be read", "check the disk");
  return read(std::move(bytes), path);
}

Result<PdfFile> PdfFile::read(std::string bytes, const std::string& path) {
  if (!bytes.starts_with("%PDF-1.")) return refusal(path, "this is no PDF");
  PdfFile file;
  file.bytes_ = std::move(bytes);
  if (const std::string wrong = file.read_revisions(); !wrong.empty()) return refusal(path, wrong);
  return file;
}

std::string PdfFile::read_revisions() {
  const std::size_t start = bytes_.rfind("startxref");
  if (start == std::string::npos) return "the file is cut off: its end is missing";
  PdfSyntax syntax(bytes_, start);
  if (!syntax.word("startxref")) return kNotOurs;
  // Each table lies before the one that names it, so that the chain ends.
  std::uint64_t xref = syntax.whole().value_or(start);
  for (bool more = true; more;) {
    if (xref >= start || (!revisions_.empty() && xref >= revisions_.back().xref)) return kNotOurs;
    if (revisions_.size() == kMostRevisions) return kNotOurs;
    PdfRevision revision;
    if (std::string wrong = read_revision(static_cast<std::size_t>(xref), revision); !wrong.empty())
      return revisions_.empty() && wrong == kNotOurs && bytes_.find("/Encrypt") != std::string::npos
                 ? kEncrypted
                 : wrong;
    if (!revisions_.empty() && revision.end > revisions_.back().xref) return kNotOurs;
    const PdfValue* previous = revision.trailer.find("Prev");
    more = previous != nullptr;
    if (more) xref = previous->whole().value_or(start);
    revisions_.push_back(std::move(revision));
  }
  std::reverse(revisions_.begin(), revisions_.end());
  std::size_t begin = 0;
  std::uint64_t size = 0;
  for (PdfRevision& revision : revisions_) {
    revision.begin = begin;
    begin = revision.end;
    // Numbers only grow, and every object stands within its own revision.
    const PdfValue* stated = revision.trailer.find("Size");
    const auto now = stated != nullptr ? stated->whole() : std::nullopt;
    if (!now || *now < size || *now > bytes_.size()) return kNotOurs;
    size = *now;
    for (const auto& [number, offset] : revision.offsets)
      if (number >= size || offset < revision.begin || offset >= revision.xref) return kNotOurs;
  }
  size_ = static_cast<ObjectNumber>(size);
  return {};
}

std::string PdfFile::read_revision(std::size_t xref, PdfRevision& revision) const {
  revision.xref = xref;
  PdfSyntax syntax(bytes_, xref);
  if (bytes_.compare(xref, 4, "xref") != 0 || !syntax.word("xref")) return kNotOurs;
  while (!syntax.word("trailer")) {
    const auto first = syntax.whole();
    const auto count = syntax.whole();
    if (!first || !count || *count > bytes_.size() / kEntryBytes || *first > bytes_.size()) return kNotOurs;
    syntax.skip_space();
    std::size_t at = syntax.at();
    if (at + *count * kEntryBytes > bytes_.size()) return kNotOurs;
    for (std::uint64_t i = 0; i < *count; ++i, at += kEntryBytes) {
      const std::string_view entry(bytes_.data() + at, kEntryBytes);
      const auto offset = digits(entry.substr(0, 10));
      const bool free = entry[17] == 'f';
      if (!offset || entry[10] != ' ' || (entry[17] != 'n' && !free)) return kNotOurs;
      const std::string_view rest = entry.substr(10);
      if (free) {
        if (*first + i != 0 || rest != " 65535 f \n") return kNotOurs;
        continue;
      }
      if (rest != " 00000 n \n") return kNotOurs;
      const bool first_time =
          revision.offsets.emplace(static_cast<ObjectNumber>(*first + i), static_cast<std::size_t>(*offset))
              .second;
      if (!first_time) return kNotOurs;
    }
    syntax = PdfSyntax(bytes_, at);
  }
  auto trailer = syntax.value();
  if (!trailer || !trailer->is(PdfValue::Kind::dictionary)) return kNotOurs;
  if (trailer->find("Encrypt") != nullptr) return kEncrypted;
  revision.trailer = std::move(*trailer);
  if (!syntax.word("startxref") || syntax.whole() != std::optional<std::uint64_t>{xref}) return kNotOurs;
  constexpr std::string_view kEnd = "\n%%EOF\n";
  std::size_t end = syntax.at();
  if (end < bytes_.size() && bytes_[end] == ' ') ++end;  // Qt writes one
  if (bytes_.compare(end, kEnd.size(), kEnd) != 0) return "the file is cut off: its end is missing";
  revision.end = end + kEnd.size();
  return {};
}

std::optional<std::size_t> PdfFile::offset_of(ObjectNumber number, std::size_t revision) const {
  for (std::size_t i = std::min(revision, revisions_.size() - 1) + 1; i-- > 0;) {
    const auto found = revisions_[i].offsets.find(number);
    if (found != revisions_[i].offsets.end()) return found->second;
  }
  return std::nullopt;
}

std::optional<PdfValue> PdfFile::object(ObjectNumber number, std::size_t revision) const {
  const auto offset = offset_of(number, revision);
  if (!offset) return std::nullopt;
  PdfSyntax syntax(bytes_, *offset);
  if (syntax.whole() != std::optional<std::uint64_t>{number}) return std::nullopt;
  if (syntax.whole() != std::optional<std::uint64_t>{0} || !syntax.word("obj")) return std::nullopt;
  auto value = syntax.value();
  if (!value || !(syntax.word("endobj") || syntax.word("stream"))) return std::nullopt;
  return value;
}

std::optional<PdfValue> PdfFile::resolved(const PdfValue* value, std::size_t revision) const {
  if (value == nullptr) return std::nullopt;
  if (!value->is(PdfValue::Kind::reference)) return *value;
  auto found = object(value->object, revision);
  // A chain of references is nothing that Soakwright writes.
  if (found && found->is(PdfValue::Kind::reference)) return std::nullopt;
  return found;
}

std::optional<PdfValue> PdfFile::entry(const PdfValue& dictionary, std::string_view key,
                                       std::size_t revision) const {
  return resolved(dictionary.find(key), revision);
}

std::optional<PdfStream> PdfFile::stream(ObjectNumber number, std::size_t revision) const {
  const auto offset = offset_of(number, revision);
  if (!offset) return std::nullopt;
  PdfSyntax syntax(bytes_, *offset);
  if (syntax.whole() != std::optional<std::uint64_t>{number}) return std::nullopt;
  if (syntax.whole() != std::optional<std::uint64_t>{0} || !syntax.word("obj")) return std::nullopt;
  auto dictionary = syntax.value();
  if (!dictionary || !dictionary->is(PdfValue::Kind::dictionary) || !syntax.word("stream"))
    return std::nullopt;
  if (syntax.at() >= bytes_.size() || bytes_[syntax.at()] != '\n') return std::nullopt;
  const auto stated = entry(*dictionary, "Length", revision);
  const auto length = stated ? stated->whole() : std::nullopt;
  const std::size_t begin = syntax.at() + 1;
  if (!length || *length > bytes_.size() - begin) return std::nullopt;
  const auto size = static_cast<std::size_t>(*length);
  PdfSyntax behind(bytes_, begin + size);
  if (!behind.word("endstream") || !behind.word("endobj")) return std::nullopt;
  return PdfStream{std::move(*dictionary), std::string_view(bytes_).substr(begin, size)};
}

std::optional<std::string> PdfFile::content(ObjectNumber number, std::size_t most, std::size_t revision,
                                            const Watch& watch) const {
  const auto found = stream(number, revision);
  if (!found) return std::nullopt;
  const PdfValue* filter = found->dictionary.find("Filter");
  if (found->dictionary.find("DecodeParms") != nullptr) return std::nullopt;
  if (filter == nullptr)
    return found->stored.size() > most ? std::nullopt : std::optional(std::string(found->stored));
  if (!filter->is_name("FlateDecode")) return std::nullopt;
  return inflated(found->stored, most, watch);
}

std::optional<PdfValue> PdfFile::catalog(std::size_t revision) const {
  const PdfValue& trailer = revisions_[std::min(revision, revisions_.size() - 1)].trailer;
  auto found = entry(trailer, "Root", revision);
  if (!found || !found->is(PdfValue::Kind::dictionary)) return std::nullopt;
  const PdfValue* type = found->find("Type");
  if (type == nullptr || !type->is_name("Catalog")) return std::nullopt;
  return found;
}

std::vector<ObjectNumber> PdfFile::pages(std::size_t revision) const {
  const auto root = catalog(revision);
  const auto tree = root ? entry(*root, "Pages", revision) : std::nullopt;
  const auto kids = tree ? entry(*tree, "Kids", revision) : std::nullopt;
  if (!kids || !kids->is(PdfValue::Kind::array)) return {};
  std::vector<ObjectNumber> numbers;
  for (const PdfValue& kid : kids->items) {
    if (!kid.is(PdfValue::Kind::reference)) return {};
    const auto page = object(kid.object, revision);
    const PdfValue* type = page ? page->find("Type") : nullptr;
    if (type == nullptr || !type->is_name("Page")) return {};
    numbers.push_back(kid.object);
  }
  return numbers;
}

}  // namespace soakwright::evidence
