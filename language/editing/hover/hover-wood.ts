/** Hover on a wood: what was measured beside the handbook, the thickness it would need here, cautions. */
import { cautionOnSpecies, cautionsOnValue } from '../../catalogue/cautions.js';
import { percent, shown } from '../../checks/phrases.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Definition } from '../../facts/facts.js';
import type { Desk } from '../../checks/desk.js';
import { inPlainWords, shareOf } from '../../reports/figures.js';
import { cautionLines } from './hover-cautions.js';
import { paragraphs, plain, table } from '../markdown.js';
import type { Subject } from '../../reports/subject.js';
import { type Fitting, thicknessFor } from '../../reports/thickness-for.js';
import { english, sentences, type Wording } from '../../wording/wording.js';

/** `subject` and `path`: where the wood is named, when that is in an instrument (`top.wood`). */
export function woodHover(desk: Desk, definition: Definition, subject?: Subject, path = ''): string {
  const { workshop } = desk;
  const name = definition.name.text;
  const species = definition.kind === 'species' ? definition : workshop.speciesOf(name);
  const fitting = subject && thicknessFor(desk, subject, path, name);
  return paragraphs(
    headline(desk, definition, species),
    propertiesTable(
      definition.kind === 'wood' ? workshop.woodInFull(name) : undefined,
      species && workshop.wood(species.name.text),
      workshop.wording,
    ),
    definition.kind === 'wood' ? carriedLine(workshop.woodInFull(name), workshop.wording) : undefined,
    fitting && fittingLine(fitting, name, workshop.wording),
    ...cautions(desk, species, path),
  );
}

const SHOWN: readonly (readonly [path: string, words: string])[] = [
  ['density', english('density')],
  ['modulus.along', english('stiffness along the grain')],
  ['modulus.across', english('stiffness across the grain')],
  ['modulus.twist', english('resistance to twist')],
  ['merit', english('merit (higher: lighter at one stiffness)')],
];

function headline(desk: Desk, definition: Definition, species: Definition | undefined): string {
  const latin = textOf(desk, species, 'latin');
  const trade = latin === undefined ? '' : ` (${plain(latin)})`;
  const name = `**${plain(definition.name.text)}**`;
  const { say } = desk.workshop.wording;
  if (definition.kind === 'species') return say`${name}: species${trade}, as the handbooks have it`;
  return species
    ? say`${name}: a set of ${plain(species.name.text)}${trade}`
    : say`${name}: a set of wood of no known species`;
}

function propertiesTable(
  own: Evaluation | undefined,
  book: Evaluation | undefined,
  wording: Wording,
): string | undefined {
  const { text } = wording;
  const rows = SHOWN.flatMap(([path, words]) => [
    [text(words), ...(own ? [ownFigure(own, path, wording)] : []), bookFigure(book, path, wording)],
    ...fittedRows(own, path, wording),
  ]);
  if (!own && !book) return undefined;
  return table(own ? ['', text('this set'), text('handbook')] : ['', text('handbook')], rows);
}

/** What the plate solver makes of the same readings, with how far the figure above, which is used, is off. */
function fittedRows(own: Evaluation | undefined, path: string, wording: Wording): readonly (readonly string[])[] {
  const { say, text } = wording;
  const [used, fitted] = [own?.derived(path), own?.derived(`${path}-fitted`)];
  if (!own || !used?.known || !fitted) return [];
  const words = text('fitted to the readings by the plate solver');
  if (!fitted.known) return fitted.pending ? [[words, text('being worked out'), '']] : [];
  const share = shareOf(fitted.si / used.si - 1, wording);
  return [[words, say`${figure(own, `${path}-fitted`, fitted.si)}; ${share} on what is used`, '']];
}

/** A figure that rests on the handbook says so, wherever it flows. */
function ownFigure(own: Evaluation, path: string, wording: Wording): string {
  const derived = own.derived(path);
  if (!derived?.known) return wording.text('not known');
  const value = figure(own, path, derived.si);
  const basis = (['assumed', 'handbook', 'measured'] as const).filter((each) => derived.basis.has(each));
  return `${value}, ${inPlainWords(basis, wording)}`;
}

function bookFigure(book: Evaluation | undefined, path: string, { text }: Wording): string {
  const derived = book?.derived(path);
  return book && derived?.known ? figure(book, path, derived.si) : text('not known');
}

function figure(evaluation: Evaluation, path: string, si: number): string {
  const { quantity } = evaluation.derivations.find(path)!;
  // Builders compare it to the second place; its uncertainty is that of stiffness and density above.
  if (path === 'merit') return si.toFixed(2);
  return shown(si, quantity, evaluation.uncertainty(path));
}

/** What was read in other air is carried to the shop’s, and says so. */
function carriedLine(own: Evaluation | undefined, { say }: Wording): string | undefined {
  const [read, shop] = [own?.number('moisture-when-read'), own?.number('moisture-in-shop')];
  if (!own || read === undefined || shop === undefined || Math.abs(read - shop) < LIKE_THE_SHOP) return undefined;
  const at = (moisture: number) => writeQuantity(moisture, DIMENSION.moisture);
  const changes = [
    { share: own.number('stiffer-since-read'), words: (by: string) => say`stiffness ${by}` },
    { share: own.number('heavier-since-read'), words: (by: string) => say`density ${by}` },
  ].flatMap(({ share, words }) => (share === undefined ? [] : [words(percent(share))]));
  return say`Read at ${at(read)} and carried to the shop’s ${at(shop)}: ${changes.join(', ')}.`;
}

/** A quarter of a per cent of moisture is nothing to speak of. */
const LIKE_THE_SHOP = 0.0025;

function fittingLine({ part, target, isOdd, thickness, mass, from }: Fitting, wood: string, { say }: Wording): string {
  const [owner, name] = [plain(from), plain(wood)];
  const planed = mass === undefined ? thickness : `${thickness}, ${mass}`;
  return sentences(
    part === 'top'
      ? say`For the top of ${owner} (${target} along the grain) ${name} is planed to ${planed}.`
      : say`For the back of ${owner} (${target} along the grain) ${name} is planed to ${planed}.`,
    isOdd ? say`That is outside what is usually built.` : '',
  );
}

function cautions(desk: Desk, species: Definition | undefined, path: string): readonly (string | undefined)[] {
  if (!species) return [];
  const { wording } = desk.workshop;
  const due = cautionsOnValue(path, species.name.text);
  return [
    ...(['dust', 'trade'] as const).map((property) => {
      const said = textOf(desk, species, property);
      const caution = said === undefined ? undefined : cautionOnSpecies(property);
      return caution && cautionLines([caution], wording, `${plain(wording.text(said ?? ''))} `);
    }),
    cautionLines(due, wording),
  ];
}

function textOf(desk: Desk, definition: Definition | undefined, path: string): string | undefined {
  const value = definition && desk.workshop.stated(definition).get(path)?.value;
  return value?.kind === 'text' ? value.text : undefined;
}
