/**
 * Who may lean on whom: quantities <- facts, mechanics <- recipes <- checks <- reports <- editing, sheets <- server, cli.
 * Run by `npm run lint`; a forbidden import fails it.
 */

/** What everything that answers a person may lean on. */
const HOUSE = ['wording', 'quantities', 'facts', 'catalogue', 'mechanics', 'recipes', 'checks', 'reports'];

/** Each part of the language, and the other parts it may import from. */
const MAY_USE = {
  wording: [],
  quantities: ['wording'],
  facts: ['quantities'],
  catalogue: ['wording', 'quantities', 'facts'],
  mechanics: ['wording', 'quantities'],
  grammar: ['wording', 'quantities', 'facts'],
  recipes: ['wording', 'quantities', 'facts', 'catalogue', 'mechanics'],
  checks: ['wording', 'quantities', 'facts', 'catalogue', 'mechanics', 'recipes'],
  disk: ['wording', 'recipes'],
  reports: ['wording', 'quantities', 'facts', 'catalogue', 'mechanics', 'recipes', 'checks'],
  editing: ['wording', 'quantities', 'facts', 'catalogue', 'mechanics', 'recipes', 'checks', 'reports'],
  sheets: ['wording', 'quantities', 'facts', 'catalogue', 'mechanics', 'recipes', 'checks', 'reports'],
  server: [...HOUSE, 'editing', 'sheets', 'disk', 'shop\\.ts'],
  cli: [...HOUSE, 'editing', 'sheets', 'disk', 'shop\\.ts'],
};

/** Who may use grammar/ is a rule of its own, below. */
const directions = Object.entries(MAY_USE).map(([part, others]) => ({
  name: `${part}-leans-only-on-what-lies-below`,
  comment: `language/${part} may import from: ${others.join(', ') || 'nothing else in language/'}.`,
  severity: 'error',
  from: {
    path: `^language/${part}/`,
    pathNot: part === 'recipes' ? '^language/recipes/shelf/(?:value-)?reader\\.ts$' : undefined,
  },
  to: {
    path: '^language/',
    pathNot: `^language/(${[part, 'grammar', ...others].map((each) => (each.includes('.') ? `${each}$` : `${each}/`)).join('|')})`,
  },
}));

module.exports = {
  forbidden: [
    ...directions,
    {
      name: 'reader-is-the-narrow-way-to-the-grammar',
      comment: 'Only language/recipes/shelf/reader.ts, with value-reader.ts beside it, turns syntax into facts.',
      severity: 'error',
      from: { path: '^language/', pathNot: '^language/(grammar/|recipes/shelf/(?:value-)?reader\\.ts$)' },
      to: { path: '^language/grammar/' },
    },
    {
      name: 'reader-knows-facts-and-grammar-only',
      severity: 'error',
      from: { path: '^language/recipes/shelf/(?:value-)?reader\\.ts$' },
      to: { path: '^language/', pathNot: '^language/(wording|quantities|facts|catalogue|mechanics|recipes|grammar)/' },
    },
    {
      name: 'statistics-know-no-recipe',
      comment: 'Numbers in, numbers out: what is known of builds stands beside this folder, not in it.',
      severity: 'error',
      from: { path: '^language/recipes/builds/statistics/' },
      to: { path: '^language/', pathNot: '^language/recipes/builds/statistics/' },
    },
    {
      name: 'language-heart-knows-no-editor',
      comment: 'Plain data in, plain data out: no VS Code or language server package, nothing of Node.',
      severity: 'error',
      from: {
        path: '^language/(wording|quantities|facts|catalogue|mechanics|grammar|recipes|checks|reports|editing|sheets)/',
      },
      to: { path: '(^|node_modules/)(vscode|vscode-[^/]+)(/|$)' },
    },
    {
      name: 'language-heart-runs-anywhere',
      comment: 'The same code runs in Node and in a browser worker.',
      severity: 'error',
      from: {
        path: '^language/(wording|quantities|facts|catalogue|mechanics|grammar|recipes|checks|reports|editing)/',
        pathNot: '^language/wording/translation-files\\.ts$',
      },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'one-way-to-the-disk',
      comment:
        'Files are read and written by language/disk/; the editor writes by VS Code alone (WorkspaceEdit, workspace.fs).',
      severity: 'error',
      from: {
        path: '^(extension|syntaxes|language/(sheets|server|cli))/',
        // What packs the extension runs on our machine; the terminal watches, and writes to standard output.
        pathNot: '^extension/packaging/|^language/cli/(disk|standard-output)\\.ts$',
      },
      to: { path: '^(node:)?(fs|fs/promises|child_process)$' },
    },
    {
      name: 'syntax-tree-stays-in-the-grammar',
      comment: 'Langium is known to grammar/ and to the reader; the server uses the protocol packages directly.',
      severity: 'error',
      from: { path: '^(language|extension)/', pathNot: '^language/(grammar/|recipes/shelf/(?:value-)?reader\\.ts$)' },
      to: { path: 'node_modules/(langium|chevrotain)' },
    },
    {
      name: 'extension-knows-the-protocol-only',
      severity: 'error',
      from: { path: '^extension/' },
      to: { path: '^language/', pathNot: '^language/server/protocol\\.ts$' },
    },
    {
      name: 'pages-know-messages-only',
      comment:
        'A page of a panel runs in a browser frame: no VS Code, and of the extension and the language types alone.',
      severity: 'error',
      from: { path: '^extension/panels/page/' },
      to: {
        path: ['^language/', '^extension/', '^vscode$', 'node_modules/vscode'],
        pathNot: ['^extension/panels/page/', '^extension/panels/[a-z-]*messages\\.ts$'],
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'pages-know-types-of-the-protocol-only',
      severity: 'error',
      from: { path: ['^extension/panels/page/', '^extension/panels/[a-z-]*messages\\.ts$'] },
      to: { path: '^language/', pathNot: '^language/server/protocol\\.ts$' },
    },
    {
      name: 'language-knows-no-extension',
      severity: 'error',
      from: { path: '^language/' },
      to: { path: '^(extension|tests|syntaxes|examples)/' },
    },
    {
      name: 'protocol-stands-alone',
      comment: 'Whatever protocol.ts imports would travel into the extension, unless it is a type.',
      severity: 'error',
      from: { path: '^language/server/protocol\\.ts$' },
      to: { path: '^language/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'no-cycles',
      comment:
        'Of types neither: what a question, a reply and a part are stands in a file of types below those who use it.',
      severity: 'error',
      from: { pathNot: '/generated/' },
      to: { circular: true },
    },
    {
      name: 'nothing-missing',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '^(vscode|.*[?]raw)$' },
    },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.js', '.mjs', '.cjs', '.json'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
