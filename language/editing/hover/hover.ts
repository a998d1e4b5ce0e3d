/** Hover: what is known of the word at a place, as Markdown. Each kind of word is answered in a file of its own. */
import type { Definition, DefinitionKind, Position, Span, Value } from '../../facts/facts.js';
import { kindsNamedBy } from '../../recipes/shelf/mentions.js';
import { writeValue } from '../../checks/phrases.js';
import { type Desk, shifted } from '../../checks/desk.js';
import { codeHover } from './hover-code.js';
import { definitionHover } from './hover-definition.js';
import { keywordHover } from './hover-keyword.js';
import { partHover } from './hover-part.js';
import { inBoth, propertyHover } from './hover-property.js';
import { quantityHover } from './hover-quantity.js';
import { unitHover } from './hover-unit.js';
import { woodHover } from './hover-wood.js';
import { photographsHover } from './hover-photo.js';
import { paragraphs, plain } from '../markdown.js';
import { namedAt } from '../navigation/references.js';
import { type Spot, spotAt } from '../navigation/spot.js';
import { propertyAt, subjectOf } from '../../reports/subject.js';

export interface Hover {
  readonly markdown: string;
  readonly range: Span;
}

export function hoverAt(desk: Desk, uri: string, position: Position): Hover | undefined {
  const spot = spotAt(desk, uri, position);
  if (!spot) return undefined;
  const markdown = answer(desk, spot);
  if (markdown !== undefined && markdown !== '') return { markdown, range: spot.range };
  const inside = { line: position.line - spot.line, character: position.character };
  const keyword = keywordHover(spot.definition, spot.statements.at(-1), inside, desk.workshop.wording);
  return keyword && { markdown: keyword.markdown, range: shifted(keyword.span, spot.line) };
}

function answer(desk: Desk, spot: Spot): string | undefined {
  const { what } = spot;
  switch (what.kind) {
    case 'name':
    case 'target':
    case 'package':
      return nameHover(desk, spot);
    case 'path':
      return what.path === what.whole ? pathHover(desk, spot, what.whole) : partHoverAt(desk, spot, what.path);
    case 'value':
      return valueHover(desk, spot, what.value, what.path);
    case 'unit':
      return unitHover(what.value, desk.workshop.wording);
    case 'code':
      return codeHover(what.word.text, desk.workshop.wording);
    case 'nothing':
      return undefined;
  }
}

function nameHover(desk: Desk, spot: Spot): string | undefined {
  const named = namedAt(desk, spot);
  const definition = named && (spot.what.kind === 'name' ? spot.definition : desk.shelf.find(named.kind, named.name));
  return definition && hoverOf(desk, definition);
}

function hoverOf(desk: Desk, definition: Definition): string {
  return definition.kind === 'wood' || definition.kind === 'species'
    ? woodHover(desk, definition)
    : definitionHover(desk, definition);
}

function partHoverAt(desk: Desk, spot: Spot, path: string): string | undefined {
  return partHover(desk, subjectOf(desk, spot.definition), path);
}

function pathHover(desk: Desk, spot: Spot, path: string): string | undefined {
  const subject = subjectOf(desk, spot.definition);
  const statement = spot.statements.at(-1);
  const property = propertyAt(desk, spot.definition, path);
  const uri = path === 'photo' ? desk.shelf.placement(spot.definition)?.uri : undefined;
  const photographs = uri === undefined ? undefined : photographsHover(spot, uri);
  if (photographs) return photographs;
  const quantity = desk.workshop.derivations(spot.definition.kind).find(path)?.quantity;
  const isHolding =
    statement?.kind === 'hold' &&
    [statement.by, ...(statement.along ?? [])].some((by) => by !== undefined && isOn(spot, by.span));
  const asked = statement?.kind === 'expect' || (statement?.kind === 'hold' && !isHolding);
  if (quantity && (asked || !property)) return quantityHover(desk, subject, path, quantity);
  if (property) return propertyHover(desk, subject, path, property, saidApart(spot));
  return partHover(desk, subject, path);
}

/** The value of a reading or of a client's request: it stands beside what is in force, not in its place. */
function saidApart({ statements }: Spot): Value | undefined {
  const statement = statements.at(-1);
  const apart = statements.some(({ kind }) => kind === 'reading' || kind === 'rework' || kind === 'request');
  return apart && statement?.kind === 'property' ? statement.value : undefined;
}

function isOn(spot: Spot, span: Span): boolean {
  const here = shifted(span, spot.line);
  return here.start.line === spot.range.start.line && here.start.character <= spot.range.start.character;
}

function valueHover(desk: Desk, spot: Spot, value: Value, path: string): string | undefined {
  if (value.kind === 'unknown' || value.kind === 'unreadable') return undefined;
  if (value.kind === 'name') {
    const named = namedValue(desk, spot, value.name, path);
    if (named) return named;
  }
  const statement = spot.statements.at(-1);
  const isStart = statement?.kind === 'change' && statement.old === value;
  const about = pathHover(desk, spot, path);
  const own = statement?.kind === 'property' || isNew(spot, value) ? undefined : `**${inBoth(value)}**`;
  return paragraphs(isStart ? startLine(desk, spot, value, path) : own, about);
}

function isNew(spot: Spot, value: Value): boolean {
  const statement = spot.statements.at(-1);
  return statement?.kind === 'change' && statement.new === value;
}

/** The old side of a change, beside what the parent really says. */
function startLine(desk: Desk, spot: Spot, value: Value, path: string): string {
  const start = desk.workshop.startOf(spot.definition.name.text);
  const held = start?.values.get(path);
  const { say } = desk.workshop.wording;
  if (!start || !held) return say`The change starts from **${inBoth(value)}**.`;
  const has = plain(writeValue(held.value));
  return say`The change starts from **${inBoth(value)}**; ${plain(start.name)} has ${has}.`;
}

function namedValue(desk: Desk, spot: Spot, name: string, path: string): string | undefined {
  const kinds: readonly DefinitionKind[] = kindsNamedBy(path, spot.definition, desk.workshop.catalogue);
  const definition = kinds.map((kind) => desk.shelf.find(kind, name)).find((found) => found !== undefined);
  if (!definition) return undefined;
  if (definition.kind !== 'wood' && definition.kind !== 'species') return definitionHover(desk, definition);
  return woodHover(desk, definition, subjectOf(desk, spot.definition), path);
}
