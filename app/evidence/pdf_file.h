// SPDX-License-Identifier: GPL-3.0-or-later
// A PDF as a chain of revisions: the file as it was first written, and what was appended since, each with a
// classic cross-reference table (ISO 32000-1, 7.5.4 and 7.5.6).
//
// Reads reports as Soakwright writes them and refuses everything else; it is no reader for PDF at large. Any
// bytes may come in: nothing is read past the end, and nothing runs longer than the file's size allows.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/evidence/pdf_value.h"
#include "core/problems/problem.h"
#include "core/system/watch.h"

namespace soakwright::evidence {

/// Larger files are refused before they are read.
constexpr std::size_t kLargestReport = std::size_t{512} << 20U;

struct PdfRevision {
  std::size_t begin = 0;                        ///< of its bytes: where the revision before it ended
  std::size_t xref = 0;                         ///< of its cross-reference table
  std::size_t end = 0;                          ///< behind the line end after its %%EOF
  std::map<ObjectNumber, std::size_t> offsets;  ///< of the objects that it writes
  PdfValue trailer;
};

struct PdfStream {
  PdfValue dictionary;
  std::string_view stored;  ///< as in the file, filters not undone
};

class PdfFile {
 public:
  /// bad_input where the bytes are no report: no PDF, encrypted, cut off, or built otherwise. Bytes behind
  /// the last revision are no error here: trailing_bytes() counts them.
  static Result<PdfFile> read(std::string bytes, const std::string& path);
  /// The file at `path`; cannot_open where it cannot be read.
  static Result<PdfFile> read_file(const std::string& path);

  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  /// The oldest first; never empty.
  [[nodiscard]] const std::vector<PdfRevision>& revisions() const { return revisions_; }
  [[nodiscard]] std::size_t trailing_bytes() const { return bytes_.size() - revisions_.back().end; }
  [[nodiscard]] const PdfValue& trailer() const { return revisions_.back().trailer; }
  /// One more than the highest object number.
  [[nodiscard]] ObjectNumber size() const { return size_; }

  /// The object as of `revision` (its index; by default the last). A stream gives its dictionary. Returns
  /// nullopt if there is none or none that can be read.
  [[nodiscard]] std::optional<PdfValue> object(ObjectNumber number, std::size_t revision = kLast) const;
  /// What the value refers to, or the value itself.
  [[nodiscard]] std::optional<PdfValue> resolved(const PdfValue* value, std::size_t revision = kLast) const;
  /// The dictionary's entry, resolved.
  [[nodiscard]] std::optional<PdfValue> entry(const PdfValue& dictionary, std::string_view key,
                                              std::size_t revision = kLast) const;
  [[nodiscard]] std::optional<PdfStream> stream(ObjectNumber number, std::size_t revision = kLast) const;
  /// The stream's bytes with Flate undone. Returns nullopt also where they are more than `most`, and once
  /// `watch` is cancelled.
  [[nodiscard]] std::optional<std::string> content(ObjectNumber number, std::size_t most,
                                                   std::size_t revision = kLast,
                                                   const Watch& watch = {}) const;
  [[nodiscard]] std::optional<PdfValue> catalog(std::size_t revision = kLast) const;
  /// Object numbers of the pages, in order. Empty where the page tree is not as Soakwright writes it.
  [[nodiscard]] std::vector<ObjectNumber> pages(std::size_t revision = kLast) const;

 private:
  static constexpr std::size_t kLast = static_cast<std::size_t>(-1);
  PdfFile() = default;
  /// Empty where the chain is sound, else what is wrong with it.
  std::string read_revisions();
  std::string read_revision(std::size_t xref, PdfRevision& revision) const;
  [[nodiscard]] std::optional<std::size_t> offset_of(ObjectNumber number, std::size_t revision) const;

  std::string bytes_;
  std::vector<PdfRevision> revisions_;
  ObjectNumber size_ = 0;
};

}  // namespace soakwright::evidence
