import assert from 'node:assert/strict';
import { commands, Position, window, type DocumentSymbol, type Hover, type TextEditor } from 'vscode';
import type { Observation } from '../../client/src/observation';
import { closeAll, codes, hints, inFolder, observed, openGloss, read, revert, until, write } from './support/extension';
import { current, showCurves, watch } from './support/views';

// With either entry: a server in a process, or one in a browser's worker that reads files through the editor.
describe('a gloss in any editor', () => {
  let extension: Observation;
  let editor: TextEditor;

  before(async () => {
    extension = await observed();
    editor = await openGloss('vq217-1.gloss');
    await until('findings', () => codes(editor.document.uri).includes('caution-toxic-gas'));
  });
  after(closeAll);

  it('is computed from its run, its blanks and its method', async () => {
    const shown = await until('inline results', async () => {
      const found = await hints(editor.document);
      return found.length > 0 && found;
    });
    const words = shown.map(({ label }) => (typeof label === 'string' ? label : label.map((p) => p.value).join('')));
    assert.ok(words.some((w) => /met: 6[0-4]\.\d/.test(w)));
    await until('the status item', () => /results/.test(extension.status().text));
  });

  it('has an outline and hovers', async () => {
    const { uri } = editor.document;
    const symbols = await commands.executeCommand<DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', uri);
    assert.ok(symbols.length >= 3);
    const line = editor.document
      .getText()
      .split('\n')
      .findIndex((text) => text.startsWith('require dolomite'));
    const hovers = await commands.executeCommand<Hover[]>('vscode.executeHoverProvider', uri, new Position(line, 10));
    assert.ok(hovers.length >= 1);
  });

  it('has a finding where a line is broken', async () => {
    await editor.edit((e) => e.insert(new Position(editor.document.lineCount, 0), '\nlet broken = 1 +\n'));
    await until('the finding', () => codes(editor.document.uri).includes('unexpected-text'));
    await revert(editor);
    await until('the finding to go', () => !codes(editor.document.uri).includes('unexpected-text'));
  });

  it('has its curves beside it', async () => {
    const watched = watch(extension);
    const panel = await showCurves(extension);
    const state = await current(watched, panel.id);
    assert.ok(state.lanes.length >= 2 && state.bands.length >= 2);
    extension.closePanel(panel.id);
    watched.stop();
  });

  it('is drafted for a run', async () => {
    await write(inFolder('smoke.csv'), await read(inFolder('vq217-2.csv')));
    await commands.executeCommand('thermogloss.draft', inFolder('smoke.csv'));
    assert.match(window.activeTextEditor!.document.getText(), /^run "smoke\.csv"/m);
  });
});
