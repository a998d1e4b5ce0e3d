/** What the builds of a model say all together, for somebody at the bench: what can be told apart, what it did, what next. */
import { scatterInWords, writeSigned } from '../../editing/compared-evidence.js';
import { conditionsInWords } from '../../editing/reading-words.js';
import { unitFor } from '../../editing/shop-values.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Fitted, Floor, NotFitted, ResponseEffects } from '../../recipes/estimated-effects.js';
import type { ModelEffects } from '../../recipes/model-effects.js';
import type { Workshop } from '../../recipes/workshop.js';
import { designInWords, nextInWords } from './design.js';
import { type Cell, table, wrapped } from './layout.js';
import type { Style } from './style.js';
import { VariableWords } from './variable-words.js';

export function modelEffectsAsText(found: ModelEffects, workshop: Workshop, style: Style): string {
  const { design, responses, separation } = found;
  const words = new VariableWords(design, workshop);
  // With too few builds for what was changed nothing is fitted anywhere, and the head has said so.
  const isFitted = separation.groups.length > 0 && design.builds.length > separation.groups.length;
  const told = isFitted ? responses.map((each) => oneResponse(each, found, words, workshop, style)) : [];
  const foot = [
    ...(isFitted ? [meaning(workshop), ...byChance(responses, workshop)] : []),
    ...nextInWords(found, words, workshop),
  ];
  const closing = foot.map((sentence) => indented(sentence, style).join('\n'));
  return `${[designInWords(found, words, workshop, style), ...told, ...closing].join('\n\n')}\n`;
}

function oneResponse(
  { response, builds, outcome }: ResponseEffects,
  found: ModelEffects,
  words: VariableWords,
  workshop: Workshop,
  style: Style,
): string {
  const { wording } = workshop;
  const all = found.design.builds.length;
  const name = `${response.path}${response.reading.name === '' ? '' : ` ${response.reading.name}`}`;
  const about = [
    conditionsInWords(response.reading, wording),
    builds.length === all
      ? wording.say`read in all ${all} builds`
      : wording.say`read in ${builds.length} of ${all} builds`,
  ];
  const title = `${style.bold(name)}: ${about.filter((part) => part !== '').join('; ')}`;
  if (outcome.kind !== 'fitted') {
    return [title, ...indented(whyNot(outcome, builds.length, workshop), style)].join('\n');
  }
  const tangled = outcome.tangled.map(
    (knot) =>
      wording.say`Not to be told apart in these builds, and not fitted: ${wording.and(knot.map((each) => words.short([each])))}.`,
  );
  return [
    title,
    ...rowsOf(response.path, outcome, found, words, workshop, style),
    ...tangled.flatMap((sentence) => indented(sentence, style)),
    ...indented(floorInWords(outcome.floor, workshop), style).map(style.dim),
  ].join('\n');
}

function rowsOf(
  path: string,
  { effects }: Fitted,
  { predicted }: ModelEffects,
  words: VariableWords,
  { wording: { text }, catalogue }: Workshop,
  style: Style,
): readonly string[] {
  const dimension = catalogue.property(path, 'build')!.dimension!;
  const unit = unitFor(path, 'build')?.symbol ?? '';
  const right = (said: string): Cell => ({ text: said, align: 'right' });
  const head = ['', text('effect, give or take'), text('computed')].map((said, i): Cell => ({
    text: said,
    align: i > 0 ? 'right' : 'left',
    paint: style.bold,
  }));
  const rows = effects.map(({ variables, amount, band, distinguishable }): readonly (Cell | string)[] => {
    const computed = predicted(path, variables);
    return [
      words.short(variables),
      right(writeQuantity(amount, dimension, { unit, uncertainty: band, difference: true }).replace(/^-/, '−')),
      right(computed === undefined ? '–' : writeSigned(computed, dimension, unit)),
      distinguishable ? text('stands out') : { text: text('not distinguishable'), paint: style.dim },
    ];
  });
  return table([head, ...rows]);
}

function whyNot({ kind, unknowns }: NotFitted, builds: number, { wording: { say, text } }: Workshop): string {
  switch (kind) {
    case 'too-few-builds':
      return say`${builds} builds are too few: ${unknowns - 1} effects to find and the value they start from take at least ${unknowns}. Nothing is fitted.`;
    case 'nothing-varied':
      return text('Nothing that counts differs between these builds, so there is no effect to find.');
    case 'no-scatter':
      return text('No builds alike say how far this reading scatters, so nothing is fitted: build one recipe twice.');
  }
}

function floorInWords({ share, basis, builds }: Floor, workshop: Workshop): string {
  const { say } = workshop.wording;
  const scatter = `${(share * 100).toPrecision(2)} %`;
  if (basis === 'reading') {
    return say`Builds alike differ by less than the last digit written down; the noise floor comes from that digit: ${scatter} of a reading.`;
  }
  return basis === 'leftover'
    ? say`The effects leave ${scatter} of a reading unexplained, more than builds alike are known to differ by; the noise floor comes from that.`
    : say`The noise floor comes from ${scatterInWords(workshop, { basis, builds })}: ${scatter} of a reading.`;
}

function meaning({ wording: { text } }: Workshop): string {
  return text(
    'Each effect is that of the step above, all else as it was. Nineteen times in twenty the true one lies within what is given or taken; one that is smaller than that is not distinguishable.',
  );
}

/** Nineteen times in twenty means one in twenty by chance: worth saying where there are so many. */
function byChance(responses: readonly ResponseEffects[], { wording: { say } }: Workshop): readonly string[] {
  const effects = responses.flatMap(({ outcome }) => (outcome.kind === 'fitted' ? outcome.effects : []));
  const found = effects.filter(({ distinguishable }) => distinguishable).length;
  if (effects.length < 20) return [];
  return [
    say`${found} of ${effects.length} effects stand out. About one in twenty would by chance alone, so ${Math.round(effects.length / 20)} of them may mean nothing: what matters is worth building once more.`,
  ];
}

function indented(sentence: string, { columns }: Style): readonly string[] {
  return wrapped(sentence, columns - 2).map((line) => `  ${line}`);
}
