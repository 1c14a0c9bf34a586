// SPDX-License-Identifier: GPL-3.0-or-later
// The words of every sentence, in English, from the files of core/wording/patterns. `{0}` is the first
// argument, `{0:reading|readings}` a count with its noun.
//
// Another language is another such folder: whole sentences, so that the arguments may come in any order.
#include <array>
#include <utility>

#include "core/wording/patterns/column_notice_patterns.h"
#include "core/wording/patterns/deviation_patterns.h"
#include "core/wording/patterns/finding_patterns.h"
#include "core/wording/patterns/job_notice_patterns.h"
#include "core/wording/patterns/note_patterns.h"
#include "core/wording/patterns/rate_patterns.h"
#include "core/wording/patterns/requirement_patterns.h"
#include "core/wording/patterns/row_notice_patterns.h"
#include "core/wording/patterns/shortfall_patterns.h"
#include "core/wording/statement_words.h"

namespace soakwright {
namespace {

using Pattern = std::string_view (*)(Sentence);
constexpr Pattern kSections[] = {requirement_pattern, finding_pattern,       rate_pattern,
                                 note_pattern,        deviation_pattern,     shortfall_pattern,
                                 row_notice_pattern,  column_notice_pattern, job_notice_pattern};

constexpr std::string_view pattern_in_sections(Sentence sentence) {
  for (const Pattern section : kSections)
    if (const std::string_view pattern = section(sentence); !pattern.empty()) return pattern;
  return {};
}

/// The compiler names the sentence that has no words: it stands in the message as `sentence`.
template <Sentence sentence>
constexpr std::string_view words_that_there_are() {
  static_assert(sentence == Sentence::none || !pattern_in_sections(sentence).empty());
  return pattern_in_sections(sentence);
}

template <std::size_t... index>
constexpr std::array<std::string_view, kSentences> all_patterns(std::index_sequence<index...>) {
  return {words_that_there_are<static_cast<Sentence>(index)>()...};
}

constexpr std::array<std::string_view, kSentences> kPatterns =
    all_patterns(std::make_index_sequence<kSentences>{});

}  // namespace

std::string_view pattern_of(Sentence sentence) { return kPatterns[static_cast<std::size_t>(sentence)]; }

}  // namespace soakwright
