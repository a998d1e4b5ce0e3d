/**
 * What a line that does not read was meant to be. The rules beside this file each put one habit right; here they are tried on
 * the piece of the line, one after another and then together, and what comes out is read: only a line that reads, in a
 * definition with fewer faults than before, is told as what was meant.
 */
import type { Catalogue } from '../../../catalogue/catalogue.js';
import type { Definition, DefinitionKind, Problem, ProblemCode, Span } from '../../../facts/facts.js';
import { type Wording, sentences } from '../../../wording/wording.js';
import { CHANGE_SLIPS } from './changes.js';
import { HEAD_SLIPS } from './heads.js';
import { type Stretch, blocksAround, blotted, pieceAt } from './place-in-text.js';
import { PLAIN_SIGN_SLIPS, SIGN_SLIPS } from './signs.js';
import type { Piece, Slip } from './slip.js';
import { VALUE_SLIPS } from './values.js';
import { WORD_SLIPS } from './words.js';

/** Rules that know what was meant better than what is said of a line anyway. */
const SURE: readonly Slip[] = [...HEAD_SLIPS, ...WORD_SLIPS, ...CHANGE_SLIPS, ...PLAIN_SIGN_SLIPS, ...VALUE_SLIPS];
const ALL: readonly Slip[] = [...SURE, ...SIGN_SLIPS];

/** So many rules are tried one upon the other. */
const DEEPEST = 2;
/** So many lines of a definition are looked at; more at once are no slips. */
const MOST_LINES = 6;
const LONGEST_LINE = 300;
/** So many letters are read afresh in all, that no key waits for it; and the definition itself a few times at least. */
const MOST_LETTERS = 30_000;
const LEAST_READS = 4;

const MENDABLE: ReadonlySet<ProblemCode> = new Set([
  'unreadable-line',
  'bad-number',
  'bad-date',
  'unknown-unit',
  'unclosed-text',
]);

/** Problems of a text, read afresh; undefined where it is not one definition. */
export type Reads = (source: string) => readonly Problem[] | undefined;

/** The definition's problems, each line that can be put right told once, with the line as it was meant. */
export function withMeantLines(
  definition: Definition,
  reads: Reads,
  catalogue: Catalogue,
  wording: Wording,
): readonly Problem[] {
  let problems = definition.problems;
  const lines = [...new Set(problems.filter(({ code }) => MENDABLE.has(code)).map(({ span }) => span.start.line))];
  // A head without a block is most often one that is still being written.
  if (lines.length === 0 || lines.length > MOST_LINES || !definition.source.includes('{')) return problems;
  let left = Math.max(MOST_LETTERS, LEAST_READS * definition.source.length);
  const sparing: Reads = (source) => {
    left -= source.length;
    return left > 0 ? reads(source) : undefined;
  };
  const text = new Text(definition.source, definition.span.start.character);
  for (const line of lines) {
    const own = problems.filter(({ span }) => span.start.line === line);
    const told = meantIn(own, text, {
      definition,
      reads: sparing,
      catalogue,
      wording,
      before: definition.problems.length,
    });
    if (told) problems = [...problems.filter((one) => !told.instead.includes(one)), ...told.problems];
  }
  return problems;
}

interface Around {
  readonly definition: Pick<Definition, 'kind'>;
  readonly reads: Reads;
  readonly catalogue: Catalogue;
  readonly wording: Wording;
  /** How many problems there are as it stands. */
  readonly before: number;
}

interface Told {
  readonly instead: readonly Problem[];
  readonly problems: readonly Problem[];
}

function meantIn(own: readonly Problem[], text: Text, around: Around): Told | undefined {
  const [first] = own.filter(({ code }) => MENDABLE.has(code));
  if (!first) return undefined;
  // One value that cannot be read, with what to write instead.
  if (own.length === 1 && first.code !== 'unreadable-line' && keeps(own, text, around)) return undefined;
  const at = text.offset(first.span.start);
  const stretches: { stretch: Stretch; isHead: boolean }[] = [{ stretch: pieceAt(text.plain, at), isHead: false }];
  if (first.span.start.line === 0) stretches.unshift({ stretch: text.line(0), isHead: true });
  else if (/[([]/.test(text.slice(stretches[0]!.stretch)))
    stretches.push({ stretch: text.line(first.span.start.line), isHead: false });
  for (const { stretch, isHead } of stretches) {
    const found = search(stretch, isHead, text, around);
    if (!found) continue;
    if (!SURE.includes(found.slip) && keeps(own, text, around)) return undefined;
    const { why, code } = found.slip;
    const { say } = around.wording;
    const shown = shownPart(text.slice(stretch), found.line, isHead);
    const question = say`Did you mean \`${short(shown.text)}\`?`;
    const message = sentences(why ? why(around.wording) : first.message, question);
    const span = { start: text.position(stretch.from), end: text.position(stretch.from + shown.length) };
    const instead = own.filter((one) => overlap(one.span, { start: span.start, end: text.position(stretch.to) }));
    return { instead, problems: [{ code, message, span, suggestions: [shown.text] }] };
  }
  const isDate = first.code !== 'bad-date' && pieceOfLine(first, text, around)?.kind === 'date';
  if (isDate) {
    const message = around.wording.say`Write a date as 2026-03-14.`;
    return { instead: own, problems: [{ code: 'bad-date', message, span: first.span, suggestions: [] }] };
  }
  return helpful(own, text, around);
}

/** The property the line is about. */
function pieceOfLine({ span }: Problem, text: Text, { definition, catalogue }: Around) {
  const stretch = pieceAt(text.plain, text.offset(span.start));
  const path = /^(?:change\s+)?(\p{L}[\p{L}\d.-]*):/u.exec(text.slice(stretch))?.[1];
  const blocks = blocksAround(text.plain, stretch.from);
  return path === undefined ? undefined : pieceOf('', definition.kind, blocks, false, catalogue).property(path);
}

/** Only what makes fewer faults is offered. */
function helpful(own: readonly Problem[], text: Text, { reads, before }: Around): Told | undefined {
  const problems = own.map((problem) => {
    const suggestions = problem.suggestions.filter((one) => {
      const after = reads(text.with({ from: text.offset(problem.span.start), to: text.offset(problem.span.end) }, one));
      return after === undefined || after.length < before;
    });
    return suggestions.length === problem.suggestions.length ? problem : { ...problem, suggestions };
  });
  return { instead: own, problems };
}

/** Whether what is said of the line anyway offers a way that reads. */
function keeps(own: readonly Problem[], text: Text, { reads, before }: Around): boolean {
  const [only] = own;
  const [suggestion] = only?.suggestions ?? [];
  if (own.length !== 1 || !only || suggestion === undefined) return false;
  const after = reads(text.with({ from: text.offset(only.span.start), to: text.offset(only.span.end) }, suggestion));
  return after !== undefined && after.length < before;
}

interface Found {
  readonly line: string;
  readonly slip: Slip;
}

/** The nearest text that reads: by one rule, then by two. */
function search(stretch: Stretch, isHead: boolean, text: Text, around: Around): Found | undefined {
  const written = text.slice(stretch);
  if (written === '' || written.length > LONGEST_LINE) return undefined;
  const blocks = blocksAround(text.plain, stretch.from);
  const tried = new Set([written]);
  let ways: Found[] = [];
  for (let depth = 0; depth < DEEPEST; depth++) {
    const next: Found[] = [];
    for (const { line, slip: began } of depth === 0 ? [{ line: written, slip: undefined }] : ways) {
      for (const slip of ALL) {
        const mended = mendedBy(slip, line, blocks, isHead, around);
        if (mended === undefined || tried.has(mended)) continue;
        tried.add(mended);
        const found = { line: mended, slip: began ?? slip };
        next.push(found);
        if (around.reads(alone(mended, stretch, isHead, text))?.length !== 0) continue;
        const after = around.reads(text.with(stretch, mended));
        if (
          after !== undefined &&
          !after.some(({ span }) => onLine(span, text, stretch)) &&
          after.length < around.before
        )
          return found;
      }
    }
    ways = next.slice(0, MOST_WAYS);
  }
  return undefined;
}

/** The line in a definition of its own, which is quickly read. */
function alone(mended: string, { to }: Stretch, isHead: boolean, text: Text): string {
  if (isHead) return `${mended.slice(0, Math.max(mended.indexOf('{'), 0))}{ }`;
  const opens = /^\s*\{/.test(text.plain.slice(to, to + 20));
  return `model a {\n  ${mended}${opens ? ' { }' : ''}\n}`;
}

const MOST_WAYS = 4;

function onLine(span: Span, text: Text, { from }: Stretch): boolean {
  return span.start.line === text.position(from).line;
}

function mendedBy(
  slip: Slip,
  line: string,
  blocks: readonly string[],
  isHead: boolean,
  { definition, catalogue }: Around,
): string | undefined {
  const texts: string[] = [];
  const masked = line.replace(/"[^"\n]*"/g, (quoted) => `"§${texts.push(quoted) - 1}"`);
  const mended = slip.mend(pieceOf(masked, definition.kind, blocks, isHead, catalogue));
  return mended?.replace(/"§(\d+)"/g, (_, index: string) => texts[Number(index)] ?? '');
}

function pieceOf(
  text: string,
  kind: DefinitionKind,
  blocks: readonly string[],
  isHead: boolean,
  catalogue: Catalogue,
): Piece {
  const reader = kind === 'recipe' || kind === 'model' ? undefined : kind;
  const within = blocks.join('.');
  const whole = (path: string): string => catalogue.canonical(within === '' ? path : `${within}.${path}`, reader);
  const known = (path: string): boolean => {
    const canonical = whole(path);
    return catalogue.property(canonical, kind) !== undefined || catalogue.part(canonical)?.path === canonical;
  };
  return {
    text,
    kind,
    isHead,
    property: (path) => catalogue.property(whole(path), kind),
    pathOf(words) {
      const parts = words.trim().split(/[\s.,/:;>]+/);
      return [parts.join('.'), parts.join('-')].find(known);
    },
  };
}

/** What of the mended text is written: of a head only what stands before its block. */
function shownPart(written: string, mended: string, isHead: boolean): { text: string; length: number } {
  const [before, after] = [written.indexOf('{'), mended.indexOf('{')];
  const same = isHead && before > 0 && written.slice(before) === mended.slice(after);
  if (!same) return { text: mended, length: written.length };
  return { text: mended.slice(0, after).trimEnd(), length: written.slice(0, before).trimEnd().length };
}

function short(text: string): string {
  return text.length > 80 ? `${text.slice(0, 80)}…` : text;
}

function overlap(a: Span, b: Span): boolean {
  return !isAfter(a.start, b.end) && !isAfter(b.start, a.end);
}

function isAfter(a: Span['start'], b: Span['start']): boolean {
  return a.line > b.line || (a.line === b.line && a.character > b.character);
}

/** A definition's text, in which a place is a line and a column as in its file. */
class Text {
  readonly plain: string;
  private readonly starts: readonly number[];

  constructor(
    private readonly source: string,
    private readonly indent: number,
  ) {
    this.plain = blotted(source);
    this.starts = [0, ...[...source.matchAll(/\r\n|\n|\r/g)].map((end) => end.index + end[0].length)];
  }

  offset({ line, character }: Span['start']): number {
    return (this.starts[line] ?? this.source.length) + character - (line === 0 ? this.indent : 0);
  }

  position(offset: number): Span['start'] {
    let line = this.starts.length - 1;
    while (line > 0 && (this.starts[line] ?? 0) > offset) line--;
    return { line, character: offset - (this.starts[line] ?? 0) + (line === 0 ? this.indent : 0) };
  }

  line(line: number): Stretch {
    const from = this.starts[line] ?? 0;
    const end = (this.starts[line + 1] ?? this.source.length + 1) - 1;
    const written = this.source.slice(from, end);
    return { from: from + written.length - written.trimStart().length, to: from + written.trimEnd().length };
  }

  slice({ from, to }: Stretch): string {
    return this.source.slice(from, to);
  }

  with({ from, to }: Stretch, text: string): string {
    return this.source.slice(0, from) + text + this.source.slice(to);
  }
}
