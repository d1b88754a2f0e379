import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { readCommandLine } from '../../server/src/cli/commandLine';

function calls(path: string, start: RegExp): string[] {
  return [...readFileSync(path, 'utf8').matchAll(start)].map((m) => m[1].trim());
}

describe('the hooks and the example workflow', () => {
  const hooks = calls('.pre-commit-hooks.yaml', /entry: thermogloss (.*)/g).map((c) => `${c} a.gloss`);
  const steps = calls('examples/workflow/glosses.yml', /npx thermogloss ([^|>\n]*)/g);

  it('call commands with options that exist', () => {
    assert.equal(hooks.length, 2);
    for (const call of [...hooks, ...steps]) {
      const words = call.split(/\s+/).map((w) => w.replaceAll('"', ''));
      assert.equal(readCommandLine(words).wants, 'run', call);
    }
  });

  it('annotate the change and show what moved since the merge base', () => {
    assert.ok(steps.some((s) => /^check .*--format github$/.test(s)));
    assert.ok(steps.some((s) => /^diff .*--merge-base --format markdown$/.test(s)));
  });
});
