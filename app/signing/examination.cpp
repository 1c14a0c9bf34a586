// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/signing/examination.h"

#include <algorithm>
#include <ctime>
#include <optional>
#include <utility>

#include "app/evidence/deflate.h"
#include "app/evidence/evidence_update.h"
#include "app/evidence/pdf_date.h"
#include "app/signing/cms_signature.h"
#include "app/signing/evaluated_evidence.h"
#include "app/signing/field_words.h"
#include "app/signing/report_time_stamp.h"
#include "app/signing/signing_key.h"
#include "core/report/json/result_json.h"
#include "core/report/report_contents.h"
#include "core/units/sha256.h"
#include "core/wording/sections/review_words.h"

namespace soakwright::signing {
namespace {

using State = CheckLine::State;
using Kind = AttachedFile::Kind;

constexpr const char* kStamp = "Time stamp";
/// The signer's clock and the authority's may differ by this.
constexpr std::int64_t kClocksApart_s = 300;

std::string count_text(std::size_t count, const char* one) {
  return std::to_string(count) + ' ' + one + (count == 1 ? "" : "s");
}

class Examiner {
 public:
  Examiner(Examination& examination, const ReportPrinter& printer, const Watch& watch)
      : all_(examination), printer_(printer), watch_(watch) {}

  void look_at_files() {
    const std::vector<std::string> names = evidence::attached_names(all_.taken.files);
    std::string list;
    for (const std::string& name : names) list += (list.empty() ? "" : ", ") + name;
    say(State::holds, "Files",
        count_text(names.size(), "file") + " inside, each as its checksum says: " + list + ".");
  }

  void look_at_result() {
    auto evaluated = evaluate_evidence(all_.taken, watch_);
    if (watch_.stopped()) return;
    if (!evaluated) {
      // The private folder's name says nothing to a reader.
      say(State::fails, "Result",
          "The files inside cannot be evaluated again: " + evaluated.problems().front().what + ".");
      return;
    }
    evaluated_ = std::move(evaluated).value();
    all_.analysis = std::make_shared<const Analysis>(evaluated_->analysis);
    const std::string again = result_json(evaluated_->analysis);
    const std::string& attached = all_.taken.file(Kind::result)->bytes;
    const std::string digest = sha256_hex(attached);
    if (again == attached)
      say(State::holds, "Result",
          "The files inside give this result again, byte for byte (SHA-256 " + digest + ").");
    else if (all_.taken.version != SOAKWRIGHT_VERSION)
      say(State::open, "Result",
          "Not compared: the report is of version " + all_.taken.version + ", this program of version " +
              SOAKWRIGHT_VERSION + ".");
    else
      say(State::fails, "Result", "The files inside give another result than the one beside them.");
  }

  void look_at_pages() {
    if (!evaluated_)
      return say(State::open, "Pages", "Not compared: there is no result to compare them with.");
    ReportOptions options;
    options.unit = all_.taken.unit;
    options.both_units = all_.taken.both_units;
    options.unsaved = all_.taken.unsaved;
    options.program_version = all_.taken.version;
    options.paper = all_.taken.paper;
    options.company_picture = evaluated_->placed.company_picture;
    auto contents = report_contents(evaluated_->analysis, options);
    if (watch_.stopped()) return;
    if (!contents)
      return say(State::fails, "Pages",
                 "The report cannot be made again: " + contents.problems().front().what + ".");
    contents.value().dates = all_.taken.dates;
    contents.value().issued = all_.taken.issued;
    contents.value().created_s = all_.taken.created_s;
    restore_dates(contents.value().files);
    const auto& printed_end = all_.file.revisions()[evidence::kEvidenceRevision].end;
    const std::string_view printed = std::string_view(all_.file.bytes()).substr(0, printed_end);
    const auto again = printer_.report(contents.value());
    if (watch_.stopped()) return;
    if (!again) return say(State::open, "Pages", "Not compared: " + again.problems().front().what + ".");
    const auto here = taken_again(again.value());
    if (here) all_.set_up_here = printing_set_up(here.value());
    if (again.value() == printed)
      return say(State::holds, "Pages", "The result gives these pages again, byte for byte.");
    if (const std::string other = other_set_up(again.value(), here); !other.empty())
      return say(State::open, "Pages", "Not compared: " + other + ".");
    say(State::fails, "Pages", "The pages or the list of files are not what the result gives.");
  }

  /// Of the report as it is, or before one of its last signatures.
  void look_at_time_stamp(const std::string& der, const std::vector<OwnedCertificate>& trusted) {
    const auto& revisions = all_.file.revisions();
    const std::string_view bytes = all_.file.bytes();
    std::vector<std::string_view> states{bytes};
    for (std::size_t i = revisions.size(); i-- > evidence::kEvidenceRevision;)
      states.push_back(bytes.substr(0, revisions[i].end));
    CheckedStamp stamp = check_time_stamp(der, states, trusted);
    if (!stamp.broken.empty())
      return say(State::fails, kStamp, "The time stamp does not hold: " + stamp.broken + ".");
    const std::size_t covered =
        revisions.size() - std::max<std::size_t>(stamp.state, 1) - evidence::kEvidenceRevision;
    const std::string what = (covered == 0 ? std::string("The report without a signature")
                                           : "The report up to signature " + std::to_string(covered)) +
                             " existed at " + evidence::utc_text(stamp.at_s) + ", as " + stamp.authority +
                             " states";
    for (std::size_t i = 0; i < covered && i < all_.signatures.size(); ++i)
      if (all_.signatures[i].signed_s > stamp.at_s + kClocksApart_s)
        return say(State::fails, kStamp,
                   what + ": before the time that signature " + std::to_string(i + 1) + " states.");
    if (!stamp.untrusted.empty())
      return say(State::fails, kStamp,
                 what + ": not vouched for by the trusted certificate (" + stamp.untrusted + ").");
    say(State::holds, kStamp, what + ".");
    if (trusted.empty())
      return say(State::note, kStamp, "Nobody vouches for this authority: no trusted one was named.");
    stamped_ = covered;
    stamped_s_ = stamp.at_s;
  }

  void find_signatures() { all_.signatures = signatures_in(all_.file, all_.taken); }

  void look_at_signatures(const std::vector<OwnedCertificate>& trusted) {
    for (std::size_t i = 0; i < all_.signatures.size(); ++i) look_at_signature(i, trusted);
    if (all_.signatures.empty()) say(State::open, "Signatures", "There is no signature.");
    if (const std::size_t behind = all_.file.trailing_bytes(); behind > 0)
      say(State::fails, "End",
          count_text(behind, "byte") + " follow the end of the report: something was added, or cut off.");
    else if (!all_.signatures.empty())
      say(State::holds, "End", "Nothing was added after the last signature.");
  }

 private:
  void say(State state, std::string what, std::string text) {
    all_.lines.push_back({state, std::move(what), std::move(text)});
  }

  /// The files' own dates, which evaluating them in another folder has lost.
  void restore_dates(std::vector<AttachedFile>& files) const {
    for (AttachedFile& file : files)
      for (const AttachedFile& taken : all_.taken.files)
        if (taken.kind == file.kind && taken.previous == file.previous) file.modified_s = taken.modified_s;
  }

  static Result<evidence::TakenEvidence> taken_again(const std::string& printed_here) {
    auto file = evidence::PdfFile::read(printed_here, "");
    if (!file) return file.problems();
    return evidence::evidence_of(file.value(), "");
  }

  /// What keeps pages that are printed here from being compared with those of the report; empty if nothing.
  [[nodiscard]] std::string other_set_up(const std::string& printed_here,
                                         const Result<evidence::TakenEvidence>& here) const {
    if (all_.taken.version != SOAKWRIGHT_VERSION)
      return "the report is of version " + all_.taken.version + ", this program of version " +
             SOAKWRIGHT_VERSION;
    if (!here) return {};
    if (here.value().set_up != all_.taken.set_up)
      return "the report was printed with " + all_.taken.set_up + ", this machine prints with " +
             here.value().set_up;
    const auto printed = [](const std::string& document) {
      return fonts_in(std::string_view(document).substr(0, document.find("startxref")));
    };
    if (printed(printed_here) != printed(all_.file.bytes()))
      return "this machine writes the fonts into the file in another order";
    if (here.value().deflate != all_.taken.deflate)
      return "the report was packed with " + all_.taken.deflate + ", this machine packs with " +
             here.value().deflate;
    return {};
  }

  void look_at_signature(std::size_t index, const std::vector<OwnedCertificate>& trusted) {
    const FoundSignature& found = all_.signatures[index];
    const std::string what = "Signature " + std::to_string(index + 1);
    if (!found.irregular.empty())
      return say(State::fails, what, "What was added here is no proper signature: " + found.irregular + ".");
    const std::string& bytes = all_.file.bytes();
    const std::size_t end = all_.file.revisions()[found.revision].end;
    const std::string data = bytes.substr(0, found.contents) + bytes.substr(found.behind, end - found.behind);
    const auto now_s = static_cast<std::int64_t>(std::time(nullptr));
    const CheckedCms cms = check_cms(found.value, data, found.signed_s, now_s, trusted);
    const std::string who =
        person_role_text(found.role) + ' ' + found.name + ", " + evidence::utc_text(found.signed_s);
    if (!cms.broken.empty()) return say(State::fails, what, who + ": broken: " + cms.broken + ".");
    say(State::holds, what, who + ": intact, and covers everything before it.");
    look_at_field(index, cms);
    look_at_certificate(index, cms, !trusted.empty());
  }

  /// What a reader sees on the page: the signer could have put other words there.
  void look_at_field(std::size_t index, const CheckedCms& cms) {
    const FoundSignature& found = all_.signatures[index];
    const std::string what = "Field " + std::to_string(index + 1);
    const evidence::SignatureBox& box = all_.taken.boxes[found.box];
    const auto again = field_again(field_words(box, found.name, found.signed_s, cms.subject, cms.issuer),
                                   all_.file, found, box, index + 1, printer_);
    if (!again) return say(State::open, what, "Not compared: " + again.problems().front().what + ".");
    if (again.value() == FieldAgain::same)
      return say(State::holds, what, "The page shows role, name, time and certificate of this signature.");
    if (again.value() == FieldAgain::other_fonts || all_.set_up_here.empty() ||
        found.set_up != all_.set_up_here)
      return say(State::open, what,
                 "Not compared: the words on the page were printed with another version, Qt or fonts.");
    say(State::fails, what, "The words on the page are not those of this signature.");
  }

  void look_at_certificate(std::size_t index, const CheckedCms& cms, bool trust_asked) {
    const std::string what = "Certificate " + std::to_string(index + 1);
    const std::string whose = cms.subject + ", issued by " + cms.issuer;
    if (!cms.unfit.empty()) return say(State::fails, what, whose + ": it must not sign: " + cms.unfit + ".");
    if (!cms.valid_then)
      return say(State::fails, what,
                 whose + ": not valid at the time of signing, but from " + cms.not_before + " to " +
                     cms.not_after + ".");
    if (!cms.untrusted.empty())
      return say(State::fails, what,
                 whose + ": not vouched for by the trusted certificate (" + cms.untrusted + ").");
    if (!cms.valid_now && index < stamped_ && stamped_s_ <= cms.not_after_s)
      say(State::holds, what,
          whose + ": expired since (" + cms.not_after + "); the time stamp shows that it was signed before.");
    else if (!cms.valid_now)
      say(State::open, what,
          whose + ": expired since (" + cms.not_after +
              "); that it was signed before is the signer's own word.");
    else
      say(State::holds, what, whose + ": valid at the time of signing, by the signer's own clock.");
    if (!trust_asked)
      say(State::note, what, "Nobody vouches for this certificate: no trusted one was named.");
  }

  Examination& all_;
  const ReportPrinter& printer_;
  const Watch& watch_;  ///< once it is stopped, no step says anything
  std::optional<EvaluatedEvidence> evaluated_;
  std::size_t stamped_ = 0;  ///< signatures that a trusted time stamp covers
  std::int64_t stamped_s_ = 0;
};

}  // namespace

Result<Examination> examine(const VerifyOrder& order, const ReportPrinter& printer, const Watch& watch) {
  std::vector<OwnedCertificate> trusted;
  if (!order.trust.empty()) {
    auto read = read_certificates(order.trust);
    if (!read) return read.problems();
    trusted = std::move(read).value();
  }
  std::string stamp;
  if (!order.timestamp.empty()) {
    auto read = read_small_file(order.timestamp);
    if (!read) return read.problems();
    stamp = std::move(read).value();
  }
  auto file = evidence::PdfFile::read_file(order.report);
  if (!file) return file.problems();
  auto taken = evidence::evidence_of(file.value(), order.report, watch);
  if (!taken) return taken.problems();
  Examination examination{{}, std::move(file).value(), std::move(taken).value(), {}, {}, nullptr};
  Examiner examiner(examination, printer, watch);
  examiner.look_at_files();
  examiner.look_at_result();
  if (watch.stopped()) return Problems{};
  examiner.look_at_pages();
  if (watch.stopped()) return Problems{};
  examiner.find_signatures();
  if (!stamp.empty()) examiner.look_at_time_stamp(stamp, trusted);
  examiner.look_at_signatures(trusted);
  return examination;
}

}  // namespace soakwright::signing
