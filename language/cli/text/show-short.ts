/** One definition in half a page: what it says itself, what a maker hears, feels or weighs of it, and what is to be done. */
import { sentences, type Wording } from '../../wording/wording.js';
import type { Shown, ShownDerived, ShownValue } from '../shown.js';
import { table, wrapped } from './columns.js';
import { amountOf, findingSection, headOf, originOf, readingSection, section, written } from './show-text.js';
import type { Style } from './style.js';

export function shownInShort(shown: Shown, style: Style): string {
  const { text } = style.wording;
  const sections = [
    headOf(shown, style),
    section(text('Written here'), ownLines(shown, style), style),
    ...shown.readings.map((reading) => readingSection(shown, reading, style)),
    section(text('What it computes to'), computedLines(shown, style), style),
    findingSection(shown, style),
    style.dim(wrapped(more(shown, style.wording), style.columns).join('\n')),
  ];
  return `${sections.filter((one) => one !== '').join('\n\n')}\n`;
}

function ownLines(shown: Shown, style: Style): readonly string[] {
  const { definition, file } = shown;
  const own = ownOf(shown);
  if (own.length > MOST_VALUES && isInstrument(shown)) return partLines(own, style);
  return table(
    own.map((value) => [
      value.path,
      written(value.held, definition.kind),
      { text: originOf(value, definition.name.text, file, style.wording), paint: style.dim },
    ]),
  );
}

/** Beyond this a page is no longer short: only the parts are named. */
const MOST_VALUES = 24;

function partLines(own: readonly ShownValue[], { dim, wording: { say } }: Style): readonly string[] {
  const counts = new Map<string, number>();
  for (const { path } of own) {
    const part = path.includes('.') ? path.slice(0, path.indexOf('.')) : '';
    counts.set(part, (counts.get(part) ?? 0) + 1);
  }
  const single = own
    .filter(({ path }) => !path.includes('.'))
    .map((value) => [value.path, written(value.held, 'model')]);
  const parts = [...counts]
    .filter(([part]) => part !== '')
    .map(([part, count]) => [part, { text: count === 1 ? say`1 value` : say`${count} values`, paint: dim }]);
  return table([...single, ...parts]);
}

function ownOf({ values, definition }: Shown): readonly ShownValue[] {
  return values.filter(({ from, held }) => from.name === definition.name.text || held.via === 'built');
}

/** What is heard or felt, and masses; a brace or a string by itself only on request. */
function computedLines(shown: Shown, { dim, wording: { say } }: Style): readonly string[] {
  const { derived } = shown;
  const known = derived.filter((each) => each.derived.known && (!isInstrument(shown) || isInShort(each)));
  const unknown = derived.filter((each) => !each.derived.known).length;
  const lines = table(known.map((each) => [each.path, { text: amountOf(each), align: 'right' as const }]));
  if (unknown === 0) return lines;
  return [
    ...lines,
    dim(
      `  ${unknown === 1 ? say`1 figure is not known; --all says what it needs` : say`${unknown} figures are not known; --all says what each needs`}`,
    ),
  ];
}

function isInShort({ path, derived }: ShownDerived): boolean {
  const isOfMember = /^(back-)?bracing\.[^.]+\.|^strings\.\d|^voice\.q\./.test(path);
  return (
    !isOfMember &&
    ((derived.known && derived.quantity.voicing) || /(^|[.-])(mass|density|modulus|stiffness|tension)(\.|$)/.test(path))
  );
}

function more({ values, definition, ...rest }: Shown, { say }: Wording): string {
  const { name } = definition;
  const others = values.length - ownOf({ values, definition, ...rest }).length;
  return sentences(
    others === 0 ? '' : say`${others} more values come from its line.`,
    say`Everything, with how it is computed: bookmatch show ${name.text} --all.`,
    isInstrument({ definition }) ? say`One part of it: bookmatch show ${name.text} top.` : '',
  );
}

function isInstrument({ definition: { kind } }: Pick<Shown, 'definition'>): boolean {
  return kind === 'recipe' || kind === 'build' || kind === 'model';
}
