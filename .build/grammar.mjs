// Writes the grammar and the language configuration into syntaxes/, from the vocabulary as it was built last. A test
// says where the committed files are not what this writes.
import { writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const { generateGrammar } = require('../out/server/src/language/grammar/grammar.js');
const { generateLanguageConfiguration } = require('../out/server/src/language/grammar/languageConfiguration.js');
const write = (name, value) => writeFileSync(`syntaxes/${name}`, `${JSON.stringify(value, null, 2)}\n`);
write('gloss.tmLanguage.json', generateGrammar());
write('language-configuration.json', generateLanguageConfiguration());
