/**
 * How long a hover waits while the server is at something long, through the server's own process. Counted is the time its
 * processor was at work between question and answer, so that whatever else the machine does is not counted in; where the system does not
 * say, the time on the clock. Needs the bundle, as the soak does.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  CodeLensRequest,
  DidChangeTextDocumentNotification,
  DidOpenTextDocumentNotification,
  HoverRequest,
} from 'vscode-languageserver/node';
import { afterEach, expect, it } from 'vitest';
import { LIMITS } from '../../language/facts/limits.js';
import { madeShop } from '../scale/made-shop.js';
import { ServerProcess } from '../soak/server-process.js';
import { THOROUGH } from '../thorough.js';

/** What is promised, s: of anything within the limits. */
const ANYTHING = 1;
/** Of the example shop, once it is read. */
const EXAMPLE = 0.2;

const folders: string[] = [];
const servers: ServerProcess[] = [];
afterEach(async () => {
  for (const server of servers.splice(0)) await server.quit();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

function folderOf(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), 'bookmatch-waiting-'));
  folders.push(folder);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

class Watch {
  private version = 1;
  private readonly uri: string;

  private constructor(
    private readonly server: ServerProcess,
    folder: string,
    file: string,
    private readonly text: string,
  ) {
    this.uri = pathToFileURL(join(folder, file)).href;
  }

  static async open(folder: string, file: string): Promise<Watch> {
    const server = await ServerProcess.start([pathToFileURL(folder).href]);
    servers.push(server);
    const watch = new Watch(server, folder, file, readFileSync(join(folder, file), 'utf8'));
    const textDocument = { uri: watch.uri, languageId: 'bookmatch', version: 1, text: watch.text };
    void server.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
    return watch;
  }

  /** A space at the beginning of a line. */
  type(line: number): void {
    const at = { line, character: 0 };
    const textDocument = { uri: this.uri, version: ++this.version };
    const contentChanges = [{ range: { start: at, end: at }, text: ' ' }];
    void this.server.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument,
      contentChanges,
    });
  }

  lenses(): Promise<unknown> {
    return this.server.connection.sendRequest(CodeLensRequest.type, { textDocument: { uri: this.uri } });
  }

  /** Hovers one after another until a round of findings is out: the longest that one waited, s. */
  async longestUntilChecked(what: string): Promise<number> {
    const { server } = this;
    const { rounds } = server;
    let [longest, hovers] = [0, 0];
    while (server.rounds === rounds) {
      longest = Math.max(longest, await this.hover());
      hovers++;
      await new Promise((go) => setTimeout(go, 5));
    }
    console.log(`${what}: ${hovers} hovers, the longest held up by ${Math.round(1000 * longest)} ms of work`);
    expect(server.faults).toEqual([]);
    return longest;
  }

  async hover(): Promise<number> {
    const [clock, cpu] = [performance.now(), this.server.cpu];
    await this.server.connection.sendRequest(HoverRequest.type, {
      textDocument: { uri: this.uri },
      position: { line: 3, character: 5 },
    });
    return cpu === undefined ? (performance.now() - clock) / 1000 : this.server.cpu! - cpu;
  }
}

it('on the example shop', { timeout: 60_000 }, async () => {
  const folder = folderOf({});
  cpSync('examples/hollin-reach', folder, { recursive: true });
  const watch = await Watch.open(folder, 'vennick.bookmatch');
  expect(await watch.longestUntilChecked('the example shop, opened')).toBeLessThan(ANYTHING);
  // Of the model, on which every recipe leans.
  watch.type(8);
  expect(await watch.longestUntilChecked('the example shop, typed in')).toBeLessThan(EXAMPLE);
});

it('500 recipes in one file, and their lenses', { timeout: 120_000 }, async () => {
  const files = Object.fromEntries([...madeShop(1, 500)].map(([uri, text]) => [uri.split('/').at(-1)!, text]));
  const watch = await Watch.open(folderOf(files), 'chain-0.bookmatch');
  expect(await watch.longestUntilChecked('500 recipes, opened')).toBeLessThan(ANYTHING);
  watch.type(20);
  const lenses = watch.lenses();
  expect(await watch.longestUntilChecked('500 recipes, typed in near the first')).toBeLessThan(ANYTHING);
  expect(await lenses).toHaveLength(500);
});

it.runIf(THOROUGH)('a file of two megabytes, with as many words as are read', { timeout: 120_000 }, async () => {
  const wood = (i: number) => `wood w-${i} is sitka-spruce {
  use: top  blank: 560 mm x 212 mm x 4.${10 + (i % 80)} mm  mass: 21${i % 10} g
  tap { along: 75.5 Hz  across: 120 Hz  twist: 52 Hz }
  note "${'x'.repeat(1000)}"
}\n`;
  const text = Array.from({ length: LIMITS.definitions }, (_, i) => wood(i)).join('\n');
  expect(text.length).toBeGreaterThan(2e6);
  const watch = await Watch.open(folderOf({ 'large.bookmatch': text }), 'large.bookmatch');
  expect(await watch.longestUntilChecked('two megabytes, opened')).toBeLessThan(ANYTHING);
  watch.type(5000);
  expect(await watch.longestUntilChecked('two megabytes, typed in')).toBeLessThan(ANYTHING);
});

it('three hundred braces', { timeout: 60_000 }, async () => {
  const braces = Array.from({ length: 300 }, (_, i) => {
    return `b-${i} { from: (${60 + i} mm, -40 mm)  to: (${60 + i} mm, 40 mm)  width: 5 mm  height: 8 mm }`;
  }).join('\n    ');
  const model = readFileSync('examples/hollin-reach/vennick.bookmatch', 'utf8').replace(
    /\bbracing \{/,
    `$&\n    ${braces}`,
  );
  const folder = folderOf({ 'vennick.bookmatch': model });
  for (const name of ['woods', 'shop', 'vennick-recipes'])
    cpSync(`examples/hollin-reach/${name}.bookmatch`, join(folder, `${name}.bookmatch`));
  const watch = await Watch.open(folder, 'vennick.bookmatch');
  expect(await watch.longestUntilChecked('300 braces, opened')).toBeLessThan(ANYTHING);
  watch.type(8);
  expect(await watch.longestUntilChecked('300 braces, typed in')).toBeLessThan(ANYTHING);
});

it.runIf(THOROUGH)('a chain of ten thousand recipes', { timeout: 300_000 }, async () => {
  const perFile = 1990;
  const files = Array.from({ length: 5 }, (_, f) => {
    const first = f === 0 ? 'model m { scale: 645 mm }\nrecipe r-0 for m { }\n' : '';
    const recipes = Array.from({ length: perFile }, (_, i) => {
      const at = f * perFile + i;
      return `recipe r-${at + 1} from r-${at} { top.thickness: 2.8 mm }`;
    });
    return [`chain-${f}.bookmatch`, `${first}${recipes.join('\n')}\n`] as const;
  });
  const watch = await Watch.open(folderOf(Object.fromEntries(files)), 'chain-0.bookmatch');
  expect(await watch.longestUntilChecked('a chain of 10,000, opened')).toBeLessThan(ANYTHING);
});
