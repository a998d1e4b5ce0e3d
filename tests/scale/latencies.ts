/**
 * How long an editor waits for each answer while somebody types in a root recipe of a big folder. Every answer is worked
 * out from the desk as the server does, after a keystroke that changed a number a dozen recipes depend on.
 */
import type { PlateTask } from '../../language/recipes/evaluation/analyst.js';
import { comparedModes } from '../../language/reports/comparison/compared-modes.js';
import { comparisonTable } from '../../language/reports/comparison/comparison-table.js';
import { completionsAt } from '../../language/editing/completion/completion.js';
import type { Desk } from '../../language/checks/desk.js';
import { drawingOf } from '../../language/reports/plan/drawing.js';
import { formattingEdits } from '../../language/editing/formatting/formatting.js';
import { hoverAt } from '../../language/editing/hover/hover.js';
import { inlayHints } from '../../language/editing/hints/inlay-hints.js';
import { lensesOf } from '../../language/editing/hints/lenses.js';
import { semanticTokens } from '../../language/editing/tokens/semantic-tokens.js';
import { TopSolver } from '../../language/mechanics/plate/index.js';
import { solveTask } from '../../language/recipes/evaluation/solving.js';
import { Session } from '../../language/server/session.js';
import type { FolderReader } from '../../language/server/recipe-folder.js';
import { recipeName, uriOf } from './made-shop.js';
import { now, type Row } from './row.js';

const STROKES = 60;
const RUNS = 3;

interface Stage {
  readonly session: Session;
  readonly desk: Desk;
  readonly uri: string;
  readonly chain: number;
  /** The text as it stands after the keystroke. */
  readonly text: string;
  readonly lines: readonly string[];
  /** Plates asked of the solver and not yet answered. */
  readonly asked: PlateTask[];
  /** Answers what was asked and lets the desk know. */
  readonly solve: () => void;
}

interface Measured {
  readonly what: string;
  readonly aim: string;
  /** Types so much more before the clock starts; the text as it is then. */
  readonly typed?: (text: string) => string;
  /** The keystroke itself is within the time. */
  readonly withKeystroke?: boolean;
  /** The findings are out before the clock starts, as they are when an editor asks a moment after the keystroke. */
  readonly afterFindings?: boolean;
  readonly ask: (stage: Stage) => unknown;
}

const MEASURED: readonly Measured[] = [
  {
    what: 'completion at a statement, one letter typed',
    aim: '25 ms',
    typed: (text) => text.replace(LAST_STATEMENT, '$1\n  t\n}'),
    ask: ({ desk, uri, lines }) => completionsAt(desk, uri, endOf(lines, '  t')),
  },
  {
    what: 'completion of a path to change',
    aim: '25 ms',
    typed: (text) => text.replace(LAST_STATEMENT, '$1\n  change \n}'),
    ask: ({ desk, uri, lines }) => completionsAt(desk, uri, endOf(lines, '  change ')),
  },
  {
    what: 'completion of a name among 500 recipes',
    aim: '25 ms',
    typed: (text) => `${text}\nrecipe new from \n`,
    ask: ({ desk, uri, lines }) => completionsAt(desk, uri, endOf(lines, 'recipe new from ')),
  },
  {
    what: 'completion of what to hold',
    aim: '25 ms',
    typed: (text) => text.replace(LAST_STATEMENT, '$1\n  hold \n}'),
    ask: ({ desk, uri, lines }) => completionsAt(desk, uri, endOf(lines, '  hold ')),
  },
  {
    what: 'hover on a thickness',
    aim: '10 ms',
    afterFindings: true,
    ask: ({ desk, uri, lines }) => hoverAt(desk, uri, placeOf(lines, 'thickness:')),
  },
  {
    what: 'hover on a change of wood',
    aim: '10 ms',
    afterFindings: true,
    ask: ({ desk, uri, lines }) => hoverAt(desk, uri, placeOf(lines, 'top.wood')),
  },
  {
    what: 'lenses of a file of twelve recipes',
    aim: '30 ms',
    afterFindings: true,
    ask: ({ desk, uri }) => lensesOf(desk, uri),
  },
  {
    what: 'hints of a file of twelve recipes',
    aim: '30 ms',
    afterFindings: true,
    ask: ({ desk, uri, lines }) =>
      inlayHints(desk, uri, { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } }),
  },
  {
    what: 'semantic tokens of a file of twelve recipes',
    aim: '30 ms',
    afterFindings: true,
    ask: ({ desk, session, uri }) => semanticTokens(desk, session.parser, uri),
  },
  {
    what: 'comparison panel, keystroke included',
    aim: '120 ms',
    withKeystroke: true,
    ask: ({ desk, chain }) => comparisonTable(desk.workshop, recipeName(chain, 0), recipeName(chain, 1)),
  },
  {
    what: 'comparison panel until resonances are in',
    aim: '',
    withKeystroke: true,
    ask: ({ desk, chain, solve }) => {
      const table = () => comparisonTable(desk.workshop, recipeName(chain, 0), recipeName(chain, 1));
      table();
      solve();
      return table();
    },
  },
  {
    what: 'comparison panel with mode shapes, keystroke included',
    aim: '120 ms',
    withKeystroke: true,
    ask: ({ desk, chain }) => [
      comparisonTable(desk.workshop, recipeName(chain, 0), recipeName(chain, 1)),
      comparedModes(desk, recipeName(chain, 0), recipeName(chain, 1), 'top'),
    ],
  },
  {
    what: 'drawing, keystroke included',
    aim: '120 ms',
    withKeystroke: true,
    ask: ({ desk, chain }) => drawingOf(desk, recipeName(chain, 0)),
  },
];

/** The last line of a root recipe and its brace. */
const LAST_STATEMENT = /^( {2}top \{ wood: .*)\n\}/m;

export async function latencies(folder: FolderReader, files: ReadonlyMap<string, string>, chains: number) {
  const rows: Row[] = [];
  for (const measured of MEASURED) {
    const runs: number[][] = [];
    for (let run = 0; run < RUNS; run++) runs.push(await timesOf(measured, folder, files, chains));
    rows.push({ what: measured.what, aim: measured.aim, runs });
  }
  return [...rows, formatting(files)];
}

async function timesOf(
  { typed = (text) => text, withKeystroke = false, afterFindings = false, ask, what }: Measured,
  folder: FolderReader,
  files: ReadonlyMap<string, string>,
  chains: number,
): Promise<number[]> {
  const asked: PlateTask[] = [];
  const waiting: (() => void)[] = [];
  const solver = new TopSolver();
  const worker = {
    solve: (task: PlateTask, done: (analysis: ReturnType<typeof solveTask>) => void) => {
      asked.push(task);
      waiting.push(() => done(solveTask(solver, task)));
    },
    stop: () => waiting.splice(0),
  };
  const session = new Session(folder, { worker, delivered: () => undefined });
  await session.load(['file:///made-shop']);
  for (const uri of session.uris()) session.findings(uri);
  const times: number[] = [];
  for (let stroke = 0; stroke < STROKES; stroke++) {
    const chain = stroke % chains;
    const uri = uriOf(`chain-${chain}`);
    const changed = files.get(uri)!.replace('thickness: 2.80 mm', `thickness: 2.${60 + (stroke % 37)} mm`);
    const text = typed(changed);
    const keystroke = () => session.type(uri, text);
    const stage: Stage = {
      session,
      desk: session.desk,
      uri,
      chain,
      text,
      lines: text.split('\n'),
      asked,
      solve: () => {
        for (let next = waiting.shift(); next; next = waiting.shift()) next();
      },
    };
    if (!withKeystroke) keystroke();
    if (afterFindings) session.findings(uri);
    const start = now();
    if (withKeystroke) keystroke();
    const answer = ask(stage);
    times.push(now() - start);
    if (isEmpty(answer)) throw new Error(`${what}: an empty answer measures nothing`);
  }
  return times;
}

function isEmpty(answer: unknown): boolean {
  if (answer === undefined || answer === null) return true;
  const list = (answer as { items?: unknown }).items ?? answer;
  return Array.isArray(list) && list.length === 0;
}

/** Seven chains in one file, its spacing spoiled, so that there is something to do on every line. */
function formatting(files: ReadonlyMap<string, string>): Row {
  const text = [0, 1, 2, 3, 4, 5, 6].map((chain) => files.get(uriOf(`chain-${chain}`))!).join('\n');
  const spoiled = text.replace(/^ +/gm, '   ').replaceAll(': ', ':');
  const { parser } = new Session({ list: () => Promise.resolve([]), read: () => Promise.resolve(undefined) });
  const lines = spoiled.split('\n').length;
  const runs = Array.from({ length: RUNS }, () =>
    Array.from({ length: 20 }, () => {
      const start = now();
      if (formattingEdits(spoiled, parser).length < 100) throw new Error('nothing was formatted');
      return now() - start;
    }),
  );
  return { what: `formatting a file of ${lines} lines, reading included`, aim: '40 ms', runs };
}

function endOf(lines: readonly string[], line: string) {
  const at = lines.findIndex((one) => one === line);
  if (at < 0) throw new Error(`there is no line "${line}"`);
  return { line: at, character: line.length };
}

function placeOf(lines: readonly string[], word: string) {
  const at = lines.findIndex((one) => one.includes(word));
  if (at < 0) throw new Error(`nowhere does it say "${word}"`);
  return { line: at, character: lines[at]!.indexOf(word) + 1 };
}
