/** Hover on a wood: what was measured beside the handbook, the thickness it would need here, cautions. */
import { cautionOnSpecies, cautionsOnValue } from '../catalogue/cautions.js';
import { shown } from '../checks/phrases.js';
import type { Evaluation } from '../recipes/evaluation.js';
import type { Definition } from '../recipes/facts.js';
import type { Desk } from './desk.js';
import { inPlainWords } from './figures.js';
import { cautionLines } from './hover-cautions.js';
import { paragraphs, plain, table } from './markdown.js';
import type { Subject } from './subject.js';
import { type Fitting, thicknessFor } from './thickness-for.js';

/** `subject` and `path`: where the wood is named, when that is in an instrument (`top.wood`). */
export function woodHover(desk: Desk, definition: Definition, subject?: Subject, path = ''): string {
  const { workshop } = desk;
  const name = definition.name.text;
  const species = definition.kind === 'species' ? definition : workshop.speciesOf(name);
  const fitting = subject && thicknessFor(desk, subject, path, name);
  return paragraphs(
    headline(desk, definition, species),
    propertiesTable(
      definition.kind === 'wood' ? workshop.wood(name) : undefined,
      species && workshop.wood(species.name.text),
    ),
    fitting && fittingLine(fitting, name),
    ...cautions(desk, species, path),
  );
}

const SHOWN: readonly (readonly [path: string, words: string])[] = [
  ['density', 'density'],
  ['modulus.along', 'stiffness along the grain'],
  ['modulus.across', 'stiffness across the grain'],
  ['modulus.twist', 'resistance to twist'],
  ['merit', 'merit (higher: lighter at one stiffness)'],
];

function headline(desk: Desk, definition: Definition, species: Definition | undefined): string {
  const latin = textOf(desk, species, 'latin');
  const trade = latin === undefined ? '' : ` (${plain(latin)})`;
  const name = `**${plain(definition.name.text)}**`;
  if (definition.kind === 'species') return `${name}: species${trade}, as the handbooks have it`;
  return species
    ? `${name}: a set of ${plain(species.name.text)}${trade}`
    : `${name}: a set of wood of no known species`;
}

function propertiesTable(own: Evaluation | undefined, book: Evaluation | undefined): string | undefined {
  const rows = SHOWN.map(([path, words]) => [words, ...(own ? [ownFigure(own, path)] : []), bookFigure(book, path)]);
  if (!own && !book) return undefined;
  return table(own ? ['', 'this set', 'handbook'] : ['', 'handbook'], rows);
}

/** A figure that rests on the handbook says so, wherever it flows. */
function ownFigure(own: Evaluation, path: string): string {
  const derived = own.derived(path);
  if (!derived?.known) return 'not known';
  const value = figure(own, path, derived.si);
  const basis = (['assumed', 'handbook', 'measured'] as const).filter((each) => derived.basis.has(each));
  return `${value}, ${inPlainWords(basis)}`;
}

function bookFigure(book: Evaluation | undefined, path: string): string {
  const derived = book?.derived(path);
  return book && derived?.known ? figure(book, path, derived.si) : 'not known';
}

function figure(evaluation: Evaluation, path: string, si: number): string {
  const { quantity } = evaluation.derivations.find(path)!;
  // Builders compare it to the second place; its uncertainty is that of stiffness and density above.
  if (path === 'merit') return si.toFixed(2);
  return shown(si, quantity, evaluation.uncertainty(path));
}

function fittingLine({ part, target, asks, thickness, mass, from }: Fitting, name: string): string {
  const weight = mass === undefined ? '' : `, ${mass}`;
  return `For the ${part} of ${plain(from)} (${target} along the grain) ${plain(name)} is planed to ${thickness}${weight}.${asks}`;
}

function cautions(desk: Desk, species: Definition | undefined, path: string): readonly (string | undefined)[] {
  if (!species) return [];
  const due = cautionsOnValue(path, species.name.text);
  return [
    ...(['dust', 'trade'] as const).map((property) => {
      const said = textOf(desk, species, property);
      const caution = said === undefined ? undefined : cautionOnSpecies(property);
      return caution && cautionLines([caution], `${plain(said ?? '')} `);
    }),
    cautionLines(due),
  ];
}

function textOf(desk: Desk, definition: Definition | undefined, path: string): string | undefined {
  const value = definition && desk.workshop.stated(definition).get(path)?.value;
  return value?.kind === 'text' ? value.text : undefined;
}
