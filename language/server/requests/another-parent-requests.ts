/** Requests for setting a recipe on another parent: which there are, and what to write. */
import { possibleParents, rebasedOn } from '../../editing/refactoring/rebase.js';
import { placed, toWorkspaceEdit } from '../convert.js';
import { GetRebase, ListParents, type PossibleParent, type Rebased } from '../protocol.js';
import type { Serving } from '../serving.js';

export function serveAnotherParent({ connection, session, versionOf, answerOrSay }: Serving): void {
  const { desk, parser } = session;
  connection.onRequest(
    ListParents,
    answerOrSay<{ readonly recipe: string }, readonly PossibleParent[] | null>(
      null,
      ({ recipe }) => possibleParents(desk, recipe) ?? null,
    ),
  );
  connection.onRequest(
    GetRebase,
    answerOrSay<{ readonly recipe: string; readonly parent: string }, Rebased | null>(null, ({ recipe, parent }) => {
      const definition = desk.shelf.find('recipe', recipe);
      const moved = definition && rebasedOn({ desk, parser, definition, span: definition.head }, parent);
      if (!moved || 'reason' in moved) return moved ?? null;
      return { edit: toWorkspaceEdit(placed(desk, moved.edits), versionOf) };
    }),
  );
}
