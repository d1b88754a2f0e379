import assert from 'node:assert/strict';
import { commands, TabInputTextDiff, window, workspace, WorkspaceEdit } from 'vscode';
import type { Observation } from '../../client/src/observation';
import { closeAll, inFolder, observed, openGloss, read, revert, until, write } from './support/extension';

describe('results compared in the editor', () => {
  let seen: Observation;
  const earlier = inFolder('earlier.gloss');

  before(async () => {
    seen = await observed();
    await write(earlier, await read(inFolder('vq217-1.gloss')));
  });
  after(() => workspace.fs.delete(earlier));
  afterEach(closeAll);

  it('are those of the unsaved text, against another gloss, line by line in the tree', async () => {
    const editor = await openGloss('vq217-1.gloss');
    const edit = new WorkspaceEdit();
    const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
    edit.insert(editor.document.uri, end, '\noverride step First 600..842 °C\n  because "invented"\n');
    await workspace.applyEdit(edit);
    assert.equal(editor.document.isDirty, true);
    const done = await commands.executeCommand<boolean>('thermogloss.compareResults', undefined, {
      kind: 'file',
      uri: earlier.toString(),
    });
    assert.equal(done, true);
    const { head, nodes } = seen.changes();
    assert.match(head, /^From earlier\.gloss to working copy\. /);
    const loss = nodes.find((n) => n.row?.id === 'First.loss');
    assert.ok(loss, nodes.map((n) => n.label).join(', '));
    assert.match(loss.description, /→/);

    await commands.executeCommand('thermogloss.openChange', loss);
    const input = await until('the two texts side by side', () => {
      const shown = window.tabGroups.activeTabGroup.activeTab?.input;
      return shown instanceof TabInputTextDiff ? shown : null;
    });
    assert.equal(input.original.toString(), earlier.toString());
    assert.equal(input.modified.toString(), editor.document.uri.toString());

    await commands.executeCommand('thermogloss.compareInCurves');
    const panel = await until('curves', () => seen.panels().find((p) => p.uri === editor.document.uri.toString()));
    assert.equal(panel.uri, editor.document.uri.toString());
    seen.closePanel(panel.id);
    await revert(editor);
  });

  it('are not compared with a file that is not there, and what was shown stays', async () => {
    await openGloss('vq217-1.gloss');
    const before = seen.changes();
    const uri = inFolder('none.json').toString();
    assert.equal(await commands.executeCommand('thermogloss.compareResults', undefined, { kind: 'file', uri }), false);
    assert.deepEqual(seen.changes(), before);
    await commands.executeCommand('notifications.clearAll');
  });
});

describe('a report in the editor', () => {
  before(observed);
  afterEach(closeAll);

  for (const [format, name] of [
    ['html', 'written.html'],
    ['markdown', 'written.md'],
  ] as const) {
    it(`is written beside the gloss (${format}), twice with the same bytes, and nothing is opened`, async () => {
      const target = inFolder(name);
      await openGloss('vq217-1.gloss');
      const tabs = window.tabGroups.all.flatMap((g) => g.tabs).length;
      const wishes = { format, issued: '2026-10-05', target };
      assert.equal(await commands.executeCommand('thermogloss.writeReport', undefined, wishes), true);
      const text = await read(target);
      assert.match(text, /2026-10-05/);
      assert.match(text, /First\.loss/);
      assert.equal(await commands.executeCommand('thermogloss.writeReport', undefined, wishes), true);
      assert.equal(await read(target), text);
      assert.equal(window.tabGroups.all.flatMap((g) => g.tabs).length, tabs);
      await workspace.fs.delete(target);
    });
  }
});
