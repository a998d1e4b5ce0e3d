// Writes the TextMate grammar from the table of words: `npm run generate:colours`.
import { generateFile } from '../language/disk/generated-file.js';
import { textMateGrammar } from './textmate-grammar.js';

const FILE = 'syntaxes/bookmatch.tmLanguage.json';
await generateFile(FILE, () => `${JSON.stringify(textMateGrammar(), null, 2)}\n`);
console.log(`  ${FILE} written`);
