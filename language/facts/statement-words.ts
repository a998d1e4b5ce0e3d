/** Words that open a statement, when what follows fits. */
export const STATEMENT_WORDS: ReadonlySet<string> = new Set([
  'change',
  'add',
  'drop',
  'together',
  'hold',
  'expect',
  'with',
  'because',
  'note',
  'allow',
  'accept',
  'vary',
  'reading',
  'rework',
  'request',
  'mode',
]);
