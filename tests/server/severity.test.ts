/** The severity of each finding can be set, and set anew. */
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { type CodeAction, CodeActionRequest, type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver/node';
import { readSeverities, severitySchema } from '../../language/server/severity-setting.js';
import { type Editor, openEditor, placeOf } from './client.js';
import { LINE, LINE_URI, SHOP } from './shop.js';

const TWO = LINE.replace(
  'change bridge.mass: 27 g -> 22 g',
  'change bridge.mass: 27 g -> 22 g\n  top.thickness: 2.6 mm',
);
const FILES = { ...SHOP, [LINE_URI]: TWO };
const CAN = { configuration: true, didChangeConfiguration: { dynamicRegistration: true } };

let editor: Editor;
async function start(severity?: unknown) {
  const settings = { 'bookmatch.severity': severity };
  ({ editor } = await openEditor(FILES, { workspace: CAN, settings }));
}
afterEach(async () => {
  expect(editor.log).toEqual([]);
  await editor.quit();
});

const severityOf = (code: string) =>
  editor.published.get(LINE_URI)?.diagnostics.find((one: Diagnostic) => one.code === code)?.severity;

it('stands before the rule’s own from the first findings on', async () => {
  await start({ 'too-many-changes': 'error', 'silent-override': 'off' });
  expect(severityOf('too-many-changes')).toBe(DiagnosticSeverity.Error);
  expect(editor.codes(LINE_URI)).not.toContain('silent-override');
});

it('is taken up at once when it is set anew, in every file, and taken back', async () => {
  await start();
  expect(severityOf('too-many-changes')).toBe(DiagnosticSeverity.Warning);
  expect(editor.codes(LINE_URI)).toContain('silent-override');
  editor.settings['bookmatch.severity'] = { 'too-many-changes': 'hint', 'silent-override': 'off' };
  await editor.settled(() => editor.configured());
  expect(severityOf('too-many-changes')).toBe(DiagnosticSeverity.Hint);
  expect(editor.codes(LINE_URI)).not.toContain('silent-override');
  editor.settings['bookmatch.severity'] = {};
  await editor.settled(() => editor.configured());
  expect(severityOf('too-many-changes')).toBe(DiagnosticSeverity.Warning);
  expect(editor.codes(LINE_URI)).toContain('silent-override');
});

it('a finding that is off has no fixes either', async () => {
  const at = placeOf(TWO, 'top.thickness: 2.6');
  const mended = async () => {
    const actions = await editor.connection.sendRequest(CodeActionRequest.type, {
      textDocument: { uri: LINE_URI },
      range: { start: at, end: at },
      context: { diagnostics: [], only: ['quickfix'] },
    });
    return (actions as CodeAction[]).flatMap(({ diagnostics }) => (diagnostics ?? []).map(({ code }) => code));
  };
  await start();
  expect(await mended()).toContain('silent-override');
  editor.settings['bookmatch.severity'] = { 'silent-override': 'off' };
  await editor.settled(() => editor.configured());
  expect(await mended()).not.toContain('silent-override');
});

it('an editor without settings gets every finding as it is', async () => {
  ({ editor } = await openEditor(FILES));
  expect(severityOf('too-many-changes')).toBe(DiagnosticSeverity.Warning);
});

describe('whatever stands in the settings', () => {
  it('only codes and severities that exist count', async () => {
    await start();
    expect(readSeverities({ 'too-many-changes': 'off', implausible: 'loud', nonsense: 'off', 'no-change': 3 })).toEqual(
      new Map([['too-many-changes', 'off']]),
    );
    for (const setting of [null, undefined, 'off', 7, ['off'], {}]) expect(readSeverities(setting)).toEqual(new Map());
  });
});

it('the manifest names every code there is; `npm run generate:settings` writes them', async () => {
  await start();
  const manifest = JSON.parse(readFileSync('package.json', 'utf8')) as {
    contributes: { configuration: { properties: Record<string, Record<string, unknown>> } };
  };
  const { propertyNames, additionalProperties } = manifest.contributes.configuration.properties['bookmatch.severity']!;
  expect({ propertyNames, additionalProperties }).toEqual(severitySchema());
});
