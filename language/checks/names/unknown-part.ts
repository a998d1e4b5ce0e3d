/** Parts that a line names or means, and that the instrument does not have. */
import { didYouMean } from '../../quantities/suggest.js';
import type { Definition, Span } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Fix } from '../finding.js';
import { replace } from '../mending.js';
import { suggestion } from '../phrases.js';
import type { Rule } from '../rule.js';
import { sentences } from '../../wording/wording.js';

export const UNKNOWN_PART: Rule = {
  code: 'unknown-part',
  severity: 'warning',
  title: 'A part the instrument does not have',
  reason: 'Some lines say where a thing sits or what it crosses. If that part is not there, the line says nothing.',
  bad: `model tarn {
  bracing {
    x-bass { width: 8 mm  over: x-trebel }
    x-treble { width: 8 mm }
  }
}`,
  good: `model tarn {
  bracing {
    x-bass { width: 8 mm  over: x-treble }
    x-treble { width: 8 mm }
  }
}`,
  of: ['model', 'recipe', 'build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const values = partsOf(definition, workshop);
    if (!values) return;
    const told = new Set<string>();
    for (const { property, canonical, path: at, values: stated } of workshop.written(definition)) {
      const brace = misnamedBrace(canonical, values);
      const word = at.segments.find(({ text }) => text === brace?.name);
      if (brace && word && !told.has(brace.name)) {
        told.add(brace.name);
        report(
          word.span,
          sentences(
            say`This instrument has no brace called ${brace.name}, and one that is laid out from nowhere to nowhere does nothing.`,
            suggestion(brace.meant, workshop.wording),
          ),
          { fixes: writing(brace.meant, word.span, definition, workshop) },
        );
      }
      if (property?.kind !== 'part') continue;
      for (const { as, value } of stated) {
        if (value.kind !== 'name' || as === 'old') continue;
        const siblings = siblingsAt(canonical, values);
        const path = workshop.catalogue.canonical(value.name);
        const known = siblings.includes(value.name) || (workshop.catalogue.part(path) && !path.startsWith('bracing.'));
        if (known || values.has(path) || hasMember(values, path)) continue;
        const near = didYouMean(value.name, [...siblings, ...workshop.catalogue.parts.map((part) => part.path)]);
        report(
          value.span,
          sentences(say`This instrument has no part called ${value.name}.`, suggestion(near, workshop.wording)),
          { fixes: writing(near, value.span, definition, workshop) },
        );
      }
    }
  },
};

/**
 * A slip in a brace's name, which would otherwise pass for a new brace: one that is laid out nowhere, beside braces of
 * nearly the same name that are. `values`: what the instrument has, by path.
 */
export function misnamedBrace(
  path: string,
  values: ReadonlyMap<string, unknown>,
): { readonly name: string; readonly meant: readonly string[] } | undefined {
  const [, root, name] = /^(bracing|back-bracing)\.([^.]+)(?:\.|$)/.exec(path) ?? [];
  if (root === undefined || name === undefined || !hasMember(values, `${root}.${name}`)) return undefined;
  if (isLaidOut(`${root}.${name}`, values)) return undefined;
  const laidOut = siblingsAt(path, values).filter((other) => isLaidOut(`${root}.${other}`, values));
  const meant = didYouMean(name, laidOut);
  return meant.length > 0 ? { name, meant } : undefined;
}

function writing(near: readonly string[], span: Span, definition: Definition, workshop: Workshop): readonly Fix[] {
  return near.map((text, i) => ({
    title: workshop.wording.say`Write ${text}`,
    edits: [replace(definition, span, text)],
    preferred: i === 0,
  }));
}

function partsOf(definition: Definition, workshop: Workshop) {
  const name = definition.name.text;
  if (definition.kind === 'recipe') return workshop.instrument(name)?.values;
  return definition.kind === 'build' ? workshop.build(name)?.values : workshop.model(name)?.values;
}

/** Names beside the member a path passes through: the other braces. */
function siblingsAt(path: string, values: ReadonlyMap<string, unknown>): readonly string[] {
  const root = path.slice(0, path.indexOf('.'));
  const names = new Set<string>();
  for (const other of values.keys()) {
    if (!other.startsWith(`${root}.`)) continue;
    const inside = other.slice(root.length + 1);
    if (inside.includes('.')) names.add(inside.slice(0, inside.indexOf('.')));
  }
  return [...names];
}

function isLaidOut(brace: string, values: ReadonlyMap<string, unknown>): boolean {
  return values.has(`${brace}.from`) || values.has(`${brace}.to`);
}

function hasMember(values: ReadonlyMap<string, unknown>, part: string): boolean {
  for (const path of values.keys()) if (path.startsWith(`${part}.`)) return true;
  return false;
}
