/** Texts about modes, for every page that draws them. */
export type ModeWords = ReturnType<typeof modeWords>;

export function modeWords(l10n: { readonly t: (english: string) => string }) {
  return {
    mode: l10n.t('Mode'),
    modesTop: l10n.t('Modes of the top by itself'),
    modesBack: l10n.t('Modes of the back by itself'),
    mainMode: l10n.t('main resonance'),
    modesWaiting: l10n.t('Being worked out …'),
    modesWaitingAnew: l10n.t('Being worked out anew; the last ones are still shown.'),
    modesMissing: l10n.t('To work out the modes, these would have to be known: {0}.'),
    modesTrouble: l10n.t('The modes cannot be worked out: {0}'),
    modesCautionHinged: l10n.t(
      'A model: the edge is taken as hinged, with no air behind the plate. A real rim neither turns freely nor holds still, so compare recipes rather than trust a single figure.',
    ),
    modesCautionRim: l10n.t(
      'A model: the rim holds the edge as stiffly as the recipe says, with no air behind the plate. Compare recipes rather than trust a single figure.',
    ),
    asOne: l10n.t('all as one'),
    beside: l10n.t('bass side against treble side'),
    behind: l10n.t('tail end against neck end'),
    areas: l10n.t('{0} areas by turns'),
  };
}
