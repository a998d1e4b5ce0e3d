/** The solver's rows: a plate solved anew and after one change, and a whole task of the editor with all its slopes. */
import { lensesOf } from '../../../language/editing/hints/lenses.js';
import { TopSolver } from '../../../language/mechanics/plate/index.js';
import type { SolverTask } from '../../../language/recipes/evaluation/analyst.js';
import { solveTask } from '../../../language/recipes/evaluation/solving.js';
import { Session } from '../../../language/server/session.js';
import { madeShop, uriOf } from '../made-shop.js';
import { benchTop } from '../top.bench.js';
import type { Row } from './scenes.js';

const GOALS: ReadonlyMap<string, string> = new Map([
  ['full solve, mesh included', '≤ 20 ms'],
  ['one plate thickness changed', '≤ 5 ms'],
  ['one brace height changed', '≤ 2.5 ms'],
]);

export async function solver(): Promise<readonly Row[]> {
  const plates = benchTop().flatMap(({ name, median }): Row[] => {
    const goal = GOALS.get(name);
    return goal === undefined ? [] : [{ figure: `braced top: ${name}`, goal, unit: 'ms', ours: [median] }];
  });
  return [...plates, await editorTask()];
}

/** The plates that the lenses of a chain of twelve ask for, each solved with every slope the recipe has a use for. */
async function editorTask(): Promise<Row> {
  const files = madeShop(1, 12);
  const folder = {
    list: () => Promise.resolve([...files.keys()]),
    read: (uri: string) => Promise.resolve(files.get(uri)),
  };
  const tasks: SolverTask[] = [];
  const worker = { solve: (task: SolverTask) => void tasks.push(task), stop: () => undefined };
  const session = new Session(folder, { worker, delivered: () => undefined });
  await session.load(['file:///made-shop']);
  lensesOf(session.desk, uriOf('chain-0'));
  const times: number[] = [];
  for (let round = 0; round < 3; round++) {
    const plates = new TopSolver();
    for (const task of tasks) {
      const { user } = process.cpuUsage();
      solveTask(plates, task);
      if (round > 0) times.push((process.cpuUsage().user - user) / 1000);
    }
  }
  if (times.length === 0) throw new Error('no plate was asked for: the benchmark measures nothing');
  return { figure: 'a task of the editor: one plate with all its slopes', goal: '≤ 45 ms', unit: 'ms', ours: times };
}
