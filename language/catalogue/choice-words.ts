/** Words of other shops and of German makers for a choice. Sources: common practice. */

/** By choice, wherever it can be chosen. */
const CHOICE_WORDS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    top: ['soundboard', 'decke', 'tops', 'front'],
    back: ['boden', 'backs'],
    sides: ['zargen', 'zarge', 'ribs', 'side'],
    'back-and-sides': ['boden-und-zargen', 'korpus', 'set', 'body'],
    brace: ['bracing', 'braces', 'strut', 'leiste', 'leisten', 'balken'],
    bridge: ['steg'],
    'bridge-plate': ['stegplatte', 'patch'],
    neck: ['hals', 'neck-blank'],
    fingerboard: ['fretboard', 'griffbrett'],
    lining: ['kerfing', 'linings', 'reifchen'],
    block: ['klotz', 'blocks'],
    binding: ['randeinlage', 'bindings'],
    veneer: ['furnier'],
    'steel-string': ['stahlsaiten', 'stahlsaiter', 'western', 'westerngitarre', 'steel', 'acoustic'],
    classical: ['konzertgitarre', 'klassisch', 'nylon', 'classic', 'spanish', 'konzert'],
    '12-string': ['twelve-string', 'zwölfsaitig', '12-saitig'],
    right: ['rechts', 'righty', 'rechtshänder', 'right-handed'],
    left: ['links', 'lefty', 'linkshänder', 'left-handed'],
    fan: ['fächer', 'faecher', 'fächerbeleistung'],
    ladder: ['leiter', 'leiterbeleistung', 'querbalken'],
    x: ['cross', 'kreuz', 'x-brace', 'kreuzbeleistung'],
    'double-x': ['xx', 'doppel-x'],
    lattice: ['gitter'],
    'french-polish': ['schellackpolitur', 'handpolitur'],
    shellac: ['schellack'],
    nitrocellulose: ['nitro', 'nitrolack', 'lacquer'],
    oil: ['öl', 'oel', 'tung-oil', 'leinöl', 'linseed-oil'],
    'oil-varnish': ['varnish', 'öllack'],
    waterborne: ['wasserlack', 'water-based', 'water-borne'],
    'polyurethane-two-pack': ['pu', 'polyurethane', '2k', 'two-pack', 'poly'],
    'uv-polyester': ['polyester', 'uv'],
    wax: ['wachs'],
    gloss: ['glänzend', 'hochglanz', 'glossy', 'high-gloss'],
    satin: ['seidenmatt'],
    matt: ['matte', 'flat', 'stumpfmatt'],
    none: ['keine', 'kein', 'without'],
    quartersawn: ['quarter', 'stehende-jahre', 'riegelschnitt', 'radial'],
    flatsawn: ['flat', 'flat-sawn', 'slab', 'liegende-jahre', 'plain-sawn'],
    riftsawn: ['rift'],
    split: ['riven', 'gespalten'],
    pin: ['pins', 'pinned', 'steckersteg'],
    'tie-block': ['knüpfsteg', 'tie', 'tied'],
    pinless: ['pin-less', 'through-bridge'],
    'double-action': ['dual', 'dual-action', 'two-way'],
    'single-action': ['single', 'one-way'],
    kerfed: ['kerf', 'kerfing'],
    'reverse-kerfed': ['reverse', 'reverse-kerf', 'reversed-kerfed'],
    bookmatched: ['bookmatch', 'book-matched', 'spiegelbildlich'],
    'one-piece': ['single-piece', 'einteilig'],
    parlor: ['parlour'],
    'size-0': ['0', 'o'],
    'size-00': ['00', 'oo', 'double-o'],
    om: ['000', 'orchestra', 'orchestra-model'],
    dreadnought: ['dread', 'd'],
    bolted: ['bolt'],
    strung: ['besaitet', 'strung-up'],
    'in-the-white': ['white', 'roh'],
    'free-plate': ['free', 'plate', 'freie-platte'],
    braced: ['beleistet'],
    yes: ['ja', 'true', 'y'],
    no: ['nein', 'false', 'n'],
    metric: ['mm', 'metrisch'],
    inch: ['inches', 'imperial', 'zoll'],
    steel: ['stahl'],
    nylon: ['konzert'],
    softwood: ['nadelholz'],
    hardwood: ['laubholz'],
    wood: ['holz'],
    parabolic: ['parabola', 'parabel'],
    rectangular: ['square', 'rechteckig'],
    triangular: ['triangle', 'dreieckig'],
    pyramid: ['pyramids', 'pyramide'],
    belly: ['bellied'],
    treble: ['diskant', 'high'],
    bass: ['low'],
    both: ['beide'],
  }),
);

/** The choice another word stands for, among those there are. */
export function choiceCalled(word: string, choices: readonly string[]): string | undefined {
  const low = word
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
  return (
    choices.find((choice) => choice.toLowerCase() === low) ??
    choices.find((choice) => CHOICE_WORDS.get(choice)?.includes(low)) ??
    // `x-bracing`, `fan-braced`, `reverse-kerfed-lining`: the choice and what it is of.
    choices.find((choice) =>
      new RegExp(`^${choice}-(?:brac\\w+|lining|finish|string\\w*|bridge|kind|pattern)$`).test(low),
    )
  );
}

/** The other words for a choice. */
export function wordsForChoice(choice: string): readonly string[] {
  return CHOICE_WORDS.get(choice) ?? [];
}
