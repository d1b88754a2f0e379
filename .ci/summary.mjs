// Closes a test run: the slowest tests, test files that reported nothing, and the counts alone on the last line.
// node .ci/summary.mjs REPORT STATUS, where STATUS is the exit code of the test command.
import { existsSync, readdirSync, readFileSync } from 'node:fs';

const [reportFile, status] = process.argv.slice(2);

function testFiles(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return testFiles(path);
    return entry.name.endsWith('.test.ts') ? [`out/${path.replace(/\.ts$/, '.js')}`] : [];
  });
}

function close(passed, failed, skipped) {
  console.log(`${passed} passed, ${failed} failed, ${skipped} skipped`);
  process.exit(failed === 0 ? 0 : 1);
}

if (!existsSync(reportFile)) {
  console.log(`\nThe tests did not start (the test command ended with ${status}).`);
  close(0, 1, 0);
}

const report = JSON.parse(readFileSync(reportFile, 'utf8'));
console.log('\nSlowest tests');
for (const test of [...report.tests].sort((a, b) => b.milliseconds - a.milliseconds).slice(0, 10)) {
  console.log(`${String(test.milliseconds).padStart(7)} ms  ${test.title}`);
}

const reported = new Set(report.tests.map((test) => test.file));
const silent = testFiles('tests').filter((file) => !reported.has(file));
for (const file of silent) console.log(`Did not start: ${file}`);
let failed = report.failed + silent.length;
if (failed === 0 && status !== '0') {
  console.log(`The test command ended with ${status} although no test failed.`);
  failed = 1;
}
close(report.passed, failed, report.skipped);
