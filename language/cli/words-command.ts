/** `bookmatch words`: every word of the language, or what one of them means and what lies inside it. */
import { type Entry, SECTIONS, type Section } from '../editing/reference/entry.js';
import { wordEntries } from '../editing/reference/words.js';
import { findWords } from '../editing/reference/find-words.js';
import { openWorkshop } from '../shop.js';
import { sentences } from '../wording/wording.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { table, wrapped } from './text/columns.js';
import { styleFor } from './text/style.js';

/** Shown where nothing is asked for: what a maker begins with. Parts and units are told by their names, the rest by the page. */
const FIRST: readonly Section[] = ['definition', 'line', 'part'];

export function words(asked: string | undefined, io: Io): number {
  const all = wordEntries(openWorkshop({ wording: io.wording }).workshop);
  const lines = asked === undefined ? overview(all, io) : answer(asked, all, io);
  io.print(`${lines.join('\n').trimEnd()}\n`);
  return EXIT.fine;
}

function overview(all: readonly Entry[], io: Io): readonly string[] {
  const { text } = io.wording;
  const style = styleFor(io);
  const first = FIRST.flatMap((section) => {
    const entries = all.filter((entry) => entry.section === section && !entry.word.includes('.'));
    return [style.bold(text(SECTIONS[section])), ...rows(entries, io), ''];
  });
  const named = (['unit', 'stage', 'species'] as const).flatMap((section) => {
    const list = [...new Set(all.filter((entry) => entry.section === section).map(({ word }) => word))].join(', ');
    return [style.bold(text(SECTIONS[section])), ...indented(list, io), ''];
  });
  const counts = (['property', 'computed', 'choice', 'finding'] as const).map((section) => {
    return `${text(SECTIONS[section])}: ${all.filter((entry) => entry.section === section).length}`;
  });
  return [
    ...first,
    ...named,
    `${counts.join(' · ')}.`,
    ...wrapped(
      text('One word says more: `bookmatch words top`, `bookmatch words dome`, `bookmatch words Decke`.'),
      io.columns,
    ),
  ];
}

function answer(asked: string, all: readonly Entry[], io: Io): readonly string[] {
  const { say, text, or } = io.wording;
  const { entries, inside, mentioned, near } = findWords(asked, all);
  if (entries.length > 0) {
    const [head, ...rest] = entries.map((entry) => whole(entry, io));
    const inner = inside.length === 0 ? [] : [text('In it:'), ...rows(inside, io), ''];
    return [...head!, ...inner, ...rest.flat()];
  }
  if (mentioned.length > 0) return [say`Nothing is called ${asked}; it is spoken of here:`, ...rows(mentioned, io)];
  const hint = near.length > 0 ? say`Did you mean ${or(near)}?` : say`\`bookmatch words\` lists them all.`;
  throw new WrongUse(sentences(say`There is no word ${asked}.`, hint));
}

/** A word with everything that is known of it. */
function whole({ section, word, takes, sentence, more, also, example }: Entry, io: Io): readonly string[] {
  const { text, say } = io.wording;
  const style = styleFor(io);
  const head = [style.bold(word), takes, `(${text(SECTIONS[section])})`].filter((one) => one !== '').join('  ');
  return [
    head,
    ...indented(sentence, io),
    ...more.flatMap((line) => indented(line, io)),
    ...(also.length === 0 ? [] : indented(say`Also: ${also.join(', ')}.`, io)),
    ...(example === undefined ? [] : ['', `    ${example}`]),
    '',
  ];
}

/** One line a word: the word, what it takes, the sentence as far as the terminal is wide. */
function rows(entries: readonly Entry[], io: Io): readonly string[] {
  const wide = Math.max(24, Math.floor(io.columns * 0.28));
  return table(
    entries.flatMap(({ word, takes, sentence }) => {
      const column = short(takes, wide);
      const used = 4 + Math.max(...entries.map((one) => one.word.length + short(one.takes, wide).length)) + 2;
      const [first = '', ...others] = wrapped(sentence, Math.max(30, io.columns - used));
      return [[word, column, first], ...others.map((line) => ['', '', line])];
    }),
  );
}

function short(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1)}…`;
}

function indented(text: string, io: Io): readonly string[] {
  return wrapped(text, Math.max(30, io.columns - 2)).map((line) => `  ${line}`);
}
