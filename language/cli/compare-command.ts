/** `bookmatch compare`: two recipes, builds or models side by side. */
import { compare as compareSides, type Comparison, type Side } from '../recipes/instrument/comparison.js';
import { sideOf } from '../recipes/instrument/sides.js';
import { EXIT, type Io } from './io.js';
import { comparisonAsJson } from './json/comparison-json.js';
import { noSuchName } from './meant-instrument.js';
import { Opener, type Shop } from './open-shop.js';
import type { PlaceOptions } from './show-command.js';
import { comparisonAsText } from './text/comparison-text.js';
import { styleFor } from './text/style.js';

const COMPARED = ['recipe', 'build', 'model'] as const;

export interface CompareOptions extends PlaceOptions {
  /** What is too small to tell as well. */
  readonly all?: boolean;
}

export async function compare(a: string, b: string, options: CompareOptions, io: Io): Promise<number> {
  const opener = new Opener(io);
  const [asked, beside] = [namedAt(a), namedAt(b)];
  const shops = new Map<string | undefined, Shop>();
  for (const { revision } of [asked, beside]) {
    if (shops.has(revision)) continue;
    shops.set(
      revision,
      revision === undefined ? await opener.open(options.in) : await opener.openAt(options.in, revision),
    );
  }
  const [one, other] = [shops.get(asked.revision)!, shops.get(beside.revision)!];
  if (!sideOf(one.workshop, asked.name)) throw noSuchName(asked.name, COMPARED, one, io);
  if (!sideOf(other.workshop, beside.name)) throw noSuchName(beside.name, COMPARED, other, io);
  const comparison = io.busy(io.wording.text('Computing both'), () =>
    one === other ? one.workshop.compare(asked.name, beside.name) : compareAcross(one, asked, other, beside),
  );
  if (!comparison) throw noSuchName(b, COMPARED, other, io);
  const relation =
    one !== other && asked.name === beside.name ? io.wording.text('The same one at two times.') : undefined;
  if (options.format === 'json') io.write(comparisonAsJson(comparison));
  else io.print(comparisonAsText(comparison, styleFor(io), { all: options.all, relation }));
  return EXIT.fine;
}

/** `vennick-38@HEAD~3`: an instrument as it stood at a commit. A name itself has no such sign in it. */
interface NamedAt {
  readonly name: string;
  readonly revision?: string;
}

function namedAt(asked: string): NamedAt {
  const at = asked.indexOf('@');
  return at < 0 ? { name: asked } : { name: asked.slice(0, at), revision: asked.slice(at + 1) };
}

/** Each side is computed with the woods and the shop of its own time. */
function compareAcross(one: Shop, a: NamedAt, other: Shop, b: NamedAt): Comparison | undefined {
  const [x, y] = [sideOf(one.workshop, a.name), sideOf(other.workshop, b.name)];
  if (!x || !y) return undefined;
  return compareSides(titled(x, a), titled(y, b), {
    classOf: other.workshop.classOf,
    evaluate: (values, near) => (near === 'a' ? one : other).workshop.evaluateInFull(values),
  });
}

function titled(side: Side, { revision }: NamedAt): Side {
  return revision === undefined ? side : { ...side, name: `${side.name}@${revision}` };
}
