import assert from 'node:assert/strict';
import { codeLenses, showCurvesCommand } from '../../server/src/features/lenses';
import { defaultSettings } from '../../server/src/features/settings';
import { bench } from './support/fixture';
import { inventedFiles, inventedHead } from './support/invented';

describe('code lenses', () => {
  const source = `# above\n${inventedHead}step First 200..420 °C\nstep Second 400..560 °C\n`;

  it('are off by default', async () => {
    const b = bench(source, inventedFiles);
    await b.settled();
    assert.deepEqual(codeLenses(b.workspace, await b.document()), []);
  });

  it('lead to the curves and count what there is, above the first statement', async () => {
    const b = bench(source, inventedFiles);
    b.workspace.setSettings(b.uri, { ...defaultSettings, lenses: true });
    const early = codeLenses(b.workspace, await b.document());
    assert.deepEqual(
      early.map((l) => l.command?.title),
      ['Show curves'],
    );
    await b.settled();
    const [curves, counts] = codeLenses(b.workspace, await b.document());
    assert.deepEqual(curves?.command, { title: 'Show curves', command: showCurvesCommand, arguments: [b.uri] });
    assert.equal(curves?.range.start.line, 1);
    const { snapshot } = b.workspace.results(b.uri)!;
    const findings = snapshot.findings.filter((f) => f.allowed === null).length;
    assert.equal(counts?.command?.title, `${snapshot.results.length} results, ${findings} findings`);
    b.workspace.change(b.uri, 2, [{ text: `${source}# later\n` }]);
    assert.match(codeLenses(b.workspace, await b.document())[1]!.command!.title, / \(stale\)$/);
  });

  it('of a method lead to its curves, of an empty text nowhere', async () => {
    for (const [text, titles] of [
      ['method "M"\nstep A 1..2 °C\n', ['Show curves']],
      ['', []],
    ] as const) {
      const b = bench(text, inventedFiles);
      b.workspace.setSettings(b.uri, { ...defaultSettings, lenses: true });
      await b.settled();
      assert.deepEqual(
        codeLenses(b.workspace, await b.document()).map((l) => l.command?.title),
        titles,
      );
    }
  });
});
