// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/draft/draft_command.h"

#include <string>

#include "app/cli/draft/rule_folders.h"
#include "app/cli/draft/rule_list.h"
#include "app/cli/printing/page_text.h"
#include "app/cli/printing/standard_output.h"
#include "core/draft.h"
#include "core/system/atomic_file.h"

namespace soakwright::cli {
namespace {

RuleShelf shelf_for(const std::string& named) {
  const std::vector<std::string> folders = rule_folders(named);
  RuleShelf shelf = read_rule_folders(folders);
  if (shelf.rules.empty() && shelf.problems.empty())
    shelf.problems.push_back({ProblemKind::cannot_open, "", 0, "no published rules are installed",
                              "name a folder that has them with --rules"});
  return shelf;
}

int list_rules(const RuleShelf& shelf) {
  if (const auto problem = write_standard_output(rule_list(shelf.rules, page_style()))) return say(*problem);
  return shelf.problems.empty() ? 0 : say(shelf.problems);
}

int put(const std::string& text, const std::string& out) {
  const auto problem = out.empty() || out == "-" ? write_standard_output(text) : write_file_whole(out, text);
  return problem ? say(*problem) : 0;
}

}  // namespace

int run_draft(const Arguments& arguments) {
  const DraftArguments& draft = arguments.draft;
  if (draft.task == DraftArguments::Task::from_log) {
    const auto text = propose_procedure(arguments.request, arguments.unit);
    return text ? put(text.value(), draft.out) : say(text.problems());
  }
  const RuleShelf shelf = shelf_for(draft.rules);
  if (draft.task == DraftArguments::Task::list) return list_rules(shelf);
  for (const PublishedRule& rule : shelf.rules)
    if (!draft.out.empty() && draft.out != "-" && written_place(draft.out) == written_place(rule.file))
      return say(Problem{ProblemKind::usage, draft.out, 0,
                         "this is a file to be read, and would be written over", "name another file"});
  const auto text = draft_procedure(shelf, draft.request);
  return text ? put(text.value(), draft.out) : say(text.problems());
}

}  // namespace soakwright::cli
