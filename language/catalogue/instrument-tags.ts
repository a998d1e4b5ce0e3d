/** The words that say which plausible ranges fit: of instruments, bodies and woods. */

export const INSTRUMENT_KINDS = ['steel-string', 'classical', 'flamenco', '12-string', 'baritone'] as const;
export const FORMS = ['parlor', 'size-0', 'size-00', 'om', 'dreadnought', 'jumbo', 'classical-body'] as const;

const IMPLIED: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries<readonly string[]>({
    parlor: ['steel-string'],
    'size-0': ['steel-string'],
    'size-00': ['steel-string'],
    om: ['steel-string'],
    dreadnought: ['steel-string'],
    jumbo: ['steel-string'],
    'classical-body': ['classical'],
    '12-string': ['steel-string'],
    baritone: ['steel-string'],
    flamenco: ['classical'],
    cocobolo: ['rosewood'],
    redwood: ['softwood'],
    'spanish-cedar': [],
  }),
);

/** A species named for its family. */
const FAMILIES: readonly (readonly [ending: string, ...implied: readonly string[]])[] = [
  ['spruce', 'spruce', 'softwood'],
  ['cedar', 'cedar', 'softwood'],
  ['rosewood', 'rosewood'],
  ['mahogany', 'mahogany'],
  ['maple', 'maple'],
  ['cypress', 'cypress'],
];

/** The tags given, with those they imply: `om` is a `steel-string`, `sitka-spruce` a `spruce`. Others are kept. */
export function impliedTags(tags: readonly string[]): ReadonlySet<string> {
  const all = new Set<string>();
  for (const tag of tags) {
    all.add(tag);
    const family = FAMILIES.find(([ending]) => tag.endsWith(ending));
    for (const implied of IMPLIED.get(tag) ?? family?.slice(1) ?? []) all.add(implied);
  }
  return all;
}
