/** Additions, omissions and groups, and the reason for it all. */
import type { Definition } from '../../facts/facts.js';
import { type Change, isWithin } from '../../recipes/instrument/instrument.js';
import { recipeOf } from '../in-force.js';
import { insertLine, placeOf, remove, replace, textAt } from '../mending.js';
import type { Rule } from '../rule.js';
import { startOf } from '../start.js';
import { sentences } from '../../wording/wording.js';

const TARN = `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.85 mm }
`;

export const ADD_EXISTING: Rule = {
  code: 'add-existing',
  severity: 'warning',
  title: 'Something added that is already there',
  reason: 'What is already there is changed, not added. Counted as an addition, it would look like a new part.',
  bad: `model tarn { bracing { finger-1 { height: 7 mm } } }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { because "Stiffer wing."  add bracing.finger-1 { height: 8 mm } }`,
  good: `model tarn { bracing { finger-1 { height: 7 mm } } }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { because "Stiffer wing."  add bracing.finger-2 { height: 8 mm } }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const start = workshop.startOf(definition.name.text);
    for (const change of recipeOf(definition, workshop)?.changes ?? []) {
      if (change.statement.kind !== 'add' || !start) continue;
      const there = [...start.values.values()].find((held) => isWithin(held.path, change.path));
      if (!there) continue;
      report(
        change.statement.path.span,
        say`${change.path} is already there. Change what differs, or add it under another name.`,
        {
          related: [{ place: placeOf(there.from), message: say`${there.path} is given here` }],
        },
      );
    }
  },
};

export const DROP_MISSING: Rule = {
  code: 'drop-missing',
  severity: 'warning',
  title: 'Something dropped that is not there',
  reason: 'Nothing is left out by this line. It may be a slip in the name, or the parent has dropped it already.',
  bad: `model tarn { bracing { finger-1 { height: 7 mm } } }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { because "Freer edge."  drop bracing.finger-2 }`,
  good: `model tarn { bracing { finger-1 { height: 7 mm } } }
recipe tarn-1 for tarn { }
recipe tarn-2 from tarn-1 { because "Freer edge."  drop bracing.finger-1 }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const start = workshop.startOf(definition.name.text);
    for (const change of recipeOf(definition, workshop)?.changes ?? []) {
      if (change.statement.kind !== 'drop' || change.members.length > 0 || !start) continue;
      const near = nearMembers(change, [...start.values.keys()]);
      report(
        change.statement.path.span,
        sentences(
          say`${startOf(definition, workshop)} has no ${change.path} to drop.`,
          near.length > 0 ? say`It has ${near.join(', ')}.` : '',
        ),
        {
          fixes: [
            ...near.map((name) => ({
              title: say`Write ${name}`,
              edits: [
                replace(
                  definition,
                  change.statement.kind === 'drop' ? lastWord(change.statement.path) : change.statement.span,
                  name,
                ),
              ],
            })),
            { title: say`Take the line out`, edits: [remove(definition, change.statement)] },
          ],
        },
      );
    }
  },
};

export const EMPTY_TOGETHER: Rule = {
  code: 'empty-together',
  severity: 'hint',
  title: 'A group of changes with fewer than two in it',
  reason:
    'A group makes one tweak of changes in several places. With one change or none in it, the group says nothing.',
  bad: `${TARN}recipe tarn-2 from tarn-1 {
  because "Lighter."
  together "thinner all over" { change top.thickness: 2.85 mm -> 2.7 mm }
}`,
  good: `${TARN}recipe tarn-2 from tarn-1 {
  because "Lighter."
  together "thinner all over" { change top.thickness: 2.85 mm -> 2.7 mm  back.thickness: 2.4 mm }
}`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const statement of definition.statements) {
      if (statement.kind !== 'together') continue;
      const inner = statement.statements.flatMap((one) => (one.kind === 'block' ? one.statements : [one]));
      if (inner.length > 1) continue;
      const [only] = statement.statements;
      report(
        { start: statement.span.start, end: statement.reason?.span.end ?? statement.span.start },
        only
          ? say`This group holds a single change: it counts as one without the group.`
          : say`This group holds no change.`,
        {
          tag: 'unnecessary',
          fixes: [
            only
              ? {
                  title: say`Take the change out of the group`,
                  edits: [replace(definition, statement.span, textAt(definition, only.span))],
                }
              : { title: say`Take the group out`, edits: [remove(definition, statement)] },
          ],
        },
      );
    }
  },
};

export const NO_REASON: Rule = {
  code: 'no-reason',
  severity: 'hint',
  title: 'A change without a reason',
  reason:
    'In a year nobody remembers what a change was to prove. One line of why is what makes the result mean something.',
  bad: `${TARN}recipe tarn-2 from tarn-1 { change top.thickness: 2.85 mm -> 2.7 mm }`,
  good: `${TARN}recipe tarn-2 from tarn-1 { because "Carry less weight."  change top.thickness: 2.85 mm -> 2.7 mm }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const recipe = recipeOf(definition, workshop);
    if (!recipe || workshop.parentOf(recipe.name) === undefined) return;
    if (definition.statements.some((statement) => statement.kind === 'because' || statement.kind === 'note')) return;
    const unexplained = recipe.changes.filter((change) => !change.group?.reason && change.written !== 'with');
    if (unexplained.length === 0 || triedToExplain(definition)) return;
    report(definition.name.span, say`Say why: a line \`because "…"\` is worth more than the numbers in a year.`, {
      fixes: [
        {
          title: say`Add a line for the reason`,
          edits: [insertLine(definition, 'because ""')],
        },
      ],
    });
  },
};

/** A reason is there, only not written as one; that line has a finding of its own. */
function triedToExplain(definition: Definition): boolean {
  return (
    definition.statements.some((statement) => statement.kind === 'property' && statement.path.text === 'because') ||
    definition.problems.some(({ span }) => /^because\b/i.test(textAt(definition, span)))
  );
}

function nearMembers(change: Change, paths: readonly string[]): readonly string[] {
  const root = change.path.slice(0, Math.max(change.path.lastIndexOf('.'), 0));
  if (root === '') return [];
  const names = paths.filter((path) => path.startsWith(`${root}.`)).map((path) => path.slice(root.length + 1));
  return [...new Set(names.filter((name) => name.includes('.')).map((name) => name.slice(0, name.indexOf('.'))))].slice(
    0,
    6,
  );
}

function lastWord(path: {
  readonly segments: readonly { readonly span: Change['from']['span'] }[];
  readonly span: Change['from']['span'];
}) {
  return path.segments[path.segments.length - 1]?.span ?? path.span;
}
