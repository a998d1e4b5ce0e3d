/** The severity of each finding can be set, and set anew. */
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import {
  type CodeAction,
  CodeActionRequest,
  CodeLensRequest,
  type Diagnostic,
  DiagnosticSeverity,
  InlayHintRequest,
} from 'vscode-languageserver/node';
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

describe('how much is said', () => {
  const severitiesOf = (uri: string) => (editor.published.get(uri)?.diagnostics ?? []).map(({ severity }) => severity);
  const everywhere = () => Object.keys(FILES).flatMap(severitiesOf);
  const talk = async (level: unknown, severity?: unknown) => {
    const settings = { 'bookmatch.talk': level, 'bookmatch.severity': severity };
    ({ editor } = await openEditor(FILES, { workspace: CAN, settings }));
  };

  it('usually: errors, warnings, remarks, and hints as hints', async () => {
    await talk(undefined);
    expect(everywhere()).toContain(DiagnosticSeverity.Hint);
    expect(everywhere()).toContain(DiagnosticSeverity.Warning);
  });

  it('quiet: what is wrong and nothing else; what is set for one code stands before it', async () => {
    await talk('quiet', { substitution: 'hint' });
    expect(new Set(everywhere())).not.toContain(DiagnosticSeverity.Information);
    expect(everywhere()).toContain(DiagnosticSeverity.Warning);
    const hints = [...editor.published.values()].flatMap(({ diagnostics }) =>
      diagnostics.filter(({ severity }) => severity === DiagnosticSeverity.Hint).map(({ code }) => code),
    );
    expect(new Set(hints)).toEqual(new Set(hints.length > 0 ? ['substitution'] : []));
  });

  it('everything: hints stand in the list like remarks, and go back when it is set anew', async () => {
    await talk('everything');
    expect(everywhere()).not.toContain(DiagnosticSeverity.Hint);
    expect(everywhere()).toContain(DiagnosticSeverity.Information);
    editor.settings['bookmatch.talk'] = 'usual';
    await editor.settled(() => editor.configured());
    expect(everywhere()).toContain(DiagnosticSeverity.Hint);
  });
});

it('lenses and hints behind the lines can be switched off, and the editor asks for them anew', async () => {
  await start();
  const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
  const shown = async () => {
    const textDocument = { uri: LINE_URI };
    const lenses = await editor.connection.sendRequest(CodeLensRequest.type, { textDocument });
    const hints = await editor.connection.sendRequest(InlayHintRequest.type, { textDocument, range: whole });
    return { lenses: (lenses ?? []).length > 0, hints: (hints ?? []).length > 0 };
  };
  expect(await shown()).toEqual({ lenses: true, hints: true });
  editor.settings['bookmatch.lenses'] = false;
  await editor.settled(() => editor.configured());
  expect(await shown()).toEqual({ lenses: false, hints: true });
  editor.settings['bookmatch.hints'] = false;
  await editor.settled(() => editor.configured());
  expect(await shown()).toEqual({ lenses: false, hints: false });
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
