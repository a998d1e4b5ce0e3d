/** Facts told in one line each, so that a test reads as "this text says that". */
import type { Definition, FileFacts, Problem, QuantityValue, Statement, Value } from '../../language/facts/facts.js';
import { type BookmatchParser, createParser, readFile } from '../../language/recipes/shelf/reader.js';

export interface Reader {
  readonly file: (text: string) => FileFacts;
  /** The statements of a body, told. Fails when the text has a problem. */
  readonly says: (body: string) => string[];
  /** The problems of a body: `line: code (message)`, lines counted from 1 within the body. */
  readonly problems: (body: string) => Problem[];
}

/** One parser for the tests of a file. */
export function reader(parser: BookmatchParser = createParser()): Reader {
  const file = (text: string): FileFacts => readFile('test.bookmatch', text, parser);
  const body = (text: string): Definition => {
    const facts = file(`recipe tarn-2 from tarn-1 {\n${text}\n}`);
    if (facts.definitions.length !== 1) throw new Error(`expected one definition, found ${facts.definitions.length}`);
    return facts.definitions[0]!.definition;
  };
  return {
    file,
    says(text) {
      const definition = body(text);
      if (definition.problems.length > 0) throw new Error(definition.problems.map((one) => one.message).join('; '));
      return definition.statements.map(tellStatement);
    },
    problems: (text) => [...body(text).problems],
  };
}

export function allProblems(facts: FileFacts): Problem[] {
  return [...facts.problems, ...facts.definitions.flatMap(({ definition }) => definition.problems)];
}

export function tellStatement(statement: Statement): string {
  switch (statement.kind) {
    case 'property': {
      const source = statement.source ? ` per "${statement.source.text}"` : '';
      return `${statement.path.text} = ${tell(statement.value)}${source}`;
    }
    case 'block':
      return `${statement.path.text} ${inner(statement.statements)}`;
    case 'change': {
      if (statement.by) return `change ${statement.path.text} by ${tell(statement.by)}`;
      const old = statement.old ? `${tell(statement.old)} ` : '';
      return `change ${statement.path.text} ${old}-> ${statement.new ? tell(statement.new) : 'nothing'}`;
    }
    case 'add':
      return `add ${statement.path.text} ${inner(statement.statements)}`;
    case 'drop':
      return `drop ${statement.path.text}`;
    case 'together':
      return `together ${statement.reason ? `"${statement.reason.text}" ` : ''}${inner(statement.statements)}`;
    case 'hold': {
      const at = statement.at ? ` at ${tell(statement.at)}` : '';
      return `hold ${statement.quantity.text}${at}${statement.by ? ` by ${statement.by.text}` : ''}`;
    }
    case 'expect':
      return `expect ${statement.quantity.text} ${tell(statement.value)}`;
    case 'with':
      return `with ${statement.name.text}`;
    case 'because':
    case 'note':
      return `${statement.kind} "${statement.text.text}"`;
    case 'allow':
      return `allow ${statement.count}${statement.reason ? ` because "${statement.reason.text}"` : ''}`;
    case 'accept':
      return `accept ${statement.code.text}${statement.reason ? ` because "${statement.reason.text}"` : ''}`;
    case 'vary':
      return `vary at most ${statement.count}`;
    case 'reading':
      return `reading ${statement.name ? `${statement.name.text} ` : ''}${inner(statement.statements)}`;
    case 'rework':
      return `rework ${statement.reason ? `"${statement.reason.text}" ` : ''}${inner(statement.statements)}`;
    case 'request':
      return `request ${statement.date ? `${statement.date.date} ` : ''}${inner(statement.statements)}`;
    case 'unreadable':
      return `unreadable: ${statement.written}`;
  }
}

function inner(statements: readonly Statement[]): string {
  return statements.length === 0 ? '{ }' : `{ ${statements.map(tellStatement).join('; ')} }`;
}

/** A value with its SI number and dimension: `0.00285 length`. */
export function tell(value: Value): string {
  switch (value.kind) {
    case 'quantity':
      return quantity(value);
    case 'range':
      if (value.low && value.high) return `${quantity(value.low)} to ${quantity(value.high)}`;
      return value.low ? `above ${quantity(value.low)}` : value.high ? `below ${quantity(value.high)}` : 'no range';
    case 'size':
      return value.parts.map(quantity).join(' x ');
    case 'point':
      return `(${quantity(value.station)}, ${quantity(value.offset)})`;
    case 'text':
      return `"${value.text}"`;
    case 'name':
      return value.name;
    case 'date':
      return `date ${value.date}`;
    case 'unknown':
      return 'unknown!';
    case 'list':
      return `[${value.items.map(tell).join(', ')}]`;
    case 'unreadable':
      return `unreadable: ${value.written}`;
  }
}

function quantity({ quantity: { si, dimension, tolerance } }: QuantityValue): string {
  const number = (x: number): string => String(Number(x.toPrecision(6)));
  return `${number(si)}${dimension.name === 'number' ? '' : ` ${dimension.name}`}${tolerance === undefined ? '' : ` ± ${number(tolerance)}`}`;
}
