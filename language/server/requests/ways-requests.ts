/** Request for the ways to a wish: what each takes and does, and what to write. */
import { readWish } from '../../reports/ways/read-wish.js';
import { wayEdits } from '../../reports/ways/way-edits.js';
import { wayInWords } from '../../reports/ways/way-words.js';
import { waysTo } from '../../recipes/ways/ways.js';
import { placed, toWorkspaceEdit } from '../convert.js';
import { GetWays, type WaysFound } from '../protocol.js';
import type { Serving } from '../serving.js';

export function serveWays({ connection, session, versionOf, answerOrSay }: Serving): void {
  const { desk, parser } = session;
  connection.onRequest(
    GetWays,
    answerOrSay<{ readonly recipe: string; readonly wish: string }, WaysFound | null>(
      null,
      ({ recipe, wish: wished }) => {
        const { workshop } = desk;
        const definition = desk.shelf.find('recipe', recipe);
        const instrument = workshop.instrument(recipe);
        if (!definition || !instrument) return null;
        const wish = readWish(workshop, parser, instrument.values, wished);
        if (!wish) return { state: 'unreadable', ways: [] };
        const held = instrument.holds.map(({ quantity }) => quantity);
        const found = waysTo(workshop, instrument.values, wish, held);
        if (found.pending) return { state: 'waiting', ways: [] };
        if (found.isMet) return { state: 'met', ways: [] };
        const { catalogue, wording } = workshop;
        const shop = { catalogue, wording, instrument: (name: string) => workshop.instrument(name) };
        const ways = found.ways.map((way) => ({
          ...wayInWords(way, found, wording),
          edit: toWorkspaceEdit(placed(desk, wayEdits(definition, way, shop)), versionOf),
        }));
        return { state: 'found', ways };
      },
    ),
  );
}
