/** From syntax to values and words, each with its place: what every kind of statement is made of. */
import type * as Tree from '../../grammar/generated/ast.js';
import type { Place, TextProblem } from '../../grammar/problem.js';
import * as Facts from '../../facts/facts.js';
import { LIMITS } from '../../facts/limits.js';
import { type Wording } from '../../wording/wording.js';
import { readDate } from './written-date.js';
import { doubtfulRange } from './written-range.js';
import { type WrittenPart, quantityOf } from './written-quantity.js';

/** A tree node that stands for one word. */
type WordNode = Tree.Word | Tree.Path | Tree.Text | Tree.Day | Tree.Count | Tree.Unit;
type Node = Tree.Statement | Tree.Value | Tree.Values | Tree.Quantity | Tree.Part | Tree.Lines | WordNode;

export class ValueReader {
  constructor(
    protected readonly problems: Facts.Problem[],
    protected readonly firstLine: number,
    protected readonly wording: Wording,
  ) {}

  // ---- values -------------------------------------------------------------------------------------------------------

  protected values(node: Tree.Values): Facts.Value {
    const [only] = node.items;
    if (only !== undefined && node.items.length === 1) return this.value(only);
    const last = node.items[node.items.length - 1];
    const unit = last?.$type === 'Quantity' ? this.unitOf(last) : undefined;
    return { kind: 'list', items: node.items.map((item) => this.value(item, unit)), span: this.span(node) };
  }

  protected value(node: Tree.Value, unitBeyond?: string): Facts.Value {
    const span = this.span(node);
    switch (node.$type) {
      case 'Text':
        return this.text(node);
      case 'Day':
        return this.date(node);
      case 'Path':
        return node.text === 'unknown' ? { kind: 'unknown', span } : { kind: 'name', name: node.text, span };
      case 'Quantity':
        return this.quantity(node, unitBeyond);
      case 'Limit': {
        const limit = this.quantity(node.quantity);
        if (limit.kind !== 'quantity') return this.unreadable(node);
        return { kind: 'range', ...(node.side === 'below' ? { high: limit } : { low: limit }), span };
      }
      case 'Between': {
        const [low, high] = this.quantities([node.low, node.high]);
        if (low?.kind !== 'quantity' || high?.kind !== 'quantity') return this.unreadable(node);
        const doubt = doubtfulRange(this.written(node), this.wording);
        if (!doubt) return { kind: 'range', low, high, span };
        this.problem('bad-number', doubt.message, span, doubt.suggestions);
        return this.unreadable(node);
      }
      case 'Size': {
        const parts = this.quantities(node.parts).filter((part) => part.kind === 'quantity');
        return parts.length === node.parts.length ? { kind: 'size', parts, span } : this.unreadable(node);
      }
      case 'Point': {
        const [station, offset] = this.quantities([node.station, node.offset]);
        if (station?.kind !== 'quantity' || offset?.kind !== 'quantity') return this.unreadable(node);
        return { kind: 'point', station, offset, span };
      }
    }
  }

  /** Quantities that belong together: those without a unit take that of the last. */
  protected quantities(nodes: readonly Tree.Quantity[]): (Facts.QuantityValue | Facts.UnreadableValue)[] {
    const last = nodes[nodes.length - 1];
    const unit = last ? this.unitOf(last) : undefined;
    return nodes.map((node) => this.quantity(node, unit));
  }

  protected quantity(node: Tree.Quantity, unitBeyond?: string): Facts.QuantityValue | Facts.UnreadableValue {
    const span = this.span(node);
    const parts = node.parts.map((part) => this.part(part));
    const tolerance = node.tolerance ? { tolerance: this.part(node.tolerance) } : {};
    const reading = quantityOf({ parts, ...tolerance, span }, unitBeyond, this.wording);
    if ('problem' in reading) {
      const { code, message, suggestions } = reading.problem;
      // A unit shared by several numbers is told off once.
      if (!(code === 'unknown-unit' && parts[0]?.unit === undefined)) {
        this.problem(code, message, reading.problem.span, suggestions);
      }
      return this.unreadable(node);
    }
    const unitSpan = parts[0]?.unit ? { unitSpan: parts[0].unit.span } : {};
    return { kind: 'quantity', quantity: reading.quantity, written: this.written(node), span, ...unitSpan };
  }

  protected part({ number, unit }: Tree.Part): WrittenPart {
    if (unit === undefined) return { number: this.word(number) };
    // The full stop of an abbreviation, `5 in.`, is no part of the unit.
    return { number: this.word(number), unit: { text: unit.text.replace(/\.$/, ''), span: this.span(unit) } };
  }

  protected unitOf(node: Tree.Quantity): string | undefined {
    return node.parts[node.parts.length - 1]?.unit?.text.replace(/\.$/, '');
  }

  protected date(node: Tree.Day): Facts.DateValue | Facts.UnreadableValue {
    const reading = readDate(node.text, this.wording);
    const span = this.span(node);
    if (reading.ok) return { kind: 'date', date: reading.date, span };
    this.problem('bad-date', reading.message, span, reading.suggestions);
    return this.unreadable(node);
  }

  protected text(node: Tree.Text): Facts.TextValue {
    const span = this.span(node);
    return { kind: 'text', text: this.noLonger(plainText(node.text), LIMITS.textCharacters, span), span };
  }

  /** The text, or as much of it as is read, with a problem. */
  protected noLonger(text: string, most: number, span: Facts.Span): string {
    if (text.length <= most) return text;
    this.problem(
      'too-long',
      this.wording.say`This has ${text.length} characters; more than ${most} are not read.`,
      span,
    );
    return `${text.slice(0, most)}…`;
  }

  protected unreadable(node: Node): Facts.UnreadableValue {
    return { kind: 'unreadable', written: this.written(node), span: this.span(node) };
  }

  // ---- words and places ---------------------------------------------------------------------------------------------

  protected path(node: Tree.Path, prefix: string): Facts.Path {
    const span = this.span(node);
    const most = Math.max(LIMITS.pathCharacters - prefix.length, 1);
    return pathOf(this.noLonger(node.text, most, span), span, prefix);
  }

  protected word(node: WordNode): Facts.Word {
    const span = this.span(node);
    return { text: this.noLonger(node.text, LIMITS.pathCharacters, span), span };
  }

  protected written(node: Node): string {
    return node.$cstNode?.text ?? '';
  }

  protected span(node: Node): Facts.Span {
    return node.$cstNode
      ? spanFrom(node.$cstNode.range, this.firstLine)
      : { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
  }

  protected problem(
    code: Facts.ProblemCode,
    message: string,
    span: Facts.Span,
    suggestions: readonly string[] = [],
  ): void {
    this.problems.push({ code, message, span, suggestions });
  }
}

export function problemAt({ code, message, place, suggestions }: TextProblem, firstLine: number): Facts.Problem {
  return { code, message, span: spanFrom(place, firstLine), suggestions };
}

export function spanFrom({ start, end }: Place, firstLine: number): Facts.Span {
  return {
    start: { line: start.line - firstLine, character: start.character },
    end: { line: end.line - firstLine, character: end.character },
  };
}

/** A path written in one piece: its words stand side by side, a dot between them. */
export function pathOf(written: string, span: Facts.Span, prefix: string): Facts.Path {
  let character = span.start.character;
  const { line } = span.start;
  const segments = written.split('.').map((text) => {
    const segment = { text, span: { start: { line, character }, end: { line, character: character + text.length } } };
    character += text.length + 1;
    return segment;
  });
  return { text: prefix === '' ? written : `${prefix}.${written}`, segments, span };
}

/** What stands between the quotes. `\"` is a quote and `\\` a backslash; an unclosed text ends with its line. */
export function plainText(written: string): string {
  const closed = written.length > 1 && (written.endsWith('"') || written.endsWith('\u201D'));
  const inner = closed ? written.slice(1, -1) : written.slice(1).trimEnd();
  return inner.replace(/\\(["\\])/g, '$1');
}
