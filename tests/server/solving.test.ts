/** Resonances come from a thread of their own: findings first, and what an editor shows is asked for anew when they are there. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CodeLensRequest, InlayHintRequest } from 'vscode-languageserver/node';
import { GetComparedModes, GetComparison } from '../../language/server/protocol.js';
import { ThreadWorker } from '../../language/server/thread-worker.js';
import { BRACED } from '../recipes/braced-shop.js';
import { type Editor, openEditor } from './client.js';

const URI = 'file:///shop/own.bookmatch';
const HELD = `recipe v-2 from v-1 {
  because "A heavier bridge, at the same pitch."
  change bridge.mass: by 5 g
  hold resonance.top by bracing.x-bass.height
}
`;
const folder = mkdtempSync(join(tmpdir(), 'solver-'));
let editor: Editor;

beforeAll(async () => {
  const script = join(folder, 'solver.cjs');
  await build({
    entryPoints: ['language/server/solver-thread.ts'],
    outfile: script,
    bundle: true,
    platform: 'node',
    format: 'cjs',
  });
  const refreshable = { refreshSupport: true };
  const workspace = { inlayHint: refreshable, codeLens: refreshable };
  const worker = new ThreadWorker(script);
  ({ editor } = await openEditor({ 'file:///shop/braced.bookmatch': BRACED, [URI]: HELD }, { worker, workspace }));
});
afterAll(async () => {
  expect(editor.log).toEqual([]);
  await editor.quit();
  rmSync(folder, { recursive: true });
});

const hints = async () => {
  const range = { start: { line: 0, character: 0 }, end: { line: 10, character: 0 } };
  const all = await editor.connection.sendRequest(InlayHintRequest.type, { textDocument: { uri: URI }, range });
  return all!.map(({ label }) => label as string);
};
const lens = async () => {
  const all = await editor.connection.sendRequest(CodeLensRequest.type, { textDocument: { uri: URI } });
  return all![0]!.command!.title;
};
const resonance = async () => {
  const table = await editor.connection.sendRequest(GetComparison, { a: 'v-1', b: 'v-2' });
  return table!.derived.find(({ path }) => path === 'resonance.air')!;
};
/** Asks until the answer is as wished. */
async function until<T>(ask: () => Promise<T>, isThere: (answer: T) => boolean): Promise<T> {
  for (;;) {
    const answer = await ask();
    if (isThere(answer)) return answer;
    await new Promise((later) => setTimeout(later, 20));
  }
}

describe('a solver on a thread of its own', () => {
  it(
    'lets the findings out first, then the height that a hold of a resonance comes to',
    { timeout: 60_000 },
    async () => {
      // The first round of findings has been, and nobody waited for it.
      expect(await hints()).toContain('being worked out');
      expect(editor.codes(URI)).not.toContain('hold-out-of-reach');
      const before = editor.outdated.hints;
      const solved = await until(hints, (all) => !all.includes('being worked out'));
      expect(solved).toContainEqual(expect.stringMatching(/^= 1\d\.\d+ mm ± \d+(\.\d+)? mm, was 15\.9 mm$/));
      expect(editor.outdated.hints).toBeGreaterThan(before);
      expect(editor.outdated.lenses).toBe(editor.outdated.hints);
    },
  );

  it('marks what is being worked out in a comparison, and says when it has come', { timeout: 60_000 }, async () => {
    await editor.settled(() => editor.open(URI, HELD.replace('by 5 g', 'by 8 g').replace(/hold .*\n/, '')));
    const first = await resonance();
    expect(first).toMatchObject({ pending: true, missing: [] });
    expect(first.difference).toBeUndefined();
    const last = await until(
      async () => {
        await editor.settled(() => undefined);
        return resonance();
      },
      ({ pending }) => !pending,
    );
    expect(last.a).toMatch(/ Hz$/);
    expect(last.difference).toMatch(/ Hz$/);
  });

  it('puts what can be told of a resonance into the lens', { timeout: 60_000 }, async () => {
    await editor.settled(() =>
      editor.type(URI, 2, HELD.replace(/change .*\n\s+hold .*/, 'change bracing.x-bass.height: by 3 mm')),
    );
    const before = editor.outdated.lenses;
    expect(await lens()).not.toContain(' Hz');
    await until(
      () => Promise.resolve(editor.outdated.lenses),
      (count) => count > before,
    );
    expect(await until(lens, (text) => text.includes(' Hz'))).toMatch(/main (air|top|back) \+\d/);
  });

  it('lays the modes of two over each other once both are worked out', { timeout: 60_000 }, async () => {
    const modes = () => editor.connection.sendRequest(GetComparedModes, { a: 'v-1', b: 'v-2', plate: 'top' });
    await editor.settled(() =>
      editor.type(URI, 3, HELD.replace(/change .*\n\s+hold .*/, 'change bridge.mass: by 9 g')),
    );
    // Nobody waits: what is known is there, and what is on its way is said to be.
    expect(await modes()).toMatchObject({
      state: 'waiting',
      a: { state: 'known' },
      b: { state: 'waiting', modes: [] },
    });
    const known = (await until(modes, (answer) => answer?.state === 'known'))!;
    expect(known.pairs[0]).toMatchObject({ a: 0, b: 0, word: 'lower' });
    expect(known.pairs[0]!.difference).toMatch(/^−\d/);
  });
});
