/** Sheets to print: what stands on each, what must not, and that no text gets out of its place. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { escaped, sheetAsHtml } from '../../language/sheets/html.js';
import type { Sheet, SheetKind } from '../../language/sheets/sheet.js';
import { SHEET_KINDS } from '../../language/sheets/sheet.js';
import { sheetOf } from '../../language/sheets/sheets.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

const FOLDER = 'examples/hollin-reach';
const { workshop } = deskOf(...readdirSync(FOLDER).map((name) => readFileSync(join(FOLDER, name), 'utf8')));
const sheet = (name: string, kind: SheetKind): Sheet => sheetOf(workshop, name, kind)!;
const rowsOf = ({ sections }: Sheet, title: string) => sections.find((section) => section.title === title)!.rows!;
const plain = (cells: Sheet['sections'][number]['rows']) =>
  cells!.map((row) =>
    row.map((cell) => (typeof cell === 'string' ? cell : 'write' in cell ? '[ ]' : `*${cell.strong}*`)),
  );

describe('the bench sheet', () => {
  const bench = sheet('vennick-38', 'bench');

  it('says first what is different in this one, and why', () => {
    expect(bench.intro.join(' ')).toContain('European at the same stiffness');
    expect(plain(rowsOf(bench, 'What is different in this one'))).toEqual([
      ['Top, wood', 'sitka-33', '*norway-38*', 'changed, vennick-38 line 55'],
      ['Top, thickness', '2.77 mm', '*2.66 mm*', 'solved by a hold, vennick-38 line 56'],
    ]);
  });

  it('goes through the stages in the order of the trade, each with targets, tolerances and boxes', () => {
    const titles = bench.sections.map(({ title }) => title);
    const inOrder = ['Wood', 'Rosette', 'Thicknessing', 'Bracing', 'Rim', 'Finish', 'Bridge and setup', 'First tests'];
    expect(titles.filter((title) => inOrder.includes(title))).toEqual(inOrder);
    const thicknessing = plain(rowsOf(bench, 'Thicknessing'));
    // The shop works plates to 0.05 mm.
    expect(thicknessing).toContainEqual([
      'Top, thickness',
      '*2.66 mm*',
      '±0.05 mm',
      '[ ]',
      'was 2.77 mm; solved by a hold, vennick-38 line 56',
    ]);
    expect(thicknessing).toContainEqual(['Back, thickness', '2.4 mm', '±0.05 mm', '[ ]', '']);
    expect(thicknessing.find(([what]) => what === 'Top, mass')).toEqual([
      'Top, mass',
      '144 g',
      expect.stringMatching(/^±\d/),
      '[ ]',
      'weigh, cut to outline',
    ]);
  });

  it('tells each brace in one row, and draws it from the side', () => {
    const braces = plain(rowsOf(bench, 'Braces of the top'));
    expect(braces.map(([name]) => name)).toEqual([
      'X brace, bass',
      'X brace, treble',
      'Tone bar 1',
      'Tone bar 2',
      'Upper transverse',
    ]);
    expect(braces[0]!.slice(3)).toEqual(['7.9 mm', '15.9 mm', '3 mm', '[ ]', '']);
    const { figure } = bench.sections.find(({ title }) => title === 'Braces from the side')!;
    expect(figure!.match(/<svg /g)).toHaveLength(9);
  });

  it('has only what is made at a stage under it: the scale at the neck, and nothing the model was fitted with', () => {
    const at = (title: string) => plain(rowsOf(bench, title)).map(([what]) => what);
    expect(at('Thicknessing')).not.toContain('Scale');
    expect(at('Neck')).toEqual(expect.arrayContaining(['Scale', 'Neck, join fret', 'Nut, width']));
    expect(JSON.stringify(bench)).not.toContain('120 N');
  });

  it('has the frets from the nut where their number is known', () => {
    const desk = deskOf(VENNICK.replace('saddle.', 'frets.count: 20  saddle.'));
    const rows = plain(rowsOf(sheetOf(desk.workshop, 'v-31', 'bench')!, 'Frets, from the nut'));
    // 645 mm · (1 − 2^(−12/12)) and the last of twenty: equal temperament.
    expect(rows.flat()).toContain('322.50 mm');
    expect(rows.at(-1)!.slice(-2)).toEqual(['20', '441.84 mm']);
  });

  it('tells what is left to take off, from the last reading, and fills in what is known', () => {
    const { workshop: own } = deskOf(`build no-7 of v-31 { serial: "17"  top.thickness: 2.94 mm
  reading braced { stage: braced  hygrometer: bench  humidity: 46 %RH  bracing.x-bass.height: 17.2 mm } }\n${VENNICK}`);
    const made = sheetOf(own, 'no-7', 'bench')!;
    expect(plain(rowsOf(made, 'Thicknessing'))).toContainEqual([
      'Top, thickness',
      '2.8 mm',
      '±0.05 mm',
      '2.94 mm',
      'take off 0.14 mm',
    ]);
    expect(plain(rowsOf(made, 'Braces of the top'))[0]!.at(-1)).toBe('take off 1.3 mm');
    expect(made.boxes).toContainEqual({ label: 'Serial number', value: '17' });
    expect(made.boxes).toContainEqual({ label: 'Humidity', value: '46 %RH' });
  });

  it('carries each caution once, with its source, and defers to those who know', () => {
    const texts = bench.cautions.map(({ text }) => text);
    expect(new Set(texts).size).toBe(texts.length);
    expect(texts.filter((text) => text.includes('Nitrocellulose lacquer'))).toHaveLength(1);
    expect(bench.cautions.every(({ source }) => source !== '')).toBe(true);
    expect(bench.closing).toContain('licensed professional');
  });

  it('of a build has what was made', () => {
    expect(plain(rowsOf(sheet('no-38', 'bench'), 'What is different in this one'))).toContainEqual([
      'Bracing, wood',
      'billet-3',
      '*billet-4*',
      'as made, no-38 line 75',
    ]);
  });
});

describe('the client sheet', () => {
  it('has woods, options and setup, and no number by which the voice is made', () => {
    const client = sheet('vennick-38', 'client');
    expect(plain(rowsOf(client, 'Woods'))).toContainEqual([
      'Indian rosewood',
      'Dalbergia latifolia',
      'Back, Sides, Bridge, Bridge plate',
    ]);
    const told = rowsOf(client, 'The instrument');
    expect(told).toContainEqual(['Scale', '645 mm']);
    expect(told).toContainEqual(['Setup action, bass', '2.4 mm']);
    const html = sheetAsHtml(client);
    for (const secret of ['2.66 mm', '15.9 mm', 'thickness', 'stiffness', ' Hz', ' g<', 'norway-38']) {
      expect(html).not.toContain(secret);
    }
  });

  it('of an order says what was agreed', () => {
    const desk = deskOf('order c-07 of v-31 { agreed: 2026-02-03  promised: 2026-08-01  price: "as quoted" }', VENNICK);
    const client = sheetOf(desk.workshop, 'c-07', 'client')!;
    expect(client.title).toBe('v-31');
    expect(client.intro).toEqual(['Order c-07']);
    expect(plain(rowsOf(client, 'What was agreed'))).toEqual([
      ['Agreed on', '2026-02-03'],
      ['Promised for', '2026-08-01'],
      ['Price', 'as quoted'],
    ]);
  });
});

describe('the sheets of an order', () => {
  const order = (filled: string) => `order c-07 of v-31 { destination: "Norway" ${filled} }\n${VENNICK}`;
  const built = 'build no-7 of v-31 { top.thickness: 2.70 mm }';

  it('are of the recipe until it is built, and then of the instrument that fills it', () => {
    const benchOf = (filled: string) => {
      const { workshop } = deskOf(`${order(filled)}\n${built}`);
      expect(sheetOf(workshop, 'c-07', 'papers')!.intro).toEqual(['It goes to: Norway']);
      return sheetOf(workshop, 'c-07', 'bench')!;
    };
    expect(benchOf('').title).toBe('Bench sheet: v-31');
    expect(benchOf('build: "no-8"').title).toBe('Bench sheet: v-31');
    const filled = benchOf('build: "no-7"');
    expect(filled.title).toBe('Bench sheet: no-7');
    expect(
      plain(rowsOf(filled, 'Thicknessing'))
        .find(([what]) => what === 'Top, thickness')!
        .slice(1, 4),
    ).toEqual(['2.8 mm', '±0.05 mm', '2.7 mm']);
  });

  it.each(SHEET_KINDS)('the %s sheet is among them', (kind) => {
    expect(sheetOf(deskOf(order('')).workshop, 'c-07', kind)).toMatchObject({ kind });
  });

  it('put what the client chose in place of what the recipe says, and what was asked for later once it is accepted', () => {
    const order = `appointments plain-rosette { rosette: "one ring of walnut" }
order c-08 of v-31 {
  with plain-rosette
  nut.width: 1 3/4"
  electronics { pickup: "contact, three discs" }
  request 2026-04-28 { answer: accepted  handed: left }
  request 2026-05-02 { answer: declined  tuners: "gold" }
}`;
    const { workshop } = deskOf(order, VENNICK);
    const rows = plain(rowsOf(sheetOf(workshop, 'c-08', 'client')!, 'The instrument'));
    expect(rows).toContainEqual(['Rosette', '*one ring of walnut*']);
    // As the maker wrote it, with the millimetres beside it.
    expect(rows).toContainEqual(['Nut, width', '*1 3/4" (44.45 mm)*']);
    expect(rows).toContainEqual(['Electronics pickup', '*contact, three discs*']);
    expect(rows).toContainEqual(['Handed', '*left*']);
    expect(JSON.stringify(rows)).not.toContain('gold');
    // The recipe itself is as it was.
    expect(workshop.instrument('v-31')!.values.has('electronics.pickup')).toBe(false);
  });

  it('mark at the bench what the client chose', () => {
    const { workshop } = deskOf('order c-10 of v-31 { scale: 640 mm  inlay: "a wave" }', VENNICK);
    const rows = plain(rowsOf(sheetOf(workshop, 'c-10', 'bench')!, 'What is different in this one'));
    expect(rows).toContainEqual(['Scale', '645 mm', '*640 mm*', 'changed, c-10 line 1']);
    expect(rows).toContainEqual(['Inlay', '–', '*a wave*', 'changed, c-10 line 1']);
  });

  it('of a finished instrument say what was made where it is not what was asked for', () => {
    const { workshop } = deskOf(
      `order c-09 of v-31 { build: "no-9"  nut.width: 46 mm  tuners: "gold" }
build no-9 of v-31 { nut.width: 45.5 mm }`,
      VENNICK,
    );
    const rows = plain(rowsOf(sheetOf(workshop, 'c-09', 'client')!, 'The instrument'));
    expect(rows).toContainEqual(['Nut, width', '45.5 mm']);
    expect(rows).toContainEqual(['Tuners', '*gold*']);
  });
});

describe('a shop that prints inches', () => {
  it('has them first on its sheets, with the millimetres beside them', () => {
    const { workshop } = deskOf(VENNICK.replace(/shop [\w-]+ \{/, '$& units: inch '));
    const thickness = plain(rowsOf(sheetOf(workshop, 'v-31', 'bench')!, 'Thicknessing')).find(
      ([what]) => what === 'Top, thickness',
    )!;
    expect(thickness.slice(1, 3)).toEqual(['0.1102 in (2.8 mm)', '±0.002 in']);
  });
});

describe('the setup and care card', () => {
  it('tells setup, strings with their pull, and the humidity it was built at', () => {
    const care = sheet('vennick-38', 'care');
    expect(plain(rowsOf(care, 'As it left the shop'))).toContainEqual(['Setup action, bass', '2.4 mm', '[ ]']);
    expect(plain(rowsOf(care, 'Strings it was made for'))).toContainEqual(['set', 'light-12']);
    expect(plain(rowsOf(care, 'Strings it was made for')).at(-1)![1]).toMatch(/^\d+ N$/);
    const { text } = care.sections.find(({ title }) => title === 'Where it lives')!;
    expect(text![0]).toContain('built at 45 %RH');
    expect(text![0]).toContain('between 40 %RH and 50 %RH');
  });
});

it('the card of a build tells how it was set beside how it was meant', () => {
  const made = deskOf(`build no-7 of v-31 { setup.action.bass: 2.3 mm }\n${VENNICK}`);
  const meant = deskOf(VENNICK.replace('saddle.', 'setup.action { bass: 2.4 mm  treble: 1.8 mm }\n  saddle.')).workshop;
  expect(plain(rowsOf(sheetOf(made.workshop, 'no-7', 'care')!, 'As it left the shop'))).toContainEqual([
    'Setup action, bass',
    '–',
    '2.3 mm',
  ]);
  expect(plain(rowsOf(sheetOf(meant, 'v-31', 'care')!, 'As it left the shop'))).toContainEqual([
    'Setup action, treble',
    '1.8 mm',
    '[ ]',
  ]);
});

describe('species and papers', () => {
  it('of a build have what was weighed', () => {
    const { workshop: own } = deskOf(`build no-7 of v-31 { top.mass: 161.5 g }\n${VENNICK}`);
    const topOf = (name: string) =>
      plain(rowsOf(sheetOf(own, name, 'papers')!, 'Woods by species'))
        .find((row) => row[2] === 'Top')!
        .at(-1);
    expect(topOf('no-7')).toBe('161.5 g');
    expect(topOf('v-31')).not.toBe('161.5 g');
  });

  it('lists every part of wood with its Latin name and quantity, and leaves room for what nobody wrote down', () => {
    const rows = plain(rowsOf(sheet('vennick-38', 'papers'), 'Woods by species'));
    expect(rows.find((row) => row[2] === 'Top')).toEqual([
      'Norway spruce (norway-38)',
      'Picea abies',
      'Top',
      '[ ]',
      '[ ]',
      '144 g',
    ]);
    expect(rows.map((row) => row[0])).toHaveLength(new Set(rows.map((row) => row[0])).size);
    expect(rows.map((row) => row[2])).toContain('Back, Sides, Bridge, Bridge plate');
  });

  it('warns once where trade in one of them is regulated', () => {
    const { sections, cautions } = sheet('vennick-38', 'papers');
    expect(sections.at(-1)!.text!.filter((sentence) => sentence.startsWith('Indian rosewood'))).toHaveLength(1);
    expect(cautions.filter(({ text }) => text.includes('Trade in this wood'))).toHaveLength(1);
  });
});

describe('as a document', () => {
  const hostile = `shop test { title: "Hole <script>alert(1)</script> & \\"Sons\\"" }
recipe v-32 from v-31 { because "</style><img src=x onerror=alert(1)>"  change top.thickness: 2.80 mm -> 2.70 mm }`;
  const desk = deskOf(hostile, VENNICK.replace(/^shop.*$/m, ''));

  it.each(SHEET_KINDS)('the %s sheet keeps every text a text, and needs nothing from elsewhere', (kind) => {
    const html = sheetAsHtml(sheetOf(desk.workshop, 'v-32', kind)!);
    expect(html).not.toMatch(/<script|<img|onerror=alert\(1\)>|<\/style><img/);
    expect(html).toContain('Hole &#60;script&#62;alert(1)&#60;/script&#62; &#38; &#34;Sons&#34;');
    expect(html.match(/<\/style>/g)).toHaveLength(1);
    expect(html).not.toMatch(/<[^>]*(?:src|href)=|@import|url\(/);
    expect(html.match(/<svg/g)?.length).toBe(html.match(/<\/svg>/g)?.length);
    expect(html).toContain("default-src 'none'");
  });

  it('has no sheet of what is not there, or is no instrument', () => {
    expect(sheetOf(workshop, 'nobody', 'bench')).toBeUndefined();
    expect(sheetOf(workshop, 'vennick', 'bench')).toBeUndefined();
    expect(sheetOf(workshop, 'sitka-31', 'papers')).toBeUndefined();
  });

  it('escapes the five signs that mean something in a page', () => {
    expect(escaped(`<a href="x">'&`)).toBe('&#60;a href=&#34;x&#34;&#62;&#39;&#38;');
  });
});
