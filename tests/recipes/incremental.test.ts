/** However a shop came to be as it is, it answers as if it had been read afresh. */
import { describe, expect, it } from 'vitest';
import { createParser } from '../../language/grammar/parse.js';
import { openWorkshop, type OpenWorkshop } from '../../language/shop.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { SEEDS } from '../seed.js';
import { madeShop, recipeName, uriOf } from '../scale/made-shop.js';

const parser = createParser();

function open(files: ReadonlyMap<string, string>): OpenWorkshop {
  const shop = openWorkshop({ parser });
  shop.shelf.put(...[...files].map(([uri, text]) => readFile(uri, text, parser)));
  return shop;
}

/** As the session does it: with what the file said before. */
function put({ shelf }: OpenWorkshop, uri: string, text: string): void {
  shelf.put(readFile(uri, text, parser, shelf.file(uri)));
}

function findingsOf({ shelf, checks }: OpenWorkshop): Record<string, readonly string[]> {
  return Object.fromEntries(
    shelf.uris().map((uri) => [
      uri,
      checks.file(uri).map((finding) => {
        const place = 'uri' in finding.place ? 0 : shelf.placement(finding.place.definition)!.line;
        const { start } = finding.place.span;
        return `${place + start.line}:${start.character} ${finding.severity} ${finding.code}: ${finding.message}`;
      }),
    ]),
  );
}

/** A small generator for tests that draw as they go (Lehmer, 1951). */
function dice(seed: number): (sides: number) => number {
  let state = (seed % 2147483646) + 1;
  return (sides) => {
    state = (state * 48271) % 2147483647;
    return state % sides;
  };
}

describe('edits', () => {
  it('of the root of a chain of twelve change the findings of the twelfth', () => {
    const files = new Map(madeShop(1, 12));
    const uri = uriOf('chain-0');
    const last = `change top.thickness: 2.80 mm -> 2.60 mm`;
    files.set(uri, `${files.get(uri)!.trimEnd().slice(0, -1)}  ${last}\n}\n`);
    const shop = open(files);
    const stale = () => shop.checks.file(uri).filter((finding) => finding.code === 'stale-change').length;
    const before = stale();
    put(shop, uri, files.get(uri)!.replace('thickness: 2.80 mm   rig', 'thickness: 2.95 mm   rig'));
    const after = shop.checks.definition(shop.shelf.find('recipe', recipeName(0, 11))!);
    expect(after.map(({ message }) => message).join('\n')).toMatch(/2\.\d+ mm/);
    expect(stale()).toBeGreaterThanOrEqual(before);
    expect(after).not.toEqual([]);
  });

  it('of a wood set, the strings, a rig or the shop reach every recipe that leans on them', () => {
    const files = new Map(madeShop(2, 6));
    const shop = open(files);
    const before = findingsOf(shop);
    const edits: readonly [string, RegExp, string][] = [
      ['woods', /along:\s+10.8 GPa/, 'along: 8.4 GPa'],
      ['shop', /load:\s+2.268 kg/, 'load: 3 kg'],
      ['shop', /gauges:\s+.012 in/, 'gauges: .016 in'],
      ['shop', /thickness:\s+0.05 mm/, 'thickness: 0.01 mm'],
      ['vennick', /width:\s+388 mm/, 'width: 400 mm'],
    ];
    for (const [name, from, to] of edits) {
      const uri = uriOf(name);
      expect(files.get(uri)).toMatch(from);
      files.set(uri, files.get(uri)!.replace(from, to));
      put(shop, uri, files.get(uri)!);
      const fresh = open(files);
      expect(findingsOf(shop), to).toEqual(findingsOf(fresh));
      for (const recipe of shop.shelf.names('recipe')) {
        for (const path of ['top.mass', 'top.sag', 'top.stiffness.along', 'strings.total-tension', 'body.volume']) {
          expect(shop.workshop.evaluation(recipe)!.number(path)).toBe(fresh.workshop.evaluation(recipe)!.number(path));
        }
        expect(shop.workshop.evaluation(recipe)!.uncertainty('top.mass')).toBe(
          fresh.workshop.evaluation(recipe)!.uncertainty('top.mass'),
        );
      }
    }
    expect(findingsOf(shop)).not.toEqual(before);
  });

  it.each(SEEDS)(
    'two hundred of them, at random by %i, leave the findings of a fresh start',
    (seed) => {
      const roll = dice(seed);
      const files = new Map(madeShop(4, 12));
      const shop = open(files);
      const chains = [...files.keys()];
      for (let edit = 0; edit < 200; edit++) {
        const uri = chains[roll(chains.length)]!;
        const text = edited(files.get(uri) ?? madeShop(4, 12).get(uri)!, roll);
        if (roll(25) === 0 && files.size > 5) {
          files.delete(uri);
          shop.shelf.remove(uri);
        } else {
          files.set(uri, text);
          put(shop, uri, text);
        }
        if (edit % 20 === 19) expect(findingsOf(shop), `after edit ${edit}`).toEqual(findingsOf(open(files)));
      }
    },
    120_000,
  );
});

/** One edit as a maker or a cat on the keyboard would make it. */
function edited(text: string, roll: (sides: number) => number): string {
  const lines = text.split('\n');
  const at = roll(lines.length);
  switch (roll(8)) {
    case 0:
      return text.replace(/2\.\d\d mm/, `2.${60 + roll(40)} mm`);
    case 1:
      return [...lines.slice(0, at), `// ${roll(1000)}`, ...lines.slice(at)].join('\n');
    case 2:
      return [...lines.slice(0, at), ...lines.slice(at + 1)].join('\n');
    case 3:
      return text.replace(/by -\d+ g/, `by -${1 + roll(6)} g`);
    case 4:
      return text.replace(/-> (sitka|engelmann|norway)-\d\d/, '-> sitka-32');
    case 5:
      return text.replace(/from c(\d)-(\d+)/, (_, chain: string) => `from c${chain}-${roll(12)}`);
    case 6:
      return [...lines.slice(0, at), lines[at]!.slice(0, roll(lines[at]!.length + 1)), ...lines.slice(at + 1)].join(
        '\n',
      );
    default:
      return text.replace('because', 'note');
  }
}
