import assert from 'node:assert/strict';
import { extensions, Uri, workspace } from 'vscode';
import { entryInUse } from './support/entry';

// These hold with either entry of the manifest: for Node and for a browser's worker.
describe('the extension', () => {
  it('runs in the host that its manifest names an entry for', async () => {
    const extension = extensions.getExtension('thermogloss.thermogloss');
    assert.notEqual(extension, undefined);
    const { main, browser } = extension!.packageJSON as { main?: string; browser?: string };
    assert.equal(main === undefined, entryInUse === 'browser');
    assert.equal(browser === undefined, entryInUse === 'main');
  });

  it('wakes up when a gloss is opened', async () => {
    const folder = workspace.workspaceFolders?.[0];
    assert.notEqual(folder, undefined);
    const document = await workspace.openTextDocument(Uri.joinPath(folder!.uri, 'vq217-1.gloss'));
    assert.equal(document.languageId, 'gloss');
    await activated();
    assert.equal(extensions.getExtension('thermogloss.thermogloss')!.isActive, true);
  });
});

async function activated(): Promise<void> {
  const extension = extensions.getExtension('thermogloss.thermogloss')!;
  // Opening the document asks for the activation; it ends a little later.
  for (let tries = 0; tries < 200 && !extension.isActive; tries++) {
    await new Promise((done) => setTimeout(done, 50));
  }
}
