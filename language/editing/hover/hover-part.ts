/** Hover on a part: what it is, and what is computed of it. */
import { shown } from '../../checks/phrases.js';
import { concretePaths } from '../../recipes/evaluation/effects.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Desk } from '../../checks/desk.js';
import { code, paragraphs, plain, table } from '../markdown.js';
import type { Subject } from '../../reports/subject.js';

const SHOWN = 8;

export function partHover(desk: Desk, subject: Subject, path: string): string | undefined {
  const { text } = desk.workshop.wording;
  const part = desk.workshop.catalogue.part(path);
  const { evaluation } = subject;
  const computed = evaluation ? computedOf(evaluation, path) : [];
  if (!part && computed.length === 0) return undefined;
  return paragraphs(
    part ? `**${plain(path)}**: ${text(part.sentence)}` : `**${plain(path)}**`,
    computed.length > 0 ? table([text('computed'), text('value')], computed) : undefined,
    part ? table([text('in it'), text('takes')], inside(desk, subject, path)) : undefined,
  );
}

/** Every property and part there may be, not a first few. */
function inside({ workshop: { catalogue } }: Desk, { definition }: Subject, path: string): string[][] {
  const { parts, properties } = catalogue.children(path, definition.kind);
  const last = (whole: string) => plain(whole.slice(whole.lastIndexOf('.') + 1));
  return [
    ...properties.map((one) => [last(one.path), one.choices ? one.choices.map(code).join(' ') : plain(one.unit ?? '')]),
    ...parts.map((one) => [
      one.members ? plain(one.members.slice(0, MEMBERS_SHOWN).join(', ')) : last(one.path),
      '{ … }',
    ]),
  ];
}

const MEMBERS_SHOWN = 6;

/** What belongs to the part itself; each member of it has a hover of its own. */
function computedOf(evaluation: Evaluation, path: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  const own = evaluation.derivations.all.filter((quantity) => isOwn(quantity.path, path));
  // What is heard or felt first.
  const ordered = [...own.filter(({ voicing }) => voicing), ...own.filter(({ voicing }) => !voicing)];
  for (const each of concretePaths(ordered, evaluation)) {
    if (rows.length === SHOWN || !each.startsWith(`${path}.`)) continue;
    const derived = evaluation.derived(each);
    if (!derived?.known) continue;
    rows.push([plain(each), shown(derived.si, derived.quantity)]);
  }
  return rows;
}

function isOwn(pattern: string, path: string): boolean {
  const words = path.split('.');
  const wanted = pattern.split('.');
  if (wanted.length <= words.length || wanted.slice(words.length).includes('*')) return false;
  return words.every((word, i) => wanted[i] === '*' || wanted[i] === word);
}
