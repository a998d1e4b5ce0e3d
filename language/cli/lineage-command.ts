/** `bookmatch lineage`: recipes by model as a tree, with the changes counted and the builds. */
import { familiesOf, type FamilyMember } from './family.js';
import { forJson } from './border.js';
import { EXIT, type Io } from './io.js';
import { noSuchName } from './meant-instrument.js';
import { Opener } from './open-shop.js';
import type { PlaceOptions } from './show-command.js';
import { table } from './text/columns.js';
import { type Style, styleFor } from './text/style.js';
import { type Wording } from '../wording/wording.js';

export async function lineage(name: string | undefined, options: PlaceOptions, io: Io): Promise<number> {
  const shop = await new Opener(io).open(options.in);
  const families = familiesOf(shop.workshop, name);
  if (families.length === 0 && name !== undefined) throw noSuchName(name, ['recipe', 'model'], shop, io);
  if (options.format === 'json') io.write(forJson({ lineage: families }));
  else io.print(asText(families, styleFor(io)));
  return EXIT.fine;
}

function asText(families: readonly FamilyMember[], style: Style): string {
  if (families.length === 0) return `${style.wording.text('There are no models or recipes here.')}\n`;
  const rows = families.flatMap((family) => rowsOf(family, '', '', style));
  return `${table(rows, { indent: 0 }).join('\n')}\n`;
}

/** Steps to the right only where a line forks: whoever alone goes on from another stands below it. */
function rowsOf(member: FamilyMember, lead: string, below: string, style: Style): ReturnType<typeof rowOf>[] {
  const { kind, children } = member;
  const [only] = children;
  if (kind === 'recipe' && only && children.length === 1) {
    return [rowOf(member, lead, style), ...rowsOf(only, below, below, style)];
  }
  const last = children.length - 1;
  const inner = children.flatMap((child, i) =>
    rowsOf(child, `${below}${i === last ? '└ ' : '├ '}`, `${below}${i === last ? '  ' : '│ '}`, style),
  );
  return [rowOf(member, lead, style), ...inner];
}

function rowOf({ name, kind, changes, builds }: FamilyMember, lead: string, style: Style) {
  const { say, text } = style.wording;
  const what =
    kind === 'model'
      ? text('model')
      : changes === undefined
        ? text('base recipe')
        : changesInWords(changes, style.wording);
  return [lead + name, { text: what, paint: style.dim }, builds.length > 0 ? say`built: ${builds.join(', ')}` : ''];
}

function changesInWords(changes: number, { say }: Wording): string {
  if (changes === 0) return say`no change counted`;
  return changes === 1 ? say`1 change counted` : say`${changes} changes counted`;
}
