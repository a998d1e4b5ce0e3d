/** One thing said twice in a definition: a value, or the name of a reading. */
import type { Definition } from '../../facts/facts.js';
import type { Written } from '../../recipes/instrument/written.js';
import { type Wording } from '../../wording/wording.js';
import { remove, replace } from '../mending.js';
import { writeValue } from '../phrases.js';
import { EVERY_KIND, type Report, type Rule } from '../rule.js';

export const SET_TWICE: Rule = {
  code: 'set-twice',
  severity: 'warning',
  title: 'One value given twice in a definition',
  reason: 'The last one counts and the first is forgotten. One of the two is not what was meant.',
  bad: `model tarn {
  top.thickness: 2.8 mm
  top { thickness: 2.7 mm }
}`,
  good: `model tarn {
  top.thickness: 2.7 mm
}`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    readingsTwice(definition, report, workshop.wording);
    const seen = new Map<string, Written>();
    for (const written of workshop.written(definition)) {
      // What reaches nothing has a finding of its own.
      if (written.role !== 'value' || !(written.property || written.derived)) continue;
      const key = written.occasion
        ? `${written.occasion.span.start.line}:${written.occasion.span.start.character} ${written.canonical}`
        : written.canonical;
      const first = seen.get(key);
      seen.set(key, written);
      if (!first) continue;
      const value = first.values[first.values.length - 1]?.value;
      report(
        written.path.span,
        value
          ? say`${written.canonical} is given twice here. This one counts, not ${writeValue(value)}.`
          : say`${written.canonical} is given twice here. This one counts.`,
        {
          related: [{ place: { definition, span: first.path.span }, message: say`given here first` }],
          fixes: [{ title: say`Take the first one out`, edits: [remove(definition, first.statement)] }],
        },
      );
    }
  },
};

/** Two readings of one name, of which nobody could say which is meant. */
function readingsTwice(definition: Definition, report: Report, { say }: Wording): void {
  const readings = definition.statements.filter((one) => one.kind === 'reading');
  const names = new Set<string>();
  for (const { name } of readings) {
    if (!name || name.text === '') continue;
    if (names.has(name.text)) {
      const free = nextFree(name.text, new Set(readings.map((one) => one.name?.text ?? '')));
      report(
        name.span,
        say`Another reading of this build is called ${name.text} too. Give this one a name of its own.`,
        {
          fixes: [{ title: say`Write ${free}`, edits: [replace(definition, name.span, free)], preferred: true }],
        },
      );
    }
    names.add(name.text);
  }
}

/** `day-2` for a second `day-1`. */
function nextFree(name: string, taken: ReadonlySet<string>): string {
  const [, stem = name, number = '1'] = /^(.*?)-?(\d{1,6})?$/.exec(name) ?? [];
  for (let next = Number(number) + 1; ; next++) if (!taken.has(`${stem}-${next}`)) return `${stem}-${next}`;
}
