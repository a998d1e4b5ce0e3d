/** An order on its sheets: everything that was ordered, in words, and nothing of the voicing. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { sheetAsHtml } from '../../language/sheets/html.js';
import { ordersSheet } from '../../language/sheets/orders.js';
import { SHEET_KINDS, type Sheet } from '../../language/sheets/sheet.js';
import { sheetOf } from '../../language/sheets/sheets.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

const ORDER = `appointments ember {
  title: "Ember dress"
  rosette: "red stone band"  binding: "curly maple"
  electronics { pickup { kind: "under-saddle"  mass: 12 g  on: bridge-plate }  battery { kind: "nine volts"  mass: 45 g }  jack: 1/4 in }
}
order c-07 of v-31 {
  client: "A. M."  agreed: 2026-02-03  promised: 2026-09-01  price: "as quoted"  terms: "a third down"  player: "fingerstyle"
  reached: rim
  with ember
  cutaway { kind: florentine  depth: 60 mm }
  nut.width: 46 mm  handed: left  case: "green"  strap-button.count: 2  tuners: "black buttons"
  request 2026-04-28 { neck.profile: soft-v  asked-by: "A. M."  answer: accepted  answered: 2026-05-02  extra: "40"  delay: 7 days }
  request 2026-05-10 { add arm-bevel { width: 25 mm }  answer: declined  answered: 2026-05-11 }
  request 2026-05-20 { finish.sheen: satin  note "On the neck only." }
}
order c-08 of v-31 { client: "K. B."  promised: 2026-12-01 }
order c-09 of v-31 { client: "L. O."  delivered: 2026-01-15 }
`;
const SHOP = VENNICK.replace(/shop [\w-]+ \{/, '$& title: "Wick Lane"  maker: "J. Fell" ');
const { workshop } = deskOf(ORDER, SHOP);
const cells = (sheet: Sheet, title: string) =>
  sheet.sections
    .find((section) => section.title === title)!
    .rows!.map((row) => row.map((cell) => (typeof cell === 'string' ? cell : 'strong' in cell ? cell.strong : '[ ]')));

describe('the client’s sheet of an order', () => {
  const client = sheetOf(workshop, 'c-07', 'client')!;
  const told = cells(client, 'The instrument');

  it('names client and maker, and is named after the instrument, not after a package', () => {
    expect(client.title).toBe('v-31');
    expect(client.boxes).toEqual([
      { label: 'Client', value: 'A. M.' },
      { label: 'Maker', value: 'J. Fell' },
    ]);
  });

  it('has every option of the order and of its packages, but what they weigh and where they sit', () => {
    const ordered = [...workshop.ordered('c-07')!.values.values()].filter(
      ({ from, via, path }) =>
        catalogue.property(path, 'recipe') && (via === 'package' || from.definition.name.text === 'c-07'),
    );
    expect(ordered.length).toBeGreaterThan(10);
    const choices = new Set(told.map(([, choice]) => choice));
    for (const { path, value } of ordered) {
      if (/(?:[.-]mass|[.-]on)$/.test(path)) continue;
      const text =
        value.kind === 'text' ? value.text : value.kind === 'name' ? value.name.replaceAll('-', ' ') : undefined;
      if (text !== undefined) expect(choices, path).toContain(text);
    }
    expect(told).toContainEqual(['Cutaway, depth', '60 mm']);
    expect(told).toContainEqual(['Nut, width', '46 mm']);
    expect(told).toContainEqual(['Electronics, jack', '0.25 in']);
  });

  it('tells agreed, asked later, answered, with date, price and delay', () => {
    expect(cells(client, 'Asked for later')).toEqual([
      ['2026-04-28', 'A. M.', 'Neck, profile: soft v', 'accepted, 2026-05-02', '40', '7 days'],
      ['2026-05-10', '', 'Arm bevel, width: 25 mm', 'declined, 2026-05-11', '', ''],
      ['2026-05-20', '', 'Finish, sheen: satin; On the neck only.', 'open', '', ''],
    ]);
    expect(cells(client, 'What was agreed')).toContainEqual(['Terms', 'a third down']);
  });

  it('has nothing by which the voice is made', () => {
    const html = sheetAsHtml(client).replace(/<style>[\s\S]*<\/style>/, '');
    for (const secret of ['2.8 mm', '15.9 mm', '27 g', '12 g', 'hickness', ' Hz', 'tiffness'])
      expect(html).not.toContain(secret);
  });
});

describe('open orders', () => {
  it('stand by the stage they have reached, without those delivered', () => {
    const sheet = ordersSheet(workshop);
    expect(sheet.sections.map(({ title }) => title)).toEqual(['Not begun', 'Done: Rim']);
    expect(cells(sheet, 'Done: Rim')).toEqual([
      ['c-07', 'A. M.', 'v-31', '2026-02-03', '2026-09-01', 'Finish, sheen: satin; On the neck only.'],
    ]);
    expect(JSON.stringify(sheet)).not.toContain('L. O.');
  });
});

describe('no sheet', () => {
  const example = (name: string) =>
    deskOf(...readdirSync(`examples/${name}`).map((file) => readFileSync(join('examples', name, file), 'utf8')));
  const shops = [
    { desk: example('hollin-reach'), of: ['vennick-38', 'no-38', 'vennick-42'] },
    { desk: example('wick-lane'), of: ['c-07', 'c-08', 'no-7', 'lark-3'] },
    { desk: deskOf(ORDER, SHOP), of: ['c-07', 'v-31'] },
  ];
  // A path of the language: two known words with a point between them.
  const heads = new Set(catalogue.all.filter(({ path }) => path.includes('.')).map(({ path }) => path.split('.')[0]!));
  const whole = new Set(catalogue.all.map(({ path }) => path).filter((path) => path.includes('-')));
  const isPath = (word: string) =>
    whole.has(word) || (heads.has(word.split('.')[0]!) && /^[a-z][a-z-]*\.[a-z][a-z0-9.-]*$/.test(word));

  for (const { desk, of } of shops) {
    for (const name of of) {
      it.each(SHEET_KINDS)(`of ${name} tells a path: %s`, (kind) => {
        const html = sheetAsHtml(sheetOf(desk.workshop, name, kind)!);
        const text = html.replace(/<style>[\s\S]*<\/style>/, '').replace(/<[^>]*>/g, ' ');
        expect(text.split(/[\s,;:()]+/).filter(isPath)).toEqual([]);
      });
    }
  }
});
