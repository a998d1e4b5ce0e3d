/**
 * What woods are called: in the trade, in German, and the words that stand for several. A word that could be several leads to
 * each, the one most often meant first (common practice); Latin names are read from the library itself.
 */

/** By the word in small letters, its blanks and hyphens alike. */
const WOOD_WORDS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    spruce: ['sitka-spruce', 'norway-spruce', 'red-spruce', 'engelmann-spruce', 'white-spruce', 'lutz-spruce'],
    fichte: ['norway-spruce', 'sitka-spruce', 'engelmann-spruce'],
    alpenfichte: ['norway-spruce'],
    haselfichte: ['norway-spruce'],
    bergfichte: ['norway-spruce'],
    sitkafichte: ['sitka-spruce'],
    'sitka-fichte': ['sitka-spruce'],
    engelmannfichte: ['engelmann-spruce'],
    'engelmann-fichte': ['engelmann-spruce'],
    rotfichte: ['red-spruce', 'norway-spruce'],
    european: ['norway-spruce'],
    'euro-spruce': ['norway-spruce'],
    'italian-spruce': ['norway-spruce'],
    'swiss-spruce': ['norway-spruce'],
    'bosnian-spruce': ['norway-spruce'],
    alpine: ['norway-spruce'],
    adirondack: ['red-spruce'],
    adi: ['red-spruce'],
    addy: ['red-spruce'],
    appalachian: ['red-spruce'],
    zeder: ['western-redcedar', 'yellow-cedar', 'port-orford-cedar'],
    'red-cedar': ['western-redcedar'],
    'western-red-cedar': ['western-redcedar'],
    rotzeder: ['western-redcedar'],
    riesenlebensbaum: ['western-redcedar'],
    wrc: ['western-redcedar'],
    cedar: ['western-redcedar', 'yellow-cedar', 'port-orford-cedar', 'spanish-cedar'],
    poc: ['port-orford-cedar'],
    mammutbaum: ['redwood'],
    douglasie: ['douglas-fir'],
    zypresse: ['mediterranean-cypress', 'yellow-cedar'],
    maple: ['sugar-maple', 'bigleaf-maple', 'red-maple'],
    ahorn: ['sugar-maple', 'bigleaf-maple', 'red-maple'],
    'flamed-maple': ['sugar-maple', 'bigleaf-maple'],
    'curly-maple': ['sugar-maple', 'bigleaf-maple'],
    'tiger-maple': ['sugar-maple', 'red-maple'],
    'fiddleback-maple': ['sugar-maple', 'bigleaf-maple'],
    riegelahorn: ['sugar-maple', 'bigleaf-maple'],
    mahagoni: ['true-mahogany', 'african-mahogany'],
    mahogany: ['true-mahogany', 'african-mahogany'],
    'genuine-mahogany': ['true-mahogany'],
    'cuban-mahogany': ['true-mahogany'],
    rosewood: ['indian-rosewood', 'brazilian-rosewood', 'cocobolo'],
    palisander: ['indian-rosewood', 'brazilian-rosewood'],
    eir: ['indian-rosewood'],
    sonokeling: ['indian-rosewood'],
    'ostindischer-palisander': ['indian-rosewood'],
    'ostindisch-palisander': ['indian-rosewood'],
    'indischer-palisander': ['indian-rosewood'],
    'rio-palisander': ['brazilian-rosewood'],
    rio: ['brazilian-rosewood'],
    brw: ['brazilian-rosewood'],
    walnuss: ['black-walnut'],
    walnuß: ['black-walnut'],
    nussbaum: ['black-walnut'],
    nußbaum: ['black-walnut'],
    kirsche: ['black-cherry'],
    kirschbaum: ['black-cherry'],
    birke: ['yellow-birch'],
    esche: ['white-ash'],
    linde: ['basswood'],
    lime: ['basswood'],
    limewood: ['basswood'],
    erle: ['red-alder'],
    pappel: ['yellow-poplar'],
    ebenholz: ['african-ebony'],
    grenadill: ['african-blackwood'],
    blackwood: ['african-blackwood'],
    bubinga: ['bubinga'],
    padouk: ['african-padauk'],
    amarant: ['purpleheart'],
    sapeli: ['sapele'],
    'spanische-zeder': ['spanish-cedar'],
    zedrele: ['spanish-cedar'],
  }),
);

/** The species a word stands for, the one most often meant first; empty for a word that stands for none. */
export function speciesCalled(word: string): readonly string[] {
  return WOOD_WORDS.get(plainWoodName(word)) ?? [];
}

/** Every word there is, for what is nearly one of them. */
export function woodWords(): readonly string[] {
  return [...WOOD_WORDS.keys()];
}

/** The other words a species is found by. */
export function wordsForSpecies(species: string): readonly string[] {
  return [...WOOD_WORDS].flatMap(([word, meant]) => (meant[0] === species ? [word] : []));
}

/** `Western red cedar` and `western-red-cedar` are one name. */
export function plainWoodName(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
}
