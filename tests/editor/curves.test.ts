import assert from 'node:assert/strict';
import { chmodSync } from 'node:fs';
import { commands, Position, Selection, Uri, window, workspace, WorkspaceEdit, type TextEditor } from 'vscode';
import type { Observation } from '../../client/src/observation';
import type { EdgeRequest } from '../../server/src/protocol/view';
import { closeAll, inFolder, observed, openGloss, pause, read, revert, until, write } from './support/extension';
import { ask, current, showCurves, view, watch, type Watched } from './support/views';

describe('curves beside the text', () => {
  let extension: Observation;
  let watched: Watched;

  before(async () => {
    extension = await observed();
  });
  beforeEach(() => (watched = watch(extension)));
  afterEach(async () => {
    watched.stop();
    extension.panels().forEach((p) => extension.closePanel(p.id));
    await closeAll();
  });

  it('open in the next column without taking the focus, and are drawn from a state of the text', async () => {
    const editor = await openGloss('vq217-1.gloss');
    const panel = await showCurves(extension);
    assert.equal(window.tabGroups.all.length, 2);
    assert.equal(window.activeTextEditor, editor);
    assert.match(panel.title, /vq217-1\.gloss/);
    const state = await current(watched, panel.id);
    assert.equal(state.generation.uri, editor.document.uri.toString());
    assert.ok(state.lanes.length >= 2 && state.bands.length >= 2 && state.ledger.rows.length >= 5);
    assert.equal(state.editable, true);
  });

  it('load under a policy that lets nothing in but their own files', async () => {
    await openGloss('vq217-1.gloss');
    const { html } = await showCurves(extension);
    assert.match(html, /default-src 'none'/);
    assert.doesNotMatch(html, /unsafe-/);
    // Addresses of the editor's own, which serves files of the extension to its page.
    const hosts = [...html.matchAll(/https?:\/\/([^/;"' ]+)/g)].map((m) => m[1]!);
    assert.ok(hosts.length > 0);
    assert.deepEqual(
      hosts.filter((host) => !/\.vscode-cdn\.net$/.test(host)),
      [],
    );
  });

  it('follow the active gloss, unless they are kept; then a second view follows, and both are there at once', async () => {
    const first = await openGloss('vq217-1.gloss');
    const panel = await showCurves(extension);
    const second = await openGloss('vq217-3.gloss');
    await until('the view to follow', () => view(extension, panel.id)?.uri === second.document.uri.toString());
    await current(watched, panel.id);
    await window.showTextDocument(first.document, first.viewColumn);
    await until('the view to follow back', () => view(extension, panel.id)?.uri === first.document.uri.toString());
    await extension.take(panel.id, { type: 'pin', pinned: true });
    await window.showTextDocument(second.document, first.viewColumn);
    const other = await showCurves(extension);
    assert.notEqual(other.id, panel.id);
    assert.equal(other.uri, second.document.uri.toString());
    assert.equal(view(extension, panel.id)!.uri, first.document.uri.toString());
    assert.match(view(extension, panel.id)!.title, /kept/);
  });

  it('do not walk to the right when they are opened again and again', async () => {
    await openGloss('vq217-1.gloss');
    for (let i = 0; i < 3; i++) {
      const panel = await showCurves(extension);
      extension.closePanel(panel.id);
      await until('the view to close', () => extension.panels().length === 0);
    }
    await showCurves(extension);
    await showCurves(extension);
    assert.equal(extension.panels().length, 1);
    assert.equal(window.tabGroups.all.length, 2);
  });

  it('leave nothing behind after twenty times opened and closed', async () => {
    const editor = await openGloss('vq217-1.gloss');
    for (let i = 0; i < 20; i++) {
      await commands.executeCommand('thermogloss.showCurves');
      extension.panels().forEach((p) => extension.closePanel(p.id));
      await until('the view to close', () => extension.panels().length === 0);
    }
    const panel = await showCurves(extension);
    await current(watched, panel.id);
    await pause(500);
    const before = watched.messages.length;
    await editor.edit((e) => e.insert(new Position(0, 0), '# one change\n'));
    await current(watched, panel.id, editor.document.version);
    await pause(500);
    const after = watched.messages.slice(before);
    assert.ok(after.every((m) => m.panel === panel.id));
    assert.ok(
      after.filter((m) => m.message.type === 'state').length <= 3,
      'a state, told once and not for each view there was',
    );
    await revert(editor);
  });

  it('are a page with words where the gloss is gone, and are back with it', async () => {
    const uri = inFolder('passing.gloss');
    const text = await read(inFolder('vq217-3.gloss'));
    await write(uri, text);
    await openGloss('passing.gloss');
    const panel = await showCurves(extension);
    await extension.take(panel.id, { type: 'pin', pinned: true });
    await commands.executeCommand('workbench.action.closeActiveEditor');
    await workspace.fs.delete(uri);
    await until('the words', () => /is not there/.test(view(extension, panel.id)!.html));
    assert.match(view(extension, panel.id)!.html, /passing\.gloss is not there/);
    assert.doesNotMatch(view(extension, panel.id)!.html, /<script/);
    await write(uri, text);
    await until('the curves', () => view(extension, panel.id)!.ready);
    await current(watched, panel.id);
    await workspace.fs.delete(uri);
  });

  it('go with a gloss that is renamed', async () => {
    const from = inFolder('before.gloss');
    const to = inFolder('after.gloss');
    await write(from, await read(inFolder('vq217-3.gloss')));
    await openGloss('before.gloss');
    const panel = await showCurves(extension);
    await workspace.fs.delete(to).then(undefined, () => undefined);
    const edit = new WorkspaceEdit();
    edit.renameFile(from, to);
    assert.equal(await workspace.applyEdit(edit), true);
    await until('the new name', () => view(extension, panel.id)!.uri === to.toString());
    await until('its title', () => /after\.gloss/.test(view(extension, panel.id)!.title));
    await current(watched, panel.id);
    await closeAll();
    await workspace.fs.delete(to);
  });
});

describe('an edge moved in the curves', () => {
  let extension: Observation;
  let watched: Watched;
  let editor: TextEditor;
  let panel: string;
  let text: string;

  before(async () => {
    extension = await observed();
    watched = watch(extension);
    // Windows of its own in the run's gloss: an edge is one number of this very text.
    text = (await read(inFolder('vq217-1.gloss'))).replace(/^method .*$/m, '').trimEnd();
    await write(inFolder('moved.gloss'), `${text}\nstep Own 620..850 °C  # mine\n`);
    editor = await openGloss('moved.gloss');
    text = editor.document.getText();
    panel = (await showCurves(extension)).id;
  });
  after(async () => {
    watched.stop();
    await revert(editor);
    extension.panels().forEach((p) => extension.closePanel(p.id));
    await closeAll();
    await workspace.fs.delete(inFolder('moved.gloss'));
  });

  async function request(more: Partial<EdgeRequest> = {}): Promise<EdgeRequest> {
    const state = await current(watched, panel, editor.document.version);
    const band = state.bands.find((b) => b.statement === 'step Own')!;
    const { generation } = state;
    const { time } = band.from;
    return {
      generation,
      statement: 'step Own',
      edge: 'from',
      time,
      perPixel: null,
      typed: 641,
      into: 'gloss',
      ...more,
    };
  }

  it('is one change of one number, and one undo gives back the very text and the caret', async () => {
    const own = editor.document.lineCount - 2;
    editor.selection = new Selection(own, 4, own, 4);
    await window.showTextDocument(editor.document, editor.viewColumn);
    const before = editor.document.version;
    const answer = await ask<'edgeEdit'>(extension, watched, panel, {
      type: 'edgeEdit',
      call: 1,
      request: await request(),
    });
    assert.equal(answer.answer?.ok, true);
    assert.equal(editor.document.version, before + 1);
    assert.equal(editor.document.getText(), text.replace('Own 620..850 °C  # mine', 'Own 641..850 °C  # mine'));
    await extension.take(panel, { type: 'undo' });
    assert.equal(editor.document.getText(), text);
    assert.equal(editor.document.isDirty, false);
    assert.deepEqual(
      [window.activeTextEditor?.selection.active.line, window.activeTextEditor?.selection.active.character],
      [own, 4],
    );
    await extension.take(panel, { type: 'redo' });
    assert.match(editor.document.getText(), /Own 641\.\.850 °C {2}# mine/);
    await extension.take(panel, { type: 'undo' });
    assert.equal(editor.document.getText(), text);
  });

  it('is never misplaced where the text was changed since: it is worked out again, or refused with nothing written', async () => {
    const asked = await request();
    await editor.edit((e) => e.insert(new Position(0, 0), '# a line more\n# and one more\n'));
    const changed = editor.document.getText();
    const { answer } = await ask<'edgeEdit'>(extension, watched, panel, { type: 'edgeEdit', call: 2, request: asked });
    const now = editor.document.getText();
    if (answer?.ok === true) assert.equal(now, changed.replace('Own 620', 'Own 641'));
    else {
      assert.equal(now, changed);
      assert.ok(answer!.reason.length > 10);
    }
    await revert(editor);
    assert.equal(editor.document.getText(), text);
  });

  it('is refused in words for a revision of version control', async () => {
    const asked = await request();
    const generation = { ...asked.generation, uri: Uri.parse(asked.generation.uri).with({ scheme: 'git' }).toString() };
    const { answer } = await ask<'edgeEdit'>(extension, watched, panel, {
      type: 'edgeEdit',
      call: 3,
      request: { ...asked, generation },
    });
    assert.notEqual(answer?.ok, true);
    assert.equal(editor.document.getText(), text);
  });

  it('is not offered, and refused, where nobody may write the file', async () => {
    const { fsPath } = editor.document.uri;
    chmodSync(fsPath, 0o444);
    try {
      const asked = await request();
      const { answer } = await ask<'edgeEdit'>(extension, watched, panel, {
        type: 'edgeEdit',
        call: 4,
        request: asked,
      });
      assert.equal(answer?.ok, false);
      assert.match(answer?.ok === false ? answer.reason : '', /read-only/);
      assert.equal(editor.document.getText(), text);
      extension.closePanel(panel);
      await until('the view to close', () => extension.panels().length === 0);
      panel = (await showCurves(extension)).id;
      assert.equal((await current(watched, panel)).editable, false);
    } finally {
      chmodSync(fsPath, 0o644);
    }
  });
});
