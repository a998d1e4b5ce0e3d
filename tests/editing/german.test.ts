/** The example shop in German: what its findings, hovers and lenses say, read over by somebody who builds guitars. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../language/checks/desk.js';
import { hoverAt } from '../../language/editing/hover/hover.js';
import { lensesOf } from '../../language/editing/hints/lenses.js';
import { openWorkshop } from '../../language/shop.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { Wording } from '../../language/wording/wording.js';
import { translationsOf } from '../wording/translations.js';

const FOLDER = 'examples/hollin-reach';
const RECIPES = 'vennick-recipes.bookmatch';
const desk = germanDesk();

describe('the example shop in German', () => {
  it('has these findings', async () => {
    const told = desk.shelf
      .uris()
      .flatMap((uri) =>
        desk.checks
          .file(uri)
          .flatMap(({ code, message, fixes, related }) => [
            `${uri} ${code}`,
            `  ${message}`,
            ...related.map((each) => `    · ${each.message}`),
            ...fixes.map(({ title }) => `    → ${title}`),
          ]),
      );
    await expect(`${told.join('\n')}\n`).toMatchFileSnapshot('german/findings.txt');
  });

  it('has these lenses', async () => {
    const told = desk.shelf.uris().flatMap((uri) => lensesOf(desk, uri).map(({ text }) => text));
    await expect(`${told.join('\n')}\n`).toMatchFileSnapshot('german/lenses.txt');
  });

  it.each([
    ['a-property', 'thickness: 2.80 mm', 2],
    ['a-computed-quantity', 'top.stiffness.along by', 16],
    ['a-wood', 'sitka-31   thickness', 2],
    ['a-recipe', 'vennick-40 from', 2],
    ['a-keyword', 'change top.wood', 2],
    ['a-unit', 'mm', 1],
  ])('hover on %s', async (name, words, on) => {
    const text = desk.text(RECIPES)!;
    const before = text.slice(0, text.indexOf(words) + on).split('\n');
    const place = { line: before.length - 1, character: before.at(-1)!.length };
    await expect(`${hoverAt(desk, RECIPES, place)?.markdown}\n`).toMatchFileSnapshot(`german/${name}.md`);
  });
});

function germanDesk(): Desk {
  const wording = new Wording(translationsOf('de'), 'de');
  const { shelf, workshop, checks, parser } = openWorkshop({ wording });
  const names = readdirSync(FOLDER).filter((name) => name.endsWith('.bookmatch'));
  const texts = new Map(names.map((name) => [name, readFileSync(`${FOLDER}/${name}`, 'utf8')]));
  shelf.put(...[...texts].map(([name, text]) => readFile(name, text, parser)));
  return { shelf, workshop, checks, text: (uri) => texts.get(uri) };
}
