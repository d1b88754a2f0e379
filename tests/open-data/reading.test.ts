import assert from 'node:assert/strict';
import { readdirSync, statSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { Engine } from '../../server/src/engine/engine';
import { NodeHost } from '../../server/src/host/nodeHost';
import { needOpenData } from '../support/reference';

/** Every delimited run file of the folder; side files that hold one number a line are no runs. */
function runFiles(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return runFiles(path);
    return /\.csv$/.test(name) || /^expdata_no\d+\.txt$/.test(name) ? [path] : [];
  });
}

describe('every delimited run file of the open data', function () {
  this.timeout(120_000);

  it('is read, or refused with a finding that says exactly what to write, and then read', async function () {
    const folder = needOpenData(this);
    const host = new NodeHost(folder);
    const files = runFiles(folder);
    assert.ok(files.length > 150, `${files.length} files`);
    const failures: string[] = [];
    let written = 0;
    for (const file of files) {
      const engine = new Engine(host);
      const gloss = join(file, '..', 'test.gloss');
      let text = `run "${basename(file)}"\n`;
      // One answer may uncover the next question: a file without a header lacks every column.
      for (let answers = 0; answers < 4; answers++) {
        const s = await engine.evaluate(gloss, text);
        if (s.run !== null) break;
        const finding = s.findings.find((f) => f.code === 'column-unclear');
        const edit = finding?.fixes[0]?.edits[0];
        if (finding === undefined || edit === undefined) break;
        assert.ok(finding.message.includes(edit.text.trim().split('\n')[1].trim()), `${file}: ${finding.message}`);
        text = text.slice(0, edit.span.start) + edit.text + text.slice(edit.span.end);
        if (answers === 0) written++;
      }
      const s = await engine.evaluate(gloss, text);
      if (s.run === null || s.run.points < 20) {
        failures.push(`${relative(folder, file)}: ${s.findings.map((f) => f.message).join(' ')}`);
      }
    }
    if (process.env.GLOSS_SHOW_FINDINGS !== undefined) console.log(`${files.length} files, ${written} after an answer`);
    assert.deepEqual(failures, []);
    // Headerless and unit-less files cannot be decided, so some must have asked.
    assert.ok(written > 40, `${written} files asked`);
  });
});
