import assert from 'node:assert/strict';
import { commands, Uri, window, workspace } from 'vscode';
import { closeAll, codes, hints, inFolder, observed, openGloss, pause, read, until, write } from './support/extension';

describe('files around a gloss', () => {
  before(observed);
  afterEach(closeAll);

  it('that go are a finding, and none any more when they are back', async () => {
    const editor = await openGloss('vq217-3.gloss');
    const { uri } = editor.document;
    await until('findings', () => codes(uri).includes('caution-toxic-gas'));
    const before = codes(uri).sort();
    const run = inFolder('vq217-3.csv');
    const data = await read(run);
    await workspace.fs.delete(run);
    await until('the finding', () => codes(uri).join() !== before.join());
    await write(run, data);
    await until('the finding to go', () => codes(uri).sort().join() === before.join());
  });

  it('that lie outside every folder of the workspace are watched too', async () => {
    const outside = Uri.joinPath(inFolder('..'), 'outside');
    const run = Uri.joinPath(outside, 'vq217-n2.csv');
    const gloss = Uri.joinPath(outside, 'alone.gloss');
    const data = await read(inFolder('vq217-2.csv'));
    await write(gloss, 'run "vq217-n2.csv"\n');
    const editor = await window.showTextDocument(await workspace.openTextDocument(gloss));
    const { uri } = editor.document;
    await until('the missing run to be found', () => codes(uri).length > 0);
    const before = codes(uri).join();
    await pause(500);
    await write(run, data);
    await until('the run to be read', () => codes(uri).join() !== before);
    await closeAll();
    await workspace.fs.delete(outside, { recursive: true });
  });
});

describe('a revision in a diff editor', () => {
  it('has neither findings nor inline results nor an offer of curves, beside the text that has them', async () => {
    await observed();
    const text = `${await read(inFolder('vq217-1.gloss'))}\nlet broken = 1 +\n`;
    await write(inFolder('compared.gloss'), text);
    const content = workspace.registerTextDocumentContentProvider('revision', {
      provideTextDocumentContent: () => text,
    });
    const old = inFolder('compared.gloss').with({ scheme: 'revision' });
    const now = inFolder('compared.gloss');
    await commands.executeCommand('vscode.diff', old, now);
    await until('findings of the text', () => codes(now).length > 0);
    const document = await workspace.openTextDocument(old);
    assert.equal(document.languageId, 'gloss');
    await pause(500);
    assert.deepEqual(codes(old), []);
    assert.deepEqual(await hints(document), []);
    assert.equal(await commands.executeCommand('thermogloss.showCurves', old), false);
    content.dispose();
    await closeAll();
    await workspace.fs.delete(now);
  });
});
