import assert from 'node:assert/strict';
import { commands, extensions, Position, Uri, type DocumentSymbol, type Hover, type MarkdownString } from 'vscode';
import type { Observation } from '../../client/src/observation';
import { entryInUse } from './support/entry';
import { closeAll, codes, hints, inFolder, observed, openGloss, read, until, write } from './support/extension';
import { current, showCurves, watch } from './support/views';

// These hold with either entry of the manifest: for Node and for a browser's worker.
describe('the extension', () => {
  const id = 'thermogloss.thermogloss';

  after(closeAll);

  it('runs in the host that its manifest names an entry for', () => {
    const { main, browser } = extensions.getExtension(id)!.packageJSON as { main?: string; browser?: string };
    assert.equal(main === undefined, entryInUse === 'browser');
    assert.equal(browser === undefined, entryInUse === 'main');
  });

  it('wakes up when a gloss is opened', async () => {
    const { document } = await openGloss('vq217-1.gloss');
    assert.equal(document.languageId, 'gloss');
    await until('the extension to be active', () => extensions.getExtension(id)!.isActive);
    // One whose start failed counts as active too, but gives nothing out.
    assert.notEqual(extensions.getExtension(id)!.exports, undefined);
  });

  it('shows results in the text that agree with what was put into the example within 3 u', async () => {
    const { document } = await openGloss('vq217-1.gloss');
    const truth = JSON.parse(await read(inFolder('truth.json'))) as { runs: Record<string, { dolomite: number }> };
    const shown = await until('results in the text', async () => {
      const labels = (await hints(document)).map(({ label }) =>
        typeof label === 'string' ? label : label.map((part) => part.value).join(''),
      );
      // `require dolomite in 60..65 %` is the first of the requirements.
      return labels.map((label) => /^met: ([\d.]+) ± ([\d.]+) %/.exec(label.trim())).find((found) => found !== null);
    });
    const [value, uncertainty] = [Number(shown[1]), Number(shown[2])];
    assert.ok(Math.abs(value - truth.runs['vq217-1']!.dolomite) <= 3 * uncertainty, shown[0]);
  });

  it('warns of windows that overlap, and not of those of the example', async () => {
    const quiet = await openGloss('vq217-1.gloss');
    // A caution is always there: the findings have been told.
    await until('findings', () => codes(quiet.document.uri).length > 0);
    assert.equal(codes(quiet.document.uri).includes('window-overlap'), false);
    const text = await read(inFolder('vq217-1.gloss'));
    const overlapping = Uri.joinPath(inFolder(), 'overlapping.gloss');
    const windows = 'step Left 620..850 °C\nstep Right 840..960 °C\n';
    await write(overlapping, `${text.slice(0, text.indexOf('method'))}${windows}`);
    await openGloss('overlapping.gloss');
    await until('the overlap', () => codes(overlapping).includes('window-overlap'));
  });

  it('outlines a gloss, and says under the pointer what a name stands for', async () => {
    const { document } = await openGloss('limestone.gloss');
    const outline = await until('the outline', async () => {
      const found = await commands.executeCommand<DocumentSymbol[]>(
        'vscode.executeDocumentSymbolProvider',
        document.uri,
      );
      return found !== undefined && found.length > 0 && found;
    });
    const first = outline.flatMap((s) => [s, ...s.children]).find((s) => s.name.includes('First'));
    assert.notEqual(first, undefined, outline.map((s) => s.name).join());
    const at = first!.selectionRange.start.translate(0, 1);
    const hovers = await commands.executeCommand<Hover[]>('vscode.executeHoverProvider', document.uri, at);
    const words = hovers.flatMap((h) => h.contents.map((c) => (c as MarkdownString).value)).join('\n');
    assert.match(words, /First/);
    const nothing = await commands.executeCommand<Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      new Position(document.lineCount - 1, 0),
    );
    assert.equal(nothing.length, 0);
  });

  it('draws the curves of a gloss beside it', async () => {
    const extension: Observation = await observed();
    const watched = watch(extension);
    await openGloss('vq217-1.gloss');
    const panel = await showCurves(extension);
    const state = await current(watched, panel.id);
    assert.ok(state.lanes.length >= 2 && state.bands.length >= 2, `${state.lanes.length} lanes`);
    watched.stop();
    extension.closePanel(panel.id);
  });
});
