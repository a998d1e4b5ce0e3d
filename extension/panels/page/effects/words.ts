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
    matrix: l10n.t('What each change did to each reading'),
    what: l10n.t('what'),
    on: l10n.t('{0} on {1}'),
    disagree: l10n.t('Builds and mechanics disagree'),
    asked: l10n.t('Is this right?'),
    shownAs: l10n.t('Shown as'),
    pictures: l10n.t('pictures'),
    tables: l10n.t('tables'),
    signTold: l10n.t('up or down, told apart'),
    signHidden: l10n.t('not distinguishable'),
    signDisagrees: l10n.t('builds and mechanics disagree'),
    signTangled: l10n.t('these builds cannot tell it from others'),
    signEmpty: l10n.t('Empty: nothing was read.'),
    computed: l10n.t('computed'),
    alone: l10n.t('builds alone'),
    together: l10n.t('together'),
    verdict: l10n.t('can it be told apart?'),
    beforeAndAfter: l10n.t('Read before and after on one instrument, the strongest evidence there is: {0}.'),
    intervalsPlot: l10n.t('{0}: computed, builds alone and together, each with its interval.'),
    axis: l10n.t('effect, in {0}'),
    series: l10n.t('Along the series'),
    runPlot: l10n.t('{0}, build by build, with what is computed.'),
    runLegend: l10n.t(
      'Read in {0}, with what instruments built alike differ by; the line is computed; a tick below: a change came in.',
    ),
    predicted: l10n.t('Computed and read'),
    calibration: l10n.t('What is read is {0} times what is computed, by {1} builds; about that it scatters by {2} %.'),
    factorHelps: l10n.t('Foretelling each build by the others’ factor comes nearer than the computed value by itself.'),
    factorDoesNotHelp: l10n.t(
      'Foretelling each build by the others’ factor comes no nearer than the computed value by itself.',
    ),
    noCalibration: l10n.t('Nothing of the kind is computed for three builds or more.'),
    calibrationPlot: l10n.t('{0}: read against computed.'),
    computedAxis: l10n.t('computed, in {0}'),
    calibrationLegend: l10n.t('Read upwards, computed across. Grey: both the same; black: the shop’s own line.'),
    builds: l10n.t('Its builds'),
    build: l10n.t('build'),
    occasion: l10n.t('occasion'),
    read: l10n.t('read'),
    cameIn: l10n.t('came in with it'),
    keptOut: l10n.t('kept out'),
    standing: l10n.t('can its effect be found?'),
    step: l10n.t('step'),
    changed: l10n.t('What was changed'),
    meaning: l10n.t('How to read it, and what to change next'),
  };
}
