import assert from 'node:assert/strict';
import { Selection, window, workspace, type TextEditor } from 'vscode';
import type { Observation } from '../../client/src/observation';
import { closeAll, inFolder, observed, openGloss, pause, until } from './support/extension';
import { current, showCurves, watch, type Watched } from './support/views';

describe('the caret and the curves in the editor', () => {
  let extension: Observation;
  let watched: Watched;
  let editor: TextEditor;
  let panel: string;
  /** Lines of two statements, by their ids. */
  const places: { readonly id: string; readonly line: number }[] = [];

  before(async () => {
    extension = await observed();
    watched = watch(extension);
    editor = await openGloss('limestone.gloss');
    panel = (await showCurves(extension)).id;
    await current(watched, panel);
    editor.document
      .getText()
      .split('\n')
      .forEach((text, line) => {
        const [, kind, name] = /^(step|peak) +(\w+)/.exec(text) ?? [];
        if (kind !== undefined) places.push({ id: `method/${kind} ${name!}`, line });
      });
    assert.ok(places.length >= 2);
  });
  after(async () => {
    watched.stop();
    extension.panels().forEach((p) => extension.closePanel(p.id));
    await closeAll();
  });

  function carets(): (string | null)[] {
    return watched.messages.flatMap(({ message }) => (message.type === 'caret' ? [message.statement] : []));
  }

  function goTo(line: number): void {
    editor.selection = new Selection(line, 0, line, 0);
  }

  it('move each other 200 times in turn without an echo', async () => {
    const [one, other] = places as [(typeof places)[0], (typeof places)[0]];
    goTo(0);
    await pause(300);
    const before = carets().length;
    for (let i = 0; i < 100; i++) {
      goTo(one.line);
      await until('the view to hear of it', () => carets().length === before + i + 1);
      assert.equal(carets().at(-1), one.id);
      await extension.take(panel, {
        type: 'reveal',
        statement: other.id,
        uri: editor.document.uri.toString(),
        range: null,
        revision: watched.state(panel)!.generation.revision,
      });
      assert.equal(window.activeTextEditor?.selection.active.line, other.line);
    }
    await pause(500);
    assert.equal(carets().length, before + 100, 'one message a move of the caret, none for those by the view');
  });

  it('come to the defining line with the focus in the text, in the column where it is', async () => {
    const place = places[1]!;
    goTo(0);
    await extension.take(panel, {
      type: 'reveal',
      statement: place.id,
      uri: editor.document.uri.toString(),
      range: null,
      revision: watched.state(panel)!.generation.revision,
    });
    assert.equal(window.activeTextEditor?.document.uri.toString(), editor.document.uri.toString());
    assert.equal(window.activeTextEditor?.viewColumn, editor.viewColumn);
    assert.equal(window.activeTextEditor?.selection.active.line, place.line);
    assert.equal(window.tabGroups.all.length, 2);
  });

  it('are apart while the setting says so', async () => {
    const settings = workspace.getConfiguration('thermogloss', inFolder());
    await settings.update('curves.followCaret', false);
    goTo(0);
    await pause(300);
    const before = carets().length;
    goTo(places[0]!.line);
    await pause(500);
    assert.equal(carets().length, before);
    await settings.update('curves.followCaret', undefined);
    await until('the view to hear where the caret is by now', () => carets().length === before + 1);
    assert.equal(carets().at(-1), places[0]!.id);
  });

  it('are apart while the view is out of sight', async () => {
    const column = window.tabGroups.all.at(-1)!.viewColumn;
    const document = await workspace.openTextDocument({ content: 'in front of the curves' });
    await window.showTextDocument(document, { viewColumn: column });
    await until('the view to be hidden', () => !extension.panels()[0]!.visible);
    const before = watched.messages.length;
    editor = await window.showTextDocument(editor.document, editor.viewColumn);
    goTo(places[0]!.line);
    await pause(500);
    assert.deepEqual(watched.messages.slice(before), []);
  });
});
