/** Prints the Markdown table of all comparisons with CalculiX: cases × meshes × modes, and the bridge's rotation. */
import { TopSolver, type TopModel } from '../../../language/mechanics/top/index.js';
import { bridgeParts, guitarCases, guitarTop, HELD, LOOSE, reference, toneBar, xBraces } from './referenceTops.js';

const MESHES = [350, 450, 600, 850, 1500];
const solver = new TopSolver();
const percent = (found: number, expected: number): string => {
  const error = (found / expected - 1) * 100;
  return `${error < 0 ? '−' : '+'}${Math.abs(error).toFixed(1)}`;
};
const row = (cells: readonly (string | number)[]): string => `| ${cells.join(' | ')} |`;

const lines = [
  row(['top', 'nodes', 'mode 1', '2', '3', '4', '5', '6']),
  row(['---', ...Array<string>(7).fill('---:')]),
];
for (const [name, { model }] of Object.entries(guitarCases)) {
  const expected = reference.cases[name]!.reference;
  lines.push(row([`**${name}**, CalculiX, Hz`, '', ...expected.map((f) => f.toFixed(1))]));
  for (const nodes of MESHES) {
    const result = solver.solve(model, { nodes });
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const { mesh, modes } = result.solution;
    lines.push(row(['error, %', mesh.x.length, ...modes.map(({ frequency }, i) => percent(frequency, expected[i]!))]));
  }
}

const all = { braces: [...xBraces, toneBar], patches: bridgeParts };
const statics = reference.cases.f_static_string_load;
const loads: readonly (readonly [string, TopModel, number])[] = [
  ['couple, edge held', guitarTop(HELD, all), statics.reference.couple.rot_deg],
  [
    'couple and shear, edge held',
    { ...guitarTop(HELD, all), load: { patch: 'bridge', couple: 8.76, shear: 730 } },
    statics.reference.full.rot_deg,
  ],
  ['couple, edge free in its plane', guitarTop(LOOSE, all), statics.couple_hinged_free_in_plane.rot_deg],
  ['couple, no braces', guitarTop(HELD, { patches: bridgeParts }), statics.couple_without_braces.rot_deg],
];
lines.push('', row(['rotation of the bridge', 'CalculiX, °', ...MESHES.map((nodes) => `about ${nodes} nodes, %`)]));
lines.push(row(['---', ...Array<string>(MESHES.length + 1).fill('---:')]));
for (const [name, model, expected] of loads) {
  const errors = MESHES.map((nodes) => {
    const result = solver.solve(model, { nodes, modes: 0 });
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    return percent((result.solution.statics!.rotation * 180) / Math.PI, expected);
  });
  lines.push(row([name, expected.toFixed(3), ...errors]));
}
console.log(lines.join('\n'));
