// Writes the TextMate grammar from the table of words: `npm run generate:colours`.
import { writeFileSync } from 'node:fs';
import { textMateGrammar } from './textmate-grammar.js';

const FILE = 'syntaxes/bookmatch.tmLanguage.json';
writeFileSync(FILE, `${JSON.stringify(textMateGrammar(), null, 2)}\n`);
console.log(`  ${FILE} written`);
