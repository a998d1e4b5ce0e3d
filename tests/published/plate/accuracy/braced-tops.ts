/** Sections on braced tops: the earlier set of shells and solids, and six tops of our own in solid elements, over meshes of our own. */
import { readFileSync } from 'node:fs';
import { guitarCases, reference, rotationCases } from '../reference-tops.js';
import { compareTop } from '../solid/compare.js';
import type { SolidFile } from '../solid/results.js';
import { frequencies, solved } from '../solved.js';
import { difference, table, type Cell } from './markdown.js';

const NODES = [450, 600, 800, 1100, 1500];
const HEAD = ['top', 'about … nodes', 'mode 1', '2', '3', '4', '5', '6'];

export function shellSection(): string {
  const rows = Object.entries(guitarCases).flatMap(([name, { model }]): Cell[][] => {
    const expected = reference.cases[name]!.reference;
    return [
      [`**${name.replace(/^[a-z]\d?_/, '').replaceAll('_', ' ')}**, Hz`, '', ...expected.map((f) => f.toFixed(1))],
      ...NODES.map((nodes) => {
        const found = frequencies(model, { nodes });
        return ['difference, %', nodes, ...expected.map((f, i) => difference(found[i]!, f))];
      }),
    ];
  });
  return table(HEAD, rows);
}

export function rotationSection(): string {
  return table(
    ['load', 'CalculiX, °', ...NODES.map((nodes) => `about ${nodes} nodes, %`)],
    rotationCases.map(([name, model, expected]) => [
      name,
      expected.toFixed(4),
      ...NODES.map((nodes) =>
        difference((solved(model, { nodes, modes: 0 }).statics!.rotation * 180) / Math.PI, expected),
      ),
    ]),
  );
}

export function solidSection(): string {
  const { tops, woods } = JSON.parse(readFileSync(new URL('../solid/tops.json', import.meta.url), 'utf8')) as SolidFile;
  const rows = tops.flatMap((top): Cell[][] => {
    const compared = NODES.map((nodes) => compareTop(top, woods, nodes));
    const { modes, rotations } = compared[0]!;
    return [
      [
        `**${top.name}**, Hz, °`,
        '',
        ...modes.map(({ solid }) => solid.toFixed(1)),
        rotations.map(({ solid }) => solid.toFixed(4)).join(', '),
      ],
      ...compared.map((one, i) => [
        'difference, %',
        NODES[i]!,
        ...one.modes.map(({ ours, solid }) => difference(ours, solid)),
        one.rotations.map(({ ours, solid }) => difference(ours, solid)).join(', '),
      ]),
    ];
  });
  return table([...HEAD, 'rotation (couple; couple and shear)'], rows);
}
