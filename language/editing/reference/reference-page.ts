/** The language reference: every word of every table on one page, in Markdown. */
import type { Workshop } from '../../recipes/workshop.js';
import { code, plain } from '../markdown.js';
import { type Entry, SECTIONS, type Section } from './entry.js';
import { wordEntries } from './words.js';

export function referencePage(workshop: Workshop): string {
  const { text, say } = workshop.wording;
  const all = wordEntries(workshop);
  const sections = Object.keys(SECTIONS) as Section[];
  const parts = sections.map((section) => {
    const entries = all.filter((entry) => entry.section === section);
    return [`## ${text(SECTIONS[section])}`, '', ...entries.flatMap((entry) => lines(entry, workshop)), ''].join('\n');
  });
  return [
    `# ${text('The words of Bookmatch')}`,
    '',
    text('Made from the tables the program reads; `npm run generate:reference` writes it anew.'),
    say`${all.length} entries: ${sections.map((section) => text(SECTIONS[section])).join(', ')}.`,
    '',
    ...parts,
  ].join('\n');
}

function lines({ word, sentence, takes, more, also, example }: Entry, { wording: { say } }: Workshop): string[] {
  const head = [`**${code(word)}**`, ...(takes === '' ? [] : [code(takes)])].join(' ');
  const others = also.length === 0 ? [] : [say`Also: ${also.map(plain).join(', ')}.`];
  return [
    `- ${head}: ${[sentence, ...more].map(plain).join(' ')} ${others.join('')}`.trimEnd(),
    ...(example === undefined ? [] : [`  ${code(example)}`]),
  ];
}
