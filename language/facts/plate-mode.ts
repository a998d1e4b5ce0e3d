/**
 * Modes of a free plate by their nodal lines, as makers and papers name them: first the lines that run along the grain, then those
 * that run across it. The three every maker taps have words of their own: (0,2) is `along`, (2,0) `across`, (1,1) `twist`.
 */
export interface PlateMode {
  readonly linesAlong: number;
  readonly linesAcross: number;
}

/** More lines than these no tap tells apart: the modes lie closer than a blank's own unevenness moves them. */
export const MOST_LINES_ALONG = 3;
export const MOST_LINES_ACROSS = 5;

const OWN_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries({ '0-2': 'along', '2-0': 'across', '1-1': 'twist' }),
);

/** The word of a mode below `tap`: `twist`, or `mode-2-1`. */
export function modeWord({ linesAlong, linesAcross }: PlateMode): string {
  const lines = `${linesAlong}-${linesAcross}`;
  return OWN_WORDS.get(lines) ?? `mode-${lines}`;
}

/** The mode a word below `tap` stands for, whether there is such a mode or not. */
export function modeOfWord(word: string): PlateMode | undefined {
  const lines = [...OWN_WORDS].find(([, own]) => own === word)?.[0] ?? /^mode-(\d+-\d+)$/.exec(word)?.[1];
  if (lines === undefined) return undefined;
  const [linesAlong, linesAcross] = lines.split('-').map(Number) as [number, number];
  return { linesAlong, linesAcross };
}

/** `(2,1)` */
export function writeMode({ linesAlong, linesAcross }: PlateMode): string {
  return `(${linesAlong},${linesAcross})`;
}

/** As it is written: `tap.mode-2-1` is `mode (2,1)`; any other path is itself. */
export function tapAsWritten(path: string): string {
  const word = path.startsWith('tap.mode-') ? path.slice('tap.'.length) : undefined;
  const mode = word === undefined ? undefined : modeOfWord(word);
  return mode ? `mode ${writeMode(mode)}` : path;
}

/** With fewer than two lines a free plate does not bend: it moves or tilts as a whole, and rings at nothing. */
export function isHeard({ linesAlong, linesAcross }: PlateMode): boolean {
  return linesAlong + linesAcross >= 2 && linesAlong <= MOST_LINES_ALONG && linesAcross <= MOST_LINES_ACROSS;
}

/** All that can be heard, by their number of lines. */
export const PLATE_MODES: readonly PlateMode[] = Array.from({ length: MOST_LINES_ALONG + 1 }, (_, linesAlong) =>
  Array.from({ length: MOST_LINES_ACROSS + 1 }, (__, linesAcross) => ({ linesAlong, linesAcross })),
)
  .flat()
  .filter(isHeard)
  .sort((a, b) => a.linesAlong + a.linesAcross - (b.linesAlong + b.linesAcross) || b.linesAcross - a.linesAcross);
