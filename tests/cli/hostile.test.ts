/**
 * Every command in every format on a shop in which every name, text and file name is out to do harm. What may not come
 * through is said by outside rules: ECMA-48 (control functions), Unicode 16.0 (general categories), RFC 8259 (JSON), the
 * WHATWG's HTML as parse5 reads it, SARIF 2.1.0 (links and placeholders in messages), and GitHub's and other runners' commands.
 */
import { parse } from 'parse5';
import { describe, expect, it } from 'vitest';
import { bookmatchIn, type Disk, type Outcome } from './terminal.js';
import { THOROUGH } from '../thorough.js';
import { MODEL, RECIPES, WOODS } from './small-shop.js';

const HOSTILE = {
  'colour of ours': '\u001B[31mRED\u001B[39m',
  'cleared screen': '\u001B[2J\u001B[H',
  'title of the window': '\u001B]0;pwned\u0007',
  'link of the terminal': '\u001B]8;;https://example.org\u001B\\here\u001B]8;;\u001B\\',
  'control in one byte': '\u009B2J\u009D0;x\u009C',
  overwriting: 'abc\b\b\b\rxyz',
  nul: 'a\u0000b\u007F',
  'turned direction': '\u202Egnp.exe\u2066x\u2069\u200F',
  invisible: 'a\u200Bb\u00ADc\uFEFFd\u{E0041}',
  'workflow command': '::error file=x::forged',
  'command of a runner': '##[error]forged ##vso[task.setvariable variable=x]y ##teamcity[z]',
  'end of a script': '</script><script>alert(1)</script><img src=x onerror=alert(1)>',
  attribute: '" onmouseover="alert(1)" x=\'',
  markdown: '[here](command:workbench.action.quit) ![](https://example.org/x.png) <https://example.org>',
  placeholders: '{0} {{1}} ${x} %0A::error::x %25',
  backticks: '``` ` ```',
} as const;

/** Signs that may stand in a file name on the disk, and those that may stand in a text of a recipe. */
const inFileName = (text: string) => text.replaceAll('/', '∕').replaceAll('\u0000', '');
const inText = (text: string) =>
  text
    .replaceAll('"', '\\"')
    .replace(/[\r\n]/g, '')
    .replace(/\\(?!")/g, '');

function shopWith(evil: string): Disk {
  const text = inText(evil);
  const bare = evil.replace(/[\r\n"{}]/g, '');
  const recipes = `${RECIPES.replace('"Two things at once."', `"${text}"`).replace(
    'change bridge.mass: 27 g -> 22 g',
    `together "${text}" { change bridge.mass: 27 g -> 22 g }\n  note "${text}"\n  saddle.material: "${text}"\n  ${bare} 12`,
  )}
recipe "${text}" from corrie-3 { change soundhole.diameter: 95 mm -> 94 mm source "${text}" }
recipe x${bare} from ${bare} { ${bare}: 3 mm  top.${bare}: 3 ${bare} }
order o-1 of corrie-3 { client: "${text}"  agreed: 2024-03-02 }
`;
  return {
    'corrie.bookmatch': MODEL.replace('"Wick Lane"', `"Wick ${text}"`),
    [`${inFileName(evil)}\n::error::forged\n.bookmatch`]: `${WOODS}\nwood w-3 is ${bare} { use: "${text}" }\n`,
    'corrie-line.bookmatch': recipes,
  };
}

const COMMANDS: Readonly<Record<string, (evil: string) => readonly string[]>> = {
  'check as text': () => ['check'],
  'check as json': () => ['check', '--format', 'json'],
  'check as sarif': () => ['check', '--format', 'sarif'],
  'check as github': () => ['check', '--format', 'github'],
  'show as text': () => ['show', 'corrie-3'],
  'show as json': () => ['show', 'corrie-3', '--format', 'json'],
  'show of the shop': () => ['show', 'wick'],
  'show of the wood': () => ['show', 'spruce-1'],
  'compare as text': () => ['compare', 'corrie-1', 'corrie-3'],
  'compare as json': () => ['compare', 'corrie-1', 'corrie-3', '--format', 'json'],
  'effects as text': () => ['effects'],
  'effects as json': () => ['effects', '--format', 'json'],
  'effects of a model as text': () => ['effects', '--model', 'corrie'],
  'effects of a model as json': () => ['effects', '--model', 'corrie', '--format', 'json'],
  'lineage as text': () => ['lineage'],
  'lineage as json': () => ['lineage', '--format', 'json'],
  'sheet as html': () => ['sheet', 'corrie-3'],
  'sheet of the order as html': () => ['sheet', 'o-1', '--kind', 'client'],
  'sheet as json': () => ['sheet', 'o-1', '--kind', 'client', '--format', 'json'],
  'plan as svg': () => ['plan', 'corrie-3', '--format', 'svg'],
  'plan as dxf': () => ['plan', 'corrie-3', '--format', 'dxf'],
  'ways as text': () => ['ways', 'corrie-3', 'top.mass: below 140 g'],
  'ways as json': () => ['ways', 'corrie-3', 'top.mass: below 140 g', '--format', 'json'],
  'a wish': (evil) => ['ways', 'corrie-3', evil],
  'a wished value': (evil) => ['ways', 'corrie-3', `top.mass: ${evil}`],
  'sheet of the orders as html': () => ['sheet', '--kind', 'orders'],
  'a plan of': (evil) => ['plan', evil],
  'a part of a plan': (evil) => ['plan', 'corrie-3', '--part', evil],
  'format as text': () => ['format', '--check'],
  'rules as text': (evil) => ['rules', evil],
  'a name': (evil) => ['show', evil],
  'two names': (evil) => ['compare', evil, 'corrie-1'],
  'a model': (evil) => ['effects', '--model', evil],
  'a folder': (evil) => ['check', '--in', evil],
  'a file': (evil) => ['check', `${evil}\n::error::x`],
  'a command': (evil) => [evil],
  'an option': (evil) => [`--${evil}\n::error::x`],
  'a choice': (evil) => ['check', '--format', evil],
  'a language': (evil) => ['--language', evil, 'rules'],
};

/** A sample takes every string through a tenth of the commands, each time others. */
describe.each(Object.entries(HOSTILE).map(([name, evil], i) => [name, evil, i] as const))('%s', (_, evil, nth) => {
  const disk = shopWith(evil);
  const asked = Object.entries(COMMANDS).filter((__, i) => THOROUGH || (i + nth) % 10 === 0);
  it.each(asked)('%s', async (name, args) => {
    for (const colour of name.endsWith('as text') ? [true, false] : [false]) {
      const outcome = await bookmatchIn({ colour }, disk, ...args(evil));
      expect([0, 1, 2]).toContain(outcome.code);
      expect(outcome.out + outcome.err).not.toContain('fault of its own');
      await tame(name, outcome, colour, evil, args('plain words'));
    }
  });
});

async function tame(
  name: string,
  { out, err }: Outcome,
  colour: boolean,
  evil: string,
  args: readonly string[],
): Promise<void> {
  isTextForPeople(err, false, evil);
  // A file that is no text cannot be asked about, and that was said.
  if (out === '' && err !== '') return;
  if (name.endsWith('json') || name.endsWith('sarif')) {
    expect(acting(out)).toEqual([]);
    expect(out).not.toMatch(/##\w*\[/);
    const data: unknown = JSON.parse(out);
    if (name.endsWith('sarif')) isSarif(data);
  } else if (name.endsWith('github')) {
    expect(acting(out)).toEqual([]);
    for (const line of out.trimEnd().split('\n'))
      expect(line).toMatch(/^::(error|warning|notice) file=[^:,]+(,\w+=[^:,]*)+::/);
  } else if (name.endsWith('html')) {
    expect(acting(out)).toEqual([]);
    await isPage(out, args);
  } else if (/svg|dxf/.test(name)) {
    expect(acting(out.replaceAll('\r\n', '\n'))).toEqual([]);
    expect(out).not.toMatch(/<script|<img|onerror=|^\s*::|##\w*\[/m);
  } else isTextForPeople(out, colour, evil);
}

/** Signs that act, but for the end of a line. */
function acting(text: string): readonly string[] {
  return text.match(/(?![\n\u200C\u200D])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu) ?? [];
}

function isTextForPeople(text: string, colour: boolean, evil: string): void {
  if (evil.includes('\u001B')) expect(text).not.toContain(evil);
  // Ours: bold, dim, three colours, and their ends.
  const bare = colour ? text.replace(/\p{Cc}\[(?:1|2|22|31|33|36|39)m/gu, '') : text;
  expect(acting(bare)).toEqual([]);
  expect(bare).not.toMatch(/^\s*::/m);
  expect(bare).not.toMatch(/##[\w.]*\[/);
}

/** Sections 3.11.5 and 3.11.6: braces only in pairs, no link. */
function isSarif(data: unknown): void {
  for (const text of messagesIn(data)) {
    expect(text.replaceAll('{{', '').replaceAll('}}', '')).not.toMatch(/[{}]/);
    expect(text).not.toMatch(/\]\(/);
  }
}

function messagesIn(data: unknown): readonly string[] {
  if (typeof data !== 'object' || data === null) return [];
  const own = 'text' in data && typeof data.text === 'string' ? [data.text] : [];
  return [...own, ...Object.values(data).flatMap(messagesIn)];
}

/** What a page of HTML is made of: elements with their attributes, as parse5 reads it. */
function madeOf(html: string): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (node: object): void => {
    if ('tagName' in node) {
      found.add(`<${String(node.tagName)}>`);
      const attributes = 'attrs' in node ? (node.attrs as { name: string }[]) : [];
      for (const { name } of attributes) found.add(`${String(node.tagName)} ${name}`);
    }
    if ('childNodes' in node) for (const child of node.childNodes as object[]) visit(child);
  };
  visit(parse(html));
  return found;
}

/** No element and no attribute but those that the same sheet has when the same places hold plain words. */
async function isPage(html: string, args: readonly string[]): Promise<void> {
  const { out } = await bookmatchIn({}, shopWith('plain words'), ...args);
  const usual = madeOf(out);
  expect([...madeOf(html)].filter((each) => !usual.has(each))).toEqual([]);
  expect(usual.size).toBeGreaterThan(10);
  expect([...usual].filter((each) => / on\w+$|<(?:script|img|iframe|object|embed|link|form)>/.test(each))).toEqual([]);
}

it('what another program reads is as it was written', async () => {
  for (const evil of Object.values(HOSTILE).slice(0, THOROUGH ? undefined : 3)) {
    const { out } = await bookmatchIn({}, shopWith(evil), 'check', '--format', 'json');
    const { findings } = JSON.parse(out) as { findings: { file: string }[] };
    expect(findings.map(({ file }) => file)).toContain(`${inFileName(evil)}\n::error::forged\n.bookmatch`);
  }
});
