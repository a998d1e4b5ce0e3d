/** What a recipe leaves unknown, takes from a handbook, or makes impossible to compute. */
import { isLineBroken } from '../names/ring-rules.js';
import { concretePaths } from '../../recipes/evaluation/effects.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Definition, Span } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import type { Workshop } from '../../recipes/workshop.js';
import { isInForce, recipeOf } from '../in-force.js';
import { placeOf } from '../mending.js';
import { whatIsMissing } from './missing.js';
import { shown } from '../phrases.js';
import type { Rule } from '../rule.js';
import { isSound } from '../sound-value.js';
import { misnamedBrace } from '../names/unknown-part.js';
import { english, sentences, type Wording } from '../../wording/wording.js';

export const MISSING_INPUT: Rule = {
  code: 'missing-input',
  severity: 'hint',
  title: 'Something that cannot be computed yet',
  reason:
    'What is missing is never taken to be zero: whatever needs it stays unknown. Here is what would make it known.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.85 mm }`,
  good: `wood spruce-12 is sitka-spruce { density: 421 kg/m³ }
model tarn {
  body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 422 mm }
    depth { tail: 104 mm  neck: 89 mm }
  }
  soundhole { diameter: 100 mm  station: 335 mm }
}
recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm } }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say, and } = workshop.wording;
    // What is wrong with the line is told once, and everything is unknown without it.
    if (!isInForce(definition, workshop) || isLineBroken(definition, workshop)) return;
    const unknown = unknownIn(definition.name.text, workshop);
    if (unknown.size === 0) return;
    const parent = workshop.parentOf(definition.name.text);
    const inherited = parent === undefined ? undefined : unknownIn(parent, workshop);
    const fresh = [...unknown].filter(([needs, quantities]) => inherited?.get(needs)?.join() !== quantities.join());
    if (fresh.length === 0) return;
    const lines = fresh
      .slice(0, 3)
      .map(([needs, quantities]) =>
        quantities.length > 1 ? say`${and(quantities)} need ${needs}` : say`${and(quantities)} needs ${needs}`,
      );
    const all = lines.join('; ');
    report(
      definition.name.span,
      fresh.length > 3 ? say`Not known yet: ${all}; and ${fresh.length - 3} more.` : say`Not known yet: ${all}.`,
    );
  },
};

export const HANDBOOK_FIGURE: Rule = {
  code: 'handbook-figure',
  severity: 'hint',
  title: 'A figure from the handbook, not from this wood',
  reason:
    'Two boards of one species can differ by half again in stiffness. A handbook gives the mean; only a tap or a deflection test tells what this board does.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top { wood: sitka-spruce  thickness: 2.85 mm } }`,
  good: `wood spruce-12 is sitka-spruce { density: 421 kg/m³  modulus { along: 10.8 GPa  across: 0.82 GPa  twist: 0.7 GPa } }
model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm } }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say, and, text } = workshop.wording;
    for (const { path, after, statement } of recipeOf(definition, workshop)?.changes ?? []) {
      if ((path !== 'top.wood' && path !== 'back.wood') || after?.value.kind !== 'name') continue;
      const wood = workshop.wood(after.value.name);
      if (!wood) continue;
      const figures = ['density', 'modulus.along'].flatMap((figure) => {
        const found = wood.derived(figure);
        if (!found?.known || !found.basis.has('handbook')) return [];
        // A measured modulus leans on the handbook only to be carried to the shop's climate.
        if (figure === 'modulus.along' && found.basis.has('measured')) return [];
        const words = `${text(FIGURES.get(figure) ?? figure)} (${shown(found.si, found.quantity, wood.uncertainty(figure))})`;
        return [{ words, how: text(HOW_TO.get(figure) ?? '') }];
      });
      if (figures.length === 0) continue;
      const [name, list] = [after.value.name, and(figures.map(({ words }) => words))];
      report(
        statement.span,
        sentences(
          figures.length > 1
            ? say`For ${name}, ${list} are the handbook’s figures, not this wood’s own.`
            : say`For ${name}, ${list} is the handbook’s figure, not this wood’s own.`,
          ...figures.map(({ how }) => how),
        ),
      );
    }
  },
};

export const NOT_COMPUTABLE: Rule = {
  code: 'not-computable',
  severity: 'error',
  title: 'Values from which nothing can be computed',
  reason:
    'Each value may be possible, but not all of them together: an outline that closes on itself, a hole with no plate around it.',
  bad: `model tarn {
  body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 522 mm }
  }
}
recipe tarn-1 for tarn { top.thickness: 2.85 mm }`,
  good: `model tarn {
  body {
    length: 495 mm
    lower-bout { width: 390 mm  station: 112 mm }
    waist { width: 243 mm  station: 292 mm }
    upper-bout { width: 286 mm  station: 422 mm }
  }
}
recipe tarn-1 for tarn { top.thickness: 2.85 mm }`,
  of: ['recipe', 'wood'],
  check(definition, workshop, report) {
    const { say, told } = workshop.wording;
    if (!isInForce(definition, workshop)) return;
    const name = definition.name.text;
    const evaluation = definition.kind === 'wood' ? workshop.wood(name) : workshop.evaluation(name);
    if (!evaluation) return;
    const parentName = definition.kind === 'recipe' ? workshop.parentOf(name) : undefined;
    const inherited = parentName === undefined ? undefined : troublesOf(workshop.evaluation(parentName));
    const said = new Set<string>();
    for (const [path, { trouble, about }] of troublesOf(evaluation)) {
      if (said.has(trouble) || inherited?.get(path)?.trouble === trouble) continue;
      said.add(trouble);
      report(
        placeFor(path, about, definition, workshop),
        say`${path} cannot be computed: ${told(trouble).replace(/\.$/, '')}.`,
        {
          related: relatedTo(path, definition, workshop),
        },
      );
    }
  },
};

const FIGURES: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    density: english('density'),
    'modulus.along': english('stiffness along the grain'),
  }),
);
const HOW_TO: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    density: english('Weigh the blank.'),
    'modulus.along': english('Tap it, or hang a load on it.'),
  }),
);

/** What is needed, with the quantities it would make known; only of parts the recipe says something about. */
function unknownIn(recipe: string, workshop: Workshop): ReadonlyMap<string, readonly string[]> {
  const unknown = new Map<string, string[]>();
  const evaluation = workshop.evaluation(recipe);
  const values = workshop.instrument(recipe)?.values;
  if (!evaluation || !values) return unknown;
  for (const { path, voicing } of evaluation.derivations.all) {
    if (!voicing || path.includes('*')) continue;
    const answer = evaluation.derived(path);
    if (!answer || answer.known || !isBegun(path, evaluation)) continue;
    // What cannot be computed for another reason has a finding of its own.
    const missing = whatIsMissing(answer.missing, evaluation, workshop).filter(
      (one) => !evaluation.derivations.find(one) && !isGivenInVain(one, values, workshop),
    );
    if (missing.length === 0) continue;
    const needs = workshop.wording.and(drawnTogether(missing, workshop.wording));
    const list = unknown.get(needs);
    if (list) list.push(path);
    else unknown.set(needs, [path]);
  }
  return unknown;
}

/** Written, but not so that it can be used, or under a wrong name: that has a finding of its own, where it stands. */
function isGivenInVain(path: string, values: ReadonlyMap<string, Held>, workshop: Workshop): boolean {
  const isSpoilt = (part: string): boolean => {
    const value = values.get(part)?.value;
    return (
      value !== undefined && value.kind !== 'unknown' && !isSound(value, workshop.catalogue.property(part), workshop)
    );
  };
  const parts = path.split('.').map((_, i, words) => words.slice(0, i + 1).join('.'));
  return parts.some(isSpoilt) || misnamedBrace(path, values) !== undefined;
}

function isBegun(path: string, { ground }: Evaluation): boolean {
  const part = partOf(path);
  return (
    ground.members(part).length > 0 ||
    ground.value(part) !== undefined ||
    BEGINNINGS.some((one) => ground.value(`${part}.${one}`) !== undefined)
  );
}

function partOf(path: string): string {
  const dot = path.indexOf('.');
  return dot < 0 ? path : path.slice(0, dot);
}

const BEGINNINGS: readonly string[] = ['wood', 'thickness', 'length', 'mass'];

/** Many values of one part as the first of them and a count. */
function drawnTogether(paths: readonly string[], { say }: Wording): readonly string[] {
  const byPart = new Map<string, string[]>();
  for (const path of paths) {
    const part = partOf(path);
    byPart.set(part, [...(byPart.get(part) ?? []), path]);
  }
  return [...byPart].flatMap(([part, all]) =>
    all.length <= 3 ? all : [say`${all[0] ?? ''} and ${all.length - 1} more values of ${part}`],
  );
}

interface Trouble {
  readonly trouble: string;
  readonly about?: string;
}

function troublesOf(evaluation: Evaluation | undefined): ReadonlyMap<string, Trouble> {
  const troubles = new Map<string, Trouble>();
  if (!evaluation) return troubles;
  for (const path of concretePaths(evaluation.derivations.all, evaluation)) {
    const answer = evaluation.derived(path);
    // A fault of our own is told once for the definition.
    if (answer?.known !== false || answer.trouble === undefined || answer.fault !== undefined) continue;
    troubles.set(path, { trouble: answer.trouble, about: answer.about });
  }
  return troubles;
}

/** The line of this definition that has to do with the input at fault, or else with the quantity; or its name. */
function placeFor(path: string, about: string | undefined, definition: Definition, workshop: Workshop): Span {
  const written = workshop.written(definition).filter(({ role }) => role === 'value');
  const on = (part: string) =>
    written.find(({ canonical }) => canonical === part || canonical.startsWith(`${part}.`))?.statement.span;
  return (about !== undefined && on(about)) || on(partOf(path)) || definition.name.span;
}

function relatedTo(path: string, definition: Definition, workshop: Workshop) {
  const { say } = workshop.wording;
  const part = partOf(path);
  const values = definition.kind === 'recipe' ? workshop.instrument(definition.name.text)?.values : undefined;
  const held = [...(values?.values() ?? [])].find(
    (one) => one.path.startsWith(`${part}.`) && one.from.definition !== definition,
  );
  return held ? [{ place: placeOf(held.from), message: say`${held.path} is given here` }] : [];
}
