/** What else a kind of definition is called. */

/** Other words for a kind of definition, in English and German. Sources: common practice. */
export const KIND_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries<readonly string[]>({
    recipe: ['rezept', 'receipt', 'variant', 'version', 'plan'],
    wood: ['holz', 'set', 'timber', 'billet', 'board', 'brett', 'woods'],
    species: ['holzart', 'specie'],
    model: ['modell', 'guitar', 'gitarre', 'design', 'body'],
    build: ['instrument', 'bau', 'built', 'instance', 'guitar-build'],
    rig: ['jig', 'prüfstand', 'vorrichtung', 'messvorrichtung'],
    strings: ['saiten', 'string', 'saitensatz', 'stringset', 'string-set'],
    appointments: ['ausstattung', 'options', 'appointment', 'trim', 'package'],
    order: ['auftrag', 'bestellung', 'commission', 'client'],
    shop: ['werkstatt', 'workshop', 'betrieb'],
  }).flatMap(([kind, words]) => words.map((word) => [word, kind] as const)),
);
