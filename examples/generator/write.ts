import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { generatedFiles } from './files';

// Run from the top folder after a build: node out/examples/generator/write.js
const folder = resolve('examples');
for (const [path, text] of generatedFiles()) writeFileSync(join(folder, path), text);
