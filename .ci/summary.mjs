// Closes a test run: the slowest tests, test files that reported nothing, and the counts alone on the last line.
// node .ci/summary.mjs REPORT STATUS [REPORT STATUS]…, where STATUS is the exit code of the command that wrote the report.
import { existsSync, readdirSync, readFileSync } from 'node:fs';

function testFiles(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return testFiles(path);
    return entry.name.endsWith('.test.ts') ? [`out/${path.replace(/\.ts$/, '.js')}`] : [];
  });
}

const runs = process.argv.slice(2);
const tests = [];
let failed = 0;
for (let i = 0; i < runs.length; i += 2) {
  const [file, status] = runs.slice(i, i + 2);
  if (!existsSync(file)) {
    console.log(`\nThe tests of ${file} did not start (their command ended with ${status}).`);
    failed += 1;
    continue;
  }
  const report = JSON.parse(readFileSync(file, 'utf8'));
  tests.push(...report.tests);
  if (report.failed === 0 && status !== '0') {
    console.log(`\nThe command of ${file} ended with ${status} although no test failed.`);
    failed += 1;
  }
}

console.log('\nSlowest tests');
for (const test of [...tests].sort((a, b) => b.milliseconds - a.milliseconds).slice(0, 10)) {
  console.log(`${String(test.milliseconds).padStart(7)} ms  ${test.title}`);
}

const reported = new Set(tests.map((test) => test.file));
for (const file of testFiles('tests').filter((file) => !reported.has(file))) {
  console.log(`Did not start: ${file}`);
  failed += 1;
}

const count = (outcome) => tests.filter((test) => test.outcome === outcome).length;
failed += count('failed');
console.log(`${count('passed')} passed, ${failed} failed, ${count('skipped')} skipped`);
process.exit(failed === 0 ? 0 : 1);
