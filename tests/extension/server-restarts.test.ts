/** A server that ends is started again; one that ends at once each time is given up, and the person can start it. */
import { beforeEach, expect, it, vi } from 'vitest';
import { registerRestart, ServerRestarts } from '../../extension/server-restarts.js';

const editor = vi.hoisted(() => ({
  window: { showErrorMessage: vi.fn() },
  commands: { executeCommand: vi.fn(), registerCommand: vi.fn() },
}));
vi.mock('vscode', () => ({ ...editor, l10n: { t: (text: string, n?: number) => text.replace('{0}', String(n)) } }));
vi.mock('vscode-languageclient', () => ({
  CloseAction: { DoNotRestart: 1, Restart: 2 },
  ErrorAction: { Continue: 1, Shutdown: 2 },
  State: { Stopped: 1, Running: 2, Starting: 3 },
}));

const { window, commands } = editor;
beforeEach(() => {
  vi.useFakeTimers();
  for (const each of [window.showErrorMessage, commands.executeCommand, commands.registerCommand]) each.mockReset();
  return () => vi.useRealTimers();
});

it('after the fifth end within minutes it is given up in a sentence with a button, and the button restarts', async () => {
  const restarts = new ServerRestarts();
  window.showErrorMessage.mockImplementation((_: string, button: string) => Promise.resolve(button));
  for (let end = 1; end <= 4; end++) expect(restarts.closed()).toEqual({ action: 2 });
  expect(window.showErrorMessage).not.toHaveBeenCalled();
  // Handled: the client's own message in English would say it once more.
  expect(restarts.closed()).toEqual({ action: 1, handled: true });
  expect(window.showErrorMessage).toHaveBeenCalledWith(expect.stringContaining('has ended 5 times'), 'Restart');
  await vi.waitFor(() => expect(commands.executeCommand).toHaveBeenCalledWith('bookmatch.restart'));
});

it('one that ends now and then is started each time', () => {
  const restarts = new ServerRestarts();
  for (let end = 0; end < 20; end++) {
    expect(restarts.closed()).toEqual({ action: 2 });
    vi.advanceTimersByTime(60_000);
  }
});

it.each([
  [2, ['stop', 'start']],
  [1, ['start']],
] as const)('the command, with the client in state %i, carries out %j', async (state, wanted) => {
  const silent = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  const done: string[] = [];
  const note = (what: string) => vi.fn(() => Promise.resolve(void done.push(what)));
  const client = { state, stop: note('stop'), start: note('start') };
  registerRestart(client as unknown as Parameters<typeof registerRestart>[0]);
  const carryOut = commands.registerCommand.mock.calls[0]![1] as () => Promise<void>;
  await carryOut();
  expect(done).toEqual(wanted);
  client.start.mockRejectedValue(new Error('no'));
  await carryOut();
  expect(window.showErrorMessage).toHaveBeenCalledTimes(1);
  silent.mockRestore();
});
