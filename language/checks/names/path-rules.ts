/** Paths: that the catalogue knows them, in this kind of definition, in its own words, and once. */
import type { Definition, DefinitionKind, Span } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Written } from '../../recipes/instrument/written.js';
import type { Fix } from '../finding.js';
import { replace, textAt } from '../mending.js';
import { type Near, asWritten, nearPaths, whatThereIs } from './near-paths.js';
import { unheardMode } from '../values/plate-modes.js';
import { aKind, suggestion } from '../phrases.js';
import { EVERY_KIND, type Rule } from '../rule.js';
import { sentences } from '../../wording/wording.js';

export const UNKNOWN_PATH: Rule = {
  code: 'unknown-path',
  severity: 'error',
  title: 'A part or property the catalogue does not know',
  reason:
    'A value under an unknown name reaches nothing: the number you gave is not used, and what needs it stays unknown.',
  bad: `model tarn { top.thicknes: 2.8 mm }`,
  good: `model tarn { top.thickness: 2.8 mm }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const told: string[] = [];
    for (const written of workshop.written(definition)) {
      if (written.role === 'quantity' || isKnown(written, definition, workshop)) continue;
      if (workshop.catalogue.property(written.canonical)) continue; // misplaced
      // What stands inside a part nobody knows is told with the part.
      if (told.some((part) => written.within === part || written.within.startsWith(`${part}.`))) continue;
      if (reachesInto(written, workshop) || (definition.kind === 'wood' && unheardMode(written))) continue;
      const { statement } = written;
      if (statement.kind === 'property' && /^(?:because|note|with|drop|allow|accept)$/.test(asWritten(written))) {
        const gap = { start: statement.path.span.end, end: statement.value.span.start };
        const word = asWritten(written);
        const isText = word === 'because' || word === 'note';
        const message = isText
          ? say`After \`${word}\` stands no colon, only a text in double quotes.`
          : say`After \`${word}\` stands no colon.`;
        report(written.path.span, message, {
          fixes: [{ title: say`Take the colon out`, edits: [replace(definition, gap, ' ')], preferred: true }],
        });
        continue;
      }
      if (written.role === 'part') told.push(written.canonical);
      const near = holding(nearPaths(written, definition, workshop), written, definition, workshop);
      const none =
        written.role === 'part'
          ? say`There is no part ${written.canonical}.`
          : say`There is no property ${written.canonical}.`;
      const hint =
        near.length > 0
          ? suggestion(
              near.map(({ path }) => path),
              workshop.wording,
            )
          : whatThereIs(written, definition, workshop) ||
            (written.role === 'value' ? say`What has no place of its own can be kept as a note: \`note "…"\`.` : '');
      report(written.path.span, sentences(none, hint), {
        fixes: near.flatMap(({ text }, i) =>
          text === undefined
            ? []
            : [
                {
                  title: say`Write ${text}`,
                  edits: [replace(definition, written.path.span, text)],
                  preferred: i === 0,
                },
              ],
        ),
      });
    }
  },
};

export const MISPLACED: Rule = {
  code: 'misplaced',
  severity: 'warning',
  title: 'A property in the wrong kind of definition',
  reason: 'A tap tone belongs to a wood or a build, a span to a rig. Written elsewhere it is not read.',
  bad: `model tarn { tap.along: 69 Hz }`,
  good: `wood spruce-12 is sitka-spruce { tap.along: 69 Hz }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const written of workshop.written(definition)) {
      if (written.role !== 'value' || written.property) continue;
      const reached = written.derived ? undefined : reachesInto(written, workshop);
      if (reached) {
        const example = `${reached.kind} … { ${written.canonical.slice(reached.part.length + 1)}: … }`;
        report(
          written.path.span,
          say`What belongs to ${reached.part} is written where that is defined: \`${example}\`.`,
        );
        continue;
      }
      if (written.derived) continue;
      const kinds = EVERY_KIND.filter((kind) => isReadIn(kind, written.canonical, workshop));
      if (kinds.length === 0 || kinds.includes(definition.kind)) continue;
      const where = workshop.wording.or(kinds.map((kind) => aKind(kind, workshop.wording)));
      report(
        written.path.span,
        say`${written.canonical} is not read in ${aKind(definition.kind, workshop.wording)}; it belongs in ${where}.`,
      );
    }
  },
};

export const DERIVED_SET: Rule = {
  code: 'derived-set',
  severity: 'error',
  title: 'A computed quantity given a value',
  reason:
    'Mass, stiffness and resonance follow from the wood and the sizes; they cannot be set. They can be expected, which tests the recipe, or held, which adjusts something to keep them.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.mass: 160 g }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { expect top.mass: below 160 g }`,
  of: ['model', 'recipe', 'appointments', 'order'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { role, property, derived, canonical, path, statement } of workshop.written(definition)) {
      if (role !== 'value' || property || !derived) continue;
      const fixes: Fix[] = [];
      const value =
        statement.kind === 'property' ? statement.value : statement.kind === 'change' ? statement.new : undefined;
      if (definition.kind === 'recipe' && value && definition.statements.includes(statement)) {
        fixes.push({
          title: say`Expect it instead`,
          edits: [replace(definition, { start: statement.span.start, end: value.span.start }, `expect ${path.text}: `)],
          preferred: true,
        });
      }
      report(
        path.span,
        say`${canonical} is computed and cannot be set. Use \`expect ${canonical}: …\` to test it, or \`hold ${canonical} by …\` to keep it.`,
        { fixes },
      );
    }
  },
};

export const DERIVED_BY: Rule = {
  code: 'not-adjustable',
  severity: 'error',
  title: 'A hold that adjusts something that cannot be adjusted',
  reason:
    'A hold works by moving a size the maker can plane or cut to: a thickness, a height. A computed quantity cannot be moved by itself.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { hold top.stiffness.along at 40 N·m by top.mass }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.8 mm }`,
  of: ['recipe', 'model'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { role, property, derived, canonical, path, statement } of workshop.written(definition)) {
      if (role !== 'by') continue;
      if (!property && derived)
        report(path.span, say`${canonical} is computed; a hold adjusts a size such as top.thickness.`, {
          fixes: turnedRound(statement, definition, workshop),
        });
      else if (property && property.kind !== 'quantity')
        report(path.span, say`${canonical} is not a size that can be adjusted.`);
    }
  },
};

/** `hold top.thickness by top.stiffness.along`: the two in each other's place. */
function turnedRound(statement: Written['statement'], definition: Definition, { catalogue, wording }: Workshop) {
  if (statement.kind !== 'hold' || !statement.by) return [];
  const { quantity, by } = statement;
  if (catalogue.property(catalogue.canonical(quantity.text), 'recipe')?.kind !== 'quantity') return [];
  return [
    {
      title: wording.say`Write ${`hold ${by.text} by ${quantity.text}`}`,
      edits: [replace(definition, quantity.span, by.text), replace(definition, by.span, quantity.text)],
      preferred: true,
    },
  ];
}

export const SYNONYM: Rule = {
  code: 'synonym',
  severity: 'hint',
  title: 'Another word for what the catalogue calls by one',
  reason:
    'Shops have their own words, and they are understood. One word for one thing keeps recipes searchable and sheets alike.',
  bad: `model tarn { soundboard { thickness: 2.8 mm } }`,
  good: `model tarn { top { thickness: 2.8 mm } }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const written of workshop.written(definition)) {
      const meant = localPart(written);
      if (meant === undefined || meant === asWritten(written)) continue;
      if (!isKnown(written, definition, workshop) || isTwice(written, workshop.written(definition))) continue;
      report(written.path.span, say`The catalogue’s word for ${asWritten(written)} is ${meant}.`, {
        fixes: [
          { title: say`Write ${meant}`, edits: [replace(definition, written.path.span, meant)], preferred: true },
        ],
      });
    }
  },
};

/** Said again in the catalogue's word: that finding is the one to tell. */
function isTwice({ canonical, path, role, occasion }: Written, all: readonly Written[]): boolean {
  return (
    role === 'value' &&
    all.some(
      (other) =>
        other.path !== path && other.role === 'value' && other.canonical === canonical && other.occasion === occasion,
    )
  );
}

export const CHANGE_OUT_OF_PLACE: Rule = {
  code: 'change-out-of-place',
  severity: 'error',
  title: 'A change where there is nothing to change',
  reason:
    'Changes, additions, holds and expectations belong to a recipe (or to a client’s request, or to what was reworked on a build), where there is a parent to differ from. Elsewhere a value is just written.',
  bad: `wood spruce-12 is sitka-spruce { change mass: 214 g -> 220 g }`,
  good: `wood spruce-12 is sitka-spruce { mass: 220 g }`,
  of: EVERY_KIND.filter((kind) => kind !== 'recipe' && kind !== 'order'),
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { statement, path, occasion } of workshop.written(definition)) {
      if (statement.kind === 'property' || statement.kind === 'block' || occasion?.kind === 'rework') continue;
      const word = textAt(definition, { start: statement.span.start, end: path.span.start }).trim();
      const plain =
        statement.kind === 'change' && statement.new
          ? [
              {
                title: say`Write the value by itself`,
                edits: [
                  replace(
                    definition,
                    { start: statement.span.start, end: statement.new.span.start },
                    `${textAt(definition, path.span)}: `,
                  ),
                ],
                preferred: true,
              },
            ]
          : statement.kind === 'add' && statement.statements.length > 0
            ? [
                {
                  title: say`Write the part by itself`,
                  edits: [replace(definition, { start: statement.span.start, end: path.span.start }, '')],
                },
              ]
            : [];
      report(
        statementHead(statement),
        say`\`${word}\` belongs in a recipe; ${aKind(definition.kind, workshop.wording)} just states values.`,
        { fixes: plain },
      );
    }
  },
};

function statementHead(statement: Written['statement']): Span {
  return {
    start: statement.span.start,
    end: 'path' in statement ? statement.path.span.end : statement.quantity.span.end,
  };
}

/** Whether the catalogue or the engine knows the path in this kind of definition. */
function isKnown(written: Written, definition: Definition, workshop: Workshop): boolean {
  if (written.property || written.derived) return true;
  const { catalogue } = workshop;
  if (catalogue.part(written.canonical)) return true;
  const { parts, properties } = catalogue.children(written.canonical, definition.kind);
  return parts.length + properties.length > 0;
}

/** `top.wood.density`: a property of the thing named there, which is set where that thing is defined. */
function reachesInto(
  { canonical }: Written,
  { catalogue }: Workshop,
): { readonly part: string; readonly kind: string } | undefined {
  for (let dot = canonical.lastIndexOf('.'); dot > 0; dot = canonical.lastIndexOf('.', dot - 1)) {
    const part = canonical.slice(0, dot);
    const kind = catalogue.property(part)?.kind;
    if (kind === 'wood' || kind === 'strings' || kind === 'rig' || kind === 'species') return { part, kind };
  }
  // `top.density`: what a set is, said of the plate made from it.
  const [, part = '', last = ''] = /^(.+)\.([^.]+)$/.exec(canonical) ?? [];
  const isOfWood =
    catalogue.property(`${part}.wood`)?.kind === 'wood' && catalogue.property(last, 'wood') !== undefined;
  return isOfWood && catalogue.property(canonical) === undefined ? { part, kind: 'wood' } : undefined;
}

/** Of several parts that may be meant, those that have what stands inside the block. */
function holding(near: readonly Near[], block: Written, definition: Definition, workshop: Workshop): readonly Near[] {
  if (block.role !== 'part' || near.length < 2) return near;
  const inside = workshop
    .written(definition)
    .filter(({ within, statement }) => within === block.canonical && statement !== block.statement)
    .map(({ canonical }) => canonical.slice(block.canonical.length));
  const fitting = near.filter(({ path }) =>
    inside.every((rest) => {
      const meant = workshop.catalogue.canonical(path + rest, definition.kind);
      return workshop.catalogue.property(meant, definition.kind) ?? workshop.catalogue.part(meant);
    }),
  );
  return fitting.length > 0 ? fitting : near;
}

/** As a property, or as a part of which something may be written there. */
function isReadIn(kind: DefinitionKind, path: string, { catalogue }: Workshop): boolean {
  if (catalogue.property(path, kind)) return true;
  const { parts, properties } = catalogue.children(path, kind);
  return catalogue.part(path) !== undefined && parts.length + properties.length > 0;
}

/** The catalogue's spelling of just those words, or undefined where it lies outside the block they stand in. */
function localPart({ canonical, within }: Written): string | undefined {
  if (within === '') return canonical;
  return canonical.startsWith(`${within}.`) ? canonical.slice(within.length + 1) : undefined;
}
