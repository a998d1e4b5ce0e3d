import { l10n, window } from 'vscode';
import { inMessage, type InstrumentEntry } from '../language/server/protocol.js';
import type { Instruments } from './folder-instruments.js';
import { pickInstrument } from './pick-instrument.js';

/** The instrument a command is about: the one named, else the one at the cursor, else whichever the maker picks. */
export async function chosenInstrument(instruments: Instruments, name: unknown): Promise<InstrumentEntry | undefined> {
  if (typeof name !== 'string') {
    const here = await instruments.atCursor(window.activeTextEditor);
    if (here) return here;
    const [own, others] = await instruments.parted(window.activeTextEditor);
    // A file that holds one leaves nothing to ask.
    return own.length === 1 ? own[0] : pickInstrument([...own, ...others], l10n.t('Which instrument?'));
  }
  const named = await instruments.named(name);
  if (!named) void window.showInformationMessage(inMessage(l10n.t('There is no {0} in the open folders.', name)));
  return named;
}
