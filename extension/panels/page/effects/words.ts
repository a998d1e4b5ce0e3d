import type { Translator } from '../page.js';

export type EffectsWords = ReturnType<typeof effectsWords>;

/** Texts of the page, in the language of the editor. */
export function effectsWords(l10n: Translator) {
  return {
    title: l10n.t('What each change did: {0}'),
    gone: l10n.t('The model {0} is not in the open folders.'),
    print: l10n.t('Print'),
    printHint: l10n.t('To print this page, use the print command of your browser.'),
    fileName: l10n.t('What each change did, {0}.html'),
    changed: l10n.t('What was changed'),
    number: l10n.t('No.'),
    what: l10n.t('what'),
    step: l10n.t('step'),
    standing: l10n.t('can its effect be found?'),
    design: l10n.t('Build by build'),
    designCaption: l10n.t('A column for each change, by its number above. What is set bold was changed.'),
    build: l10n.t('build'),
    did: l10n.t('What each change did to {0}'),
    effect: l10n.t('effect, give or take'),
    computed: l10n.t('computed'),
    verdict: l10n.t('can it be told apart?'),
    plot: l10n.t('Effect of each change on {0}, on the noise floor. The table below says the same.'),
    axis: l10n.t('effect, in {0}'),
    axisBare: l10n.t('effect'),
    floorLegend: l10n.t('noise floor: what builds alike differ by anyway'),
    foundLegend: l10n.t('stands out of it'),
    hiddenLegend: l10n.t('does not'),
    computedLegend: l10n.t('computed for the same step'),
    meaning: l10n.t('How to read it, and what to change next'),
  };
}
