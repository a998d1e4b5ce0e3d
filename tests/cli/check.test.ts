import { describe, expect, it } from 'vitest';
import { RECIPES, SMALL_SHOP } from './small-shop.js';
import { bookmatch, bookmatchIn, type Disk, filesOf, Trouble } from './terminal.js';

interface JsonFinding {
  readonly code: string;
  readonly severity: string;
  readonly message: string;
  readonly file: string;
  readonly range: { readonly start: { line: number; column: number }; readonly end: { line: number; column: number } };
}

async function jsonFindings(disk: Disk, ...args: string[]): Promise<readonly JsonFinding[]> {
  const { out } = await bookmatch(disk, 'check', '--format', 'json', ...args);
  return (JSON.parse(out) as { findings: JsonFinding[] }).findings;
}

/** Begins every colour code of a terminal. */
const ESCAPE = '\u001B';

/** The small shop with one word of its recipes written otherwise. */
function withSlip(right: string, wrong: string): Disk {
  expect(RECIPES).toContain(right);
  return { ...SMALL_SHOP, 'recipes/corrie-line.bookmatch': RECIPES.replace(right, wrong) };
}

describe('check, as text', () => {
  it('shows file and line, the line itself with the place marked, the message, and what to do', async () => {
    const { out, code } = await bookmatch(withSlip('thickness: 2.8 mm', 'thickness: 2.8 mmm'), 'check');
    expect(out).toContain(
      [
        'recipes/corrie-line.bookmatch:3:40  error  unknown-unit',
        '  3 |   top { wood: spruce-1  thickness: 2.8 mmm }',
        '    |                                        ^^^',
      ].join('\n'),
    );
    expect(out).toMatch(/→ Write mm$/m);
    expect(code).toBe(1);
  });

  it('ends with a count of everything', async () => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'check');
    expect(out).toMatch(/^2 warnings, .* in 3 files\.$/m);
    expect(code).toBe(0);
  });

  it('says so when there is nothing to say', async () => {
    const { out, code } = await bookmatch({ 'a.bookmatch': 'shop wick { title: "Wick Lane" }\n' }, 'check');
    expect(out).toBe('No findings in 1 file.\n');
    expect(code).toBe(0);
  });

  it('wraps to the width of the terminal', async () => {
    const { out } = await bookmatchIn({ columns: 60 }, SMALL_SHOP, 'check');
    const prose = out.split('\n').filter((line) => !/^\s*\d* \|/.test(line) && !/^\S*:\d/.test(line));
    expect(Math.max(...prose.map((line) => line.length))).toBeLessThanOrEqual(62);
  });

  it('uses colour only when told that a terminal is there', async () => {
    const plain = await bookmatch(SMALL_SHOP, 'check');
    const coloured = await bookmatchIn({ colour: true }, SMALL_SHOP, 'check');
    expect(plain.out).not.toContain(ESCAPE);
    expect(coloured.out).toContain(ESCAPE);
    expect(coloured.out.replace(new RegExp(`${ESCAPE}\\[\\d+m`, 'g'), '')).toBe(plain.out);
  });
});

describe('exit codes of check', () => {
  it.each([
    ['error', 0],
    ['warning', 1],
    ['information', 1],
    ['hint', 1],
  ])('a shop with warnings, failing on %s, ends in %i', async (severity, expected) => {
    expect((await bookmatch(SMALL_SHOP, 'check', '--fail-on', severity)).code).toBe(expected);
  });

  it.each([
    ['a wrong unit', withSlip('thickness: 2.8 mm', 'thickness: 2.8 kg'), 'wrong-dimension'],
    ['a missing unit', withSlip('thickness: 2.8 mm', 'thickness: 0.110'), 'missing-unit'],
    [
      'recipes that descend from each other',
      withSlip('corrie-2 from corrie-1', 'corrie-2 from corrie-3'),
      'parent-ring',
    ],
    ['a parent that is not there', withSlip('corrie-3 from corrie-2', 'corrie-3 from corie-9'), 'missing-parent'],
    ['an unclosed block', withSlip('thickness: 2.8 mm }', 'thickness: 2.8 mm'), 'unclosed-block'],
    ['bytes that are no text', { 'a.bookmatch': '\u0000\u0001\u0002PNG' }, 'bad-character'],
    ['a line of ten million characters', { 'a.bookmatch': 'x'.repeat(10_000_000) }, 'too-large'],
  ] satisfies [string, Disk, string][])('%s is an error', async (_, disk, code) => {
    const findings = await jsonFindings(disk);
    expect(findings.filter(({ severity }) => severity === 'error').map((each) => each.code)).toContain(code);
    const text = await bookmatch(disk, 'check');
    expect(text.code).toBe(1);
    expect(Math.max(...text.out.split('\n').map((line) => line.length))).toBeLessThan(1000);
    expect(text.out + text.err).not.toMatch(/NaN|undefined|Infinity|\.ts:\d/);
  });

  it('an empty file is no trouble', async () => {
    expect((await bookmatch({ 'a.bookmatch': '' }, 'check')).code).toBe(0);
  });

  it('one enormous line that can be read is shown only around the place', async () => {
    const long = `shop wick { title: "${'x'.repeat(2_000_000)}"  speed: 3 }`;
    const { out, code } = await bookmatch({ 'a.bookmatch': long }, 'check', '--fail-on', 'hint');
    expect(out.length).toBeLessThan(5000);
    expect(out).toContain('…');
    expect(code).toBe(1);
  });
});

describe('what check looks at', () => {
  it('a folder is a shop of its own', async () => {
    const two: Disk = { 'a/one.bookmatch': 'shop wick { }', 'b/two.bookmatch': 'shop wick { }' };
    expect((await jsonFindings(two, 'a', 'b')).map(({ code }) => code)).not.toContain('duplicate-name');
    expect((await jsonFindings(two)).map(({ code }) => code)).toContain('duplicate-name');
  });

  it('a file is checked with the folder around it, and only its own findings are told', async () => {
    const findings = await jsonFindings(SMALL_SHOP, 'recipes/corrie-line.bookmatch');
    expect(new Set(findings.map(({ file }) => file))).toEqual(new Set(['recipes/corrie-line.bookmatch']));
    expect(findings.map(({ code }) => code)).toContain('too-many-changes');
    expect(findings.map(({ code }) => code)).not.toContain('unknown-name');
  });

  it('--in says which folder a part of it belongs to', async () => {
    const alone = await jsonFindings(SMALL_SHOP, 'recipes');
    expect(alone.filter(({ severity }) => severity === 'error')).not.toEqual([]);
    const inShop = await jsonFindings(SMALL_SHOP, 'recipes', '--in', '.');
    expect(inShop.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(inShop.map(({ code }) => code)).toContain('too-many-changes');
  });
});

describe('check, used wrongly', () => {
  it.each([
    ['a folder that is not there', ['nowhere'], /There is no file or folder nowhere\./],
    ['a file of another kind', ['notes.txt'], /notes\.txt is not a recipe file: their names end in \.bookmatch\./],
    ['a folder without recipes', ['papers'], /There are no recipe files in papers/],
    ['an unknown format', ['--format', 'xml'], /xml.*invalid.*text, json, sarif, github/is],
    ['an unknown severity', ['--fail-on', 'panic'], /panic.*invalid.*error, warning/is],
    ['an unknown option', ['--fromat', 'json'], /Unknown option --fromat.*--format/is],
    ['a file for --in', ['--in', 'woods.bookmatch', 'recipes'], /woods\.bookmatch is a file/],
  ])('%s: one plain line, and exit code 2', async (_, args, message) => {
    const disk = { ...SMALL_SHOP, 'notes.txt': 'hello', 'papers/letter.txt': 'hello' };
    const { code, out, err } = await bookmatch(disk, 'check', ...args);
    expect(err).toMatch(message);
    expect(out).toBe('');
    expect(code).toBe(2);
  });

  it('a file that cannot be read is named, the rest is checked, and the exit code is 2', async () => {
    const disk = { ...SMALL_SHOP, 'locked.bookmatch': new Trouble('you are not allowed to read it') };
    const { code, out, err } = await bookmatch(disk, 'check');
    expect(err).toBe('locked.bookmatch was left out: you are not allowed to read it.\n');
    expect(out).toContain('too-many-changes');
    expect(code).toBe(2);
  });
});

describe('check, for other programs', () => {
  it('as JSON: code, severity, message, file, and a range counted from one', async () => {
    const findings = await jsonFindings(SMALL_SHOP);
    const found = findings.find(({ code }) => code === 'too-many-changes')!;
    expect(Object.keys(found).sort()).toEqual(['code', 'file', 'message', 'range', 'severity']);
    expect(found.severity).toBe('warning');
    expect(found.file).toBe('recipes/corrie-line.bookmatch');
    expect(found.range.start).toEqual({ line: 12, column: 1 });
    expect(found.range.end).toEqual({ line: 12, column: 30 });
  });

  it('as GitHub annotations, one a line, with signs that would end them written otherwise', async () => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'check', '--format', 'github', '--fail-on', 'warning');
    const lines = out.trimEnd().split('\n');
    for (const line of lines) expect(line).toMatch(/^::(error|warning|notice) file=[^,:]+,line=\d+,[^:]*::\S/);
    const many = lines.find((line) => line.includes('title=too-many-changes'))!;
    expect(many).toMatch(/^::warning file=recipes\/corrie-line\.bookmatch,line=12,endLine=12,col=1,endColumn=30,/);
    expect(many).toContain('(−19 %25)');
    expect(many).toContain('%0AWhat to do: ');
    expect(code).toBe(1);
  });
});

describe('check --watch', () => {
  it('checks again after each change, one during the first look too, and ends with the last exit code', async () => {
    const before = withSlip('thickness: 2.8 mm', 'thickness: 2.8 mmm');
    let disk = before;
    let saved: (() => void) | undefined;
    let reads = 0;
    const files = {
      kindOf: (path: string) => filesOf(disk).kindOf(path),
      find: (folder: string) => filesOf(disk).find(folder),
      read: async (path: string) => {
        const read = await filesOf(disk).read(path);
        // Somebody saves while the last of three files is read.
        if (++reads === 3) saved?.();
        return read;
      },
      replace: () => Promise.resolve('not here'),
      create: () => Promise.resolve(undefined),
      watch: (folders: readonly string[], changed: () => void) => {
        expect(folders).toEqual(['/bench']);
        saved = () => {
          disk = SMALL_SHOP;
          changed();
        };
        return Promise.resolve();
      },
    };
    const { out, code } = await bookmatchIn({ files }, before, 'check', '--watch');
    expect(out.match(/ in 3 files\./g)).toHaveLength(2);
    expect(out.split('─').at(0)).toContain('unknown-unit');
    expect(out.split('─').at(-1)).not.toContain('unknown-unit');
    expect(code).toBe(0);
  });
});

describe('how much is said', () => {
  const shop = {
    'a.bookmatch': 'wood rosewood-4 is indian-rosewood { use: back }\nmodel m { top.thickness: 0.110 mm }\n',
  };
  it('usually leaves hints out and says how many, cautions by name', async () => {
    const { out } = await bookmatch(shop, 'check');
    expect(out).toContain('implausible');
    expect(out).not.toContain('dust-caution');
    expect(out).toMatch(/^\d more with --talk everything, 2 of them cautions$/m);
  });

  it('everything means everything', async () => {
    const { out } = await bookmatch(shop, 'check', '--talk', 'everything');
    expect(out).toContain('dust-caution');
    expect(out).not.toContain('--talk everything');
  });

  it('a program is told everything unless it says otherwise', async () => {
    const codes = async (...args: readonly string[]) =>
      (
        JSON.parse((await bookmatch(shop, 'check', '--format', 'json', ...args)).out) as {
          findings: { code: string }[];
        }
      ).findings.map(({ code }) => code);
    expect(await codes()).toContain('dust-caution');
    expect(await codes('--talk', 'quiet')).toEqual(['implausible']);
  });
});
