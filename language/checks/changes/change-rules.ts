/** Changes held against the parent: that they start from what the parent says, and that they change something. */
import type { Value } from '../../facts/facts.js';
import { agrees, sameValue } from '../../recipes/instrument/values.js';
import type { Fix } from '../finding.js';
import { changesIn, recipeOf } from '../in-force.js';
import { placeOf, remove, replace, textAt } from '../mending.js';
import { writeValue } from '../phrases.js';
import type { Rule } from '../rule.js';
import { isSound } from '../sound-value.js';
import { misnamedBrace } from '../names/unknown-part.js';
import { startOf } from '../start.js';

const TARN = `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.85 mm }
`;

export const STALE_CHANGE: Rule = {
  code: 'stale-change',
  severity: 'warning',
  title: 'A change from a value the parent no longer has',
  reason:
    'A change names the value it starts from, so that it can be checked. If the parent has moved since, the step you meant is not the step you get.',
  bad: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.95 mm -> 2.7 mm }`,
  good: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.7 mm }`,
  of: ['recipe', 'model', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const change of changesIn(definition, workshop)) {
      const { stated, before } = change;
      if (!stated || !before || agrees(stated, before.value)) continue;
      // What is wrong with the old value itself is told as such; a name may have left the shop since.
      const property = workshop.catalogue.property(change.path, definition.kind);
      if (stated.kind !== 'name' && !isSound(stated, property, workshop)) continue;
      const now = writeValue(before.value);
      const written = writeValue(stated);
      const start = startOf(definition, workshop);
      const fixes: Fix[] = [
        {
          title: say`Start from ${now}, as ${before.from.definition.name.text} says`,
          edits: [replace(definition, stated.span, now)],
          preferred: true,
        },
      ];
      // What was made is what it is: a recipe is not put back to fit a rework.
      if (before.via !== 'solved' && isWrittenOut(before.value) && definition.kind !== 'build') {
        const owner = before.from.definition;
        fixes.push({
          title: say`Put ${written} back in ${owner.name.text}`,
          edits: [replace(owner, before.value.span, written)],
        });
      }
      report(
        stated.span,
        say`${start} has ${now} for ${change.path}, not ${written}. Did the step start from ${now}, or should ${before.from.definition.name.text} go back to ${written}?`,
        { fixes, related: [{ place: placeOf(before.from), message: say`${change.path} is ${now} here` }] },
      );
    }
  },
};

export const SILENT_OVERRIDE: Rule = {
  code: 'silent-override',
  severity: 'warning',
  title: 'A plain value that replaces the parent’s',
  reason:
    'Written as a plain value, a difference looks like something new. Written as a change it says what it was before, is checked, and is not overlooked at the bench.',
  bad: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  top.thickness: 2.7 mm }`,
  good: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.7 mm }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const recipe = recipeOf(definition, workshop);
    const fromRecipe = workshop.parentOf(definition.name.text) !== undefined;
    for (const change of recipe?.changes ?? []) {
      const { before, after, statement } = change;
      if (change.written !== 'plain' || statement.kind !== 'property' || !before || !after) continue;
      if (sameValue(before.value, after.value)) continue;
      // A value that cannot be used replaces nothing yet: first it must be put right.
      if (!isSound(after.value, workshop.catalogue.property(change.path, definition.kind), workshop)) continue;
      const path = textAt(definition, statement.path.span);
      const value = textAt(definition, statement.value.span);
      const old = writeValue(before.value);
      const head = { start: statement.span.start, end: statement.value.span.start };
      report(
        statement.span,
        say`This replaces ${old}, which ${before.from.definition.name.text} gives. Write it as a change.`,
        {
          severity: fromRecipe ? 'warning' : 'information',
          related: [{ place: placeOf(before.from), message: say`${change.path} is ${old} here` }],
          // A change has no place for the source of its number.
          fixes: statement.source
            ? []
            : [
                {
                  title: say`Write \`change ${path}: ${old} -> ${value}\``,
                  edits: [replace(definition, head, `change ${path}: ${old} -> `)],
                  preferred: true,
                },
              ],
        },
      );
    }
  },
};

export const NO_CHANGE: Rule = {
  code: 'no-change',
  severity: 'hint',
  title: 'A line that changes nothing',
  reason:
    'The parent already has this value. The line can go; left in, it looks like a change and hides the real ones.',
  bad: `${TARN}recipe tarn-2 from tarn-1 { because "Same top."  change top.thickness: 2.85 mm -> 2.85 mm }`,
  good: `${TARN}recipe tarn-2 from tarn-1 { because "Thinner top."  change top.thickness: 2.85 mm -> 2.7 mm }`,
  of: ['recipe', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const change of changesIn(definition, workshop)) {
      const { before, after, statement } = change;
      if (change.kind !== 'value' || change.written === 'with' || !before || !after) continue;
      if (!sameValue(before.value, after.value)) continue;
      report(statement.span, say`${before.from.definition.name.text} already has ${writeValue(before.value)} here.`, {
        tag: 'unnecessary',
        related: [{ place: placeOf(before.from), message: say`already said here` }],
        fixes: [{ title: say`Take the line out`, edits: [remove(definition, statement)], preferred: true }],
      });
    }
  },
};

export const CHANGE_OF_NOTHING: Rule = {
  code: 'change-of-nothing',
  severity: 'warning',
  title: 'A change of something the parent does not have',
  reason:
    'There is nothing to change: no recipe along the chain says anything about this. It may be a slip in the path, or simply something new.',
  bad: `${TARN}recipe tarn-2 from tarn-1 { because "Thinner edge."  change top.edge-thickness: 2.5 mm -> 2.3 mm }`,
  good: `${TARN}recipe tarn-2 from tarn-1 { because "Thinner edge."  top.edge-thickness: 2.3 mm }`,
  of: ['recipe', 'model', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const recipe = recipeOf(definition, workshop);
    for (const change of changesIn(definition, workshop)) {
      const { statement, before } = change;
      if (statement.kind !== 'change' || before || !statement.new) continue;
      // A slip in the path, or in a brace's name, is told as that.
      if (!workshop.catalogue.property(change.path, definition.kind)) continue;
      if (recipe && misnamedBrace(change.path, recipe.values)) continue;
      const path = textAt(definition, statement.path.span);
      const value = textAt(definition, statement.new.span);
      report(
        statement.span,
        say`${startOf(definition, workshop)} has no ${change.path} to change. If it is new, write it as a plain value.`,
        {
          fixes: [
            {
              title: say`Write \`${path}: ${value}\``,
              edits: [replace(definition, { start: statement.span.start, end: statement.new.span.start }, `${path}: `)],
              preferred: true,
            },
          ],
        },
      );
    }
  },
};

export const CHANGE_MISSING_OLD: Rule = {
  code: 'change-missing-old',
  severity: 'hint',
  title: 'A change that does not say what it starts from',
  reason:
    'With the old value written, the change is checked whenever the parent moves, and the bench sheet reads as a step.',
  bad: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: -> 2.7 mm }`,
  good: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.7 mm }`,
  of: ['recipe', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { statement, before } of changesIn(definition, workshop)) {
      if (statement.kind !== 'change' || statement.old || !statement.new || !before) continue;
      const old = writeValue(before.value);
      const gap = { start: statement.path.span.end, end: statement.new.span.start };
      if (!/^:\s*(?:->|→)\s*$/.test(textAt(definition, gap))) continue;
      report(statement.path.span, say`The old value is ${old}; written down, it is checked.`, {
        related: [{ place: placeOf(before.from), message: say`${old} here` }],
        fixes: [
          { title: say`Write \`${old} ->\``, edits: [replace(definition, gap, `: ${old} -> `)], preferred: true },
        ],
      });
    }
  },
};

export const STEP_WITHOUT_BASE: Rule = {
  code: 'step-without-base',
  severity: 'error',
  title: 'A step from a value that is not there',
  reason: 'A step such as `by -0.15 mm` is taken from the parent’s number. Without one, the new value is unknown.',
  bad: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  change top.edge-thickness: by -0.15 mm }`,
  good: `${TARN}recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: by -0.15 mm }`,
  of: ['recipe', 'model', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const change of changesIn(definition, workshop)) {
      const { statement, before, after, path } = change;
      if (statement.kind !== 'change' || !statement.by || after) continue;
      const start = startOf(definition, workshop);
      const why = !before
        ? say`${start} has no ${path} to step from. Write the value itself.`
        : before.value.kind === 'quantity'
          ? say`${writeValue(before.value)} cannot be moved by ${writeValue(statement.by)}. Write a step of the same kind, or per cent.`
          : say`${path} is ${writeValue(before.value)} in ${start}, which is no number to step from.`;
      report(statement.by.span, why, {
        related: before
          ? [{ place: placeOf(before.from), message: say`${path} is ${writeValue(before.value)} here` }]
          : [],
      });
    }
  },
};

function isWrittenOut(value: Value): boolean {
  return value.kind !== 'quantity' || value.written !== '';
}
