/**
 * From text to recipe facts. With `value-reader.ts` the one place in `recipes/` that knows the grammar.
 *
 * The facts of a definition depend on what `identityOf` tells apart and on nothing else, so a definition that is the same
 * by that keeps its facts object: hand in what the file said before, and only what changed is parsed.
 */
import type * as Tree from '../../grammar/generated/ast.js';
import { type Lexemes, lexemesOf } from '../../grammar/lexemes.js';
import type { BookmatchParser, ParsedDefinition } from '../../grammar/parse.js';
import type { CutDefinition } from '../../grammar/segments.js';
import { relationIndex } from '../../grammar/relation.js';
import { type MarkedWord, markWords } from '../../grammar/word-kinds.js';
import * as Facts from '../../facts/facts.js';
import type { Fault } from './barrier.js';
import { faultProblem } from './fault-problem.js';
import { modeWord } from '../../facts/plate-mode.js';
import { catalogue } from '../../catalogue/catalogue.js';
import { withMeantLines } from './mending/meant-line.js';
import { readHead } from './written-head.js';
import { pathOf, plainText, problemAt, spanFrom, ValueReader } from './value-reader.js';
import { type Wording } from '../../wording/wording.js';

export { createParser, type BookmatchParser } from '../../grammar/parse.js';
export type { Lexeme, Lexemes } from '../../grammar/lexemes.js';
export type { MarkedWord, MarkKind } from '../../grammar/word-kinds.js';

/**
 * What a file says. Never throws: a fault of our own costs the definition it was met in, or, where it is in cutting the text
 * into definitions, the file, and is told there. With `before`, definitions with the same text are taken over from there.
 */
export function readFile(
  uri: string,
  text: string,
  parser: BookmatchParser,
  before?: Facts.FileFacts,
  log: (fault: Fault) => void = () => undefined,
): Facts.FileFacts {
  const note = (doing: string, error: unknown, span: Facts.Span): Facts.Problem => {
    const fault = { doing, error };
    log(fault);
    return faultProblem(fault, span, parser.wording);
  };
  try {
    return readDefinitions(uri, text, parser, before, note);
  } catch (error) {
    const start = { line: 0, character: 0 };
    return { uri, definitions: [], problems: [note('reading a file', error, { start, end: start })] };
  }
}

type Note = (doing: string, error: unknown, span: Facts.Span) => Facts.Problem;

function readDefinitions(
  uri: string,
  text: string,
  parser: BookmatchParser,
  before: Facts.FileFacts | undefined,
  note: Note,
): Facts.FileFacts {
  const file = parser.cut(text);
  const known = new Map<string, Facts.Definition[]>();
  for (const { definition } of before?.definitions ?? []) {
    const identity = Facts.identityOf(definition);
    const same = known.get(identity);
    if (same) same.push(definition);
    else known.set(identity, [definition]);
  }
  const definitions = file.definitions.map((cut) => {
    const firstLine = cut.place.start.line;
    const given = cut.problems.map((problem) => problemAt(problem, firstLine));
    const around = given.length === 0 ? '' : JSON.stringify(given);
    const head = spanFrom(cut.head, firstLine);
    const same = known.get(Facts.identityOf({ source: cut.source, around, head }));
    const taken = same?.shift();
    if (taken) return { definition: taken, line: firstLine };
    try {
      const read = new DefinitionReader(parser.read(file, cut), around, parser.wording).definition();
      const problems = withMeantLines(read, (source) => problemsOf(source, parser), catalogue, parser.wording);
      return {
        definition: problems === read.problems ? read : { ...read, problems: [...problems].sort(byPlace) },
        line: firstLine,
      };
    } catch (error) {
      return { definition: unread(cut, around, note('reading', error, head)), line: firstLine };
    }
  });
  return { uri, definitions, problems: file.problems.map((problem) => problemAt(problem, 0)) };
}

/** What is wrong with one definition by itself; undefined where the text is none, or more than one. */
function problemsOf(source: string, parser: BookmatchParser): readonly Facts.Problem[] | undefined {
  const file = parser.cut(source);
  const [only] = file.definitions;
  if (!only || file.definitions.length !== 1 || file.problems.length > 0 || only.place.start.line !== 0)
    return undefined;
  return new DefinitionReader(parser.read(file, only), '', parser.wording).definition().problems;
}

/** What is left of a definition that we failed to read: what it calls itself, so that others still find it. */
function unread(cut: CutDefinition, around: string, fault: Facts.Problem): Facts.Definition {
  const [first = '', second = ''] = cut.tokens.map(({ image }) => image);
  const head = fault.span;
  const kind = Facts.DEFINITION_KINDS.find((each) => each === first) ?? 'recipe';
  return {
    kind,
    name: { text: second === '{' ? '' : second, span: head },
    statements: [],
    problems: [fault],
    source: cut.source,
    around,
    head,
    span: spanFrom(cut.place, cut.place.start.line),
  };
}

/** Every word and sign of a text with what it is, comments included, for colouring. Lines count from the first. */
export function readWords(text: string, parser: BookmatchParser): MarkedWord[] {
  return markWords(parser.parse(text));
}

/** The same words without their meaning, for laying a text out: much cheaper, since nothing is parsed. */
export function readLexemes(text: string, parser: BookmatchParser): Lexemes {
  return lexemesOf(parser.cut(text));
}

class DefinitionReader extends ValueReader {
  constructor(
    private readonly parsed: ParsedDefinition,
    private readonly around: string,
    wording: Wording,
  ) {
    const firstLine = parsed.cut.place.start.line;
    super(
      parsed.problems.map((problem) => problemAt(problem, firstLine)),
      firstLine,
      wording,
    );
  }

  definition(): Facts.Definition {
    const { ast, cut } = this.parsed;
    const kind = ast.kind;
    const headSpan = spanFrom(cut.head, this.firstLine);
    const start = headSpan.start;
    const kindSpan = { start, end: { line: start.line, character: start.character + kind.length } };
    const words = ast.words.map((word) => this.word(word));
    const head = readHead(kind, kindSpan, words, relationIndex(words.map(({ text }) => text)), this.wording);
    if (ast.broken.length === 0) this.problems.push(...head.problems);
    if (ast.body === undefined) {
      const message = this.wording
        .say`What this definition says is missing: after its head a block in { } is expected.`;
      this.problems.push({ code: 'unreadable-line', message, span: headSpan, suggestions: [] });
    }
    const statements = this.statements(ast.body, '');
    return {
      kind,
      name: head.name,
      ...(head.relation ? { relation: head.relation } : {}),
      statements,
      problems: this.problems.sort(byPlace),
      source: cut.source,
      around: this.around,
      head: headSpan,
      span: spanFrom(cut.place, this.firstLine),
    };
  }

  // ---- statements ---------------------------------------------------------------------------------------------------

  private statements(body: Tree.Body | undefined, prefix: string): Facts.Statement[] {
    const read: Facts.Statement[] = [];
    for (const node of body?.statements ?? []) {
      const last = read[read.length - 1];
      const reasonFor = last && node.$type === 'Because' ? this.withReason(last, node) : undefined;
      if (reasonFor) read[read.length - 1] = reasonFor;
      else read.push(...this.statement(node, prefix));
    }
    return read;
  }

  /** `allow 2 because "…"` on one line: the text is the reason of the allowance, not of the recipe. */
  private withReason(
    statement: Facts.Statement,
    because: Tree.Because,
  ): Facts.AllowStatement | Facts.AcceptStatement | undefined {
    if ((statement.kind !== 'allow' && statement.kind !== 'accept') || statement.reason) return undefined;
    const span = this.span(because);
    if (span.start.line !== statement.span.end.line) return undefined;
    return { ...statement, reason: this.text(because.text), span: { start: statement.span.start, end: span.end } };
  }

  private statement(node: Tree.Statement, prefix: string): readonly Facts.Statement[] {
    const span = this.span(node);
    switch (node.$type) {
      case 'Property': {
        const source = node.source ? { source: this.text(node.source) } : {};
        const path = this.path(node.path, prefix);
        return [{ kind: 'property', path, value: this.values(node.value), ...source, span }];
      }
      case 'Mode':
        return [this.mode(node, prefix, span)];
      case 'Block':
        return [this.block(node, prefix, span)];
      case 'Change': {
        const by = node.by ? this.quantity(node.by) : undefined;
        return [
          {
            kind: 'change',
            path: this.path(node.path, prefix),
            ...(node.old ? { old: this.values(node.old) } : {}),
            ...(node.new ? { new: this.values(node.new) } : {}),
            ...(by?.kind === 'quantity' ? { by } : {}),
            span,
          },
        ];
      }
      case 'Add': {
        const path = this.path(node.path, prefix);
        return [{ kind: 'add', path, statements: this.statements(node.body, path.text), span }];
      }
      case 'Drop':
        return [{ kind: 'drop', path: this.path(node.path, prefix), span }];
      case 'Together': {
        const statements = this.statements(node.body, prefix);
        return [{ kind: 'together', reason: this.text(node.reason), statements, span }];
      }
      case 'Rework': {
        const statements = this.statements(node.body, prefix);
        return [{ kind: 'rework', reason: this.text(node.reason), statements, span }];
      }
      case 'Hold':
        return [
          {
            kind: 'hold',
            quantity: this.path(node.quantity, prefix),
            ...(node.at ? { at: this.values(node.at) } : {}),
            ...(node.by ? { by: this.path(node.by, prefix) } : {}),
            ...(node.along.length > 0 ? { along: node.along.map((path) => this.path(path, prefix)) } : {}),
            span,
          },
        ];
      case 'Expect':
        return [{ kind: 'expect', quantity: this.path(node.quantity, prefix), value: this.values(node.value), span }];
      case 'With':
        return [{ kind: 'with', name: this.word(node.name), span }];
      case 'Because':
        return [{ kind: 'because', text: this.text(node.text), span }];
      case 'Note':
        return [{ kind: 'note', text: this.text(node.text), span }];
      case 'Allow':
        return this.counted(node.count, span, (count) => ({ kind: 'allow', count, span }));
      case 'Accept':
        return [{ kind: 'accept', code: this.word(node.code), span }];
      case 'Vary':
        return this.counted(node.count, span, (count) => ({ kind: 'vary', count, span }));
      case 'Reading': {
        const statements = this.statements(node.body, prefix);
        return [{ kind: 'reading', name: this.readingName(node.name), statements, span }];
      }
      case 'Request': {
        const date = this.date(node.date);
        const statements = this.statements(node.body, prefix);
        return [{ kind: 'request', ...(date.kind === 'date' ? { date } : {}), statements, span }];
      }
      case 'Broken':
        return this.broken(node, prefix, span);
    }
  }

  /** A block; one named `together`, `reading`, `rework` or `request` is that statement without its reason, name or date. */
  private block(node: Tree.Block, prefix: string, span: Facts.Span): Facts.Statement {
    const word = node.path.text;
    if (word === 'together' || word === 'reading' || word === 'rework' || word === 'request') {
      return { kind: word, statements: this.statements(node.body, prefix), span };
    }
    const path = this.path(node.path, prefix);
    return { kind: 'block', path, statements: this.statements(node.body, path.text), span };
  }

  /** `mode (2,1): 178 Hz`, in `tap { … }` or beside it: a tap by its path. */
  private mode(node: Tree.Mode, prefix: string, span: Facts.Span): Facts.Statement {
    const lines = [node.lines.along, node.lines.across];
    const bad = lines.find(({ text }) => !/^\d{1,2}$/.test(text));
    if (bad) {
      const message = this.wording
        .say`Nodal lines are counted in whole numbers, those along the grain first: \`mode (2,1): 178 Hz\`.`;
      this.problem('bad-number', message, this.span(bad));
      return { kind: 'unreadable', written: this.written(node), span };
    }
    const [linesAlong, linesAcross] = lines.map(({ text }) => Number(text)) as [number, number];
    const { start } = span;
    const opening = { start, end: { line: start.line, character: start.character + 'mode'.length } };
    const { end } = this.span(node.lines);
    const text = modeWord({ linesAlong, linesAcross });
    const segments =
      prefix === ''
        ? [
            { text: 'tap', span: opening },
            { text, span: { start: opening.end, end } },
          ]
        : [{ text, span: { start, end } }];
    const path = [prefix === '' ? 'tap' : prefix, text].join('.');
    const source = node.source ? { source: this.text(node.source) } : {};
    return {
      kind: 'property',
      path: { text: path, segments, span: { start, end } },
      value: this.values(node.value),
      ...source,
      span,
    };
  }

  private counted(
    node: Tree.Count,
    span: Facts.Span,
    statement: (count: number) => Facts.Statement,
  ): readonly Facts.Statement[] {
    if (/^\d{1,3}$/.test(node.text)) return [statement(Number(node.text))];
    this.problem('bad-number', this.wording.say`A whole number such as 2 is expected here.`, this.span(node));
    return [{ kind: 'unreadable', written: this.written(node), span }];
  }

  private readingName(node: Tree.Word | Tree.Day | Tree.Text): Facts.Word {
    return node.$type === 'Text' ? { text: plainText(node.text), span: this.span(node) } : this.word(node);
  }

  /** Unreadable words; a block that hangs on them is kept when only one word can be its name. */
  private broken(node: Tree.Broken, prefix: string, span: Facts.Span): readonly Facts.Statement[] {
    const words = [...node.text.matchAll(/[\p{L}\p{N}_.-]+/gu)];
    const [only] = words;
    if (node.body === undefined) return [{ kind: 'unreadable', written: node.text, span }];
    if (only !== undefined && words.length === 1) {
      const from = { line: span.start.line, character: span.start.character + only.index };
      const to = { line: from.line, character: from.character + only[0].length };
      const path = pathOf(only[0], { start: from, end: to }, prefix);
      return [{ kind: 'block', path, statements: this.statements(node.body, path.text), span }];
    }
    // Read for what is wrong inside; without the block's name the rest has no meaning.
    this.statements(node.body, prefix);
    return [{ kind: 'unreadable', written: node.text, span }];
  }
}

function byPlace({ span: { start: a } }: Facts.Problem, { span: { start: b } }: Facts.Problem): number {
  return a.line - b.line || a.character - b.character;
}
