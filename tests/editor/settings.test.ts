import assert from 'node:assert/strict';
import { commands, ConfigurationTarget, Position, workspace, type TextEditor } from 'vscode';
import type { Observation } from '../../client/src/observation';
import {
  closeAll,
  codes,
  hints,
  inFolder,
  observed,
  openGloss,
  pause,
  revert,
  until,
  write,
} from './support/extension';

describe('settings and switches in the editor', () => {
  let extension: Observation;
  let editor: TextEditor;

  before(async () => {
    extension = await observed();
    editor = await openGloss('vq217-1.gloss');
    // This run's gas has a note of its own, whatever is typed.
    await until('findings', () => codes(editor.document.uri).includes('caution-toxic-gas'));
  });
  afterEach(() => revert(editor));
  after(closeAll);

  async function set(name: string, value: unknown): Promise<void> {
    await workspace.getConfiguration('thermogloss', inFolder()).update(name, value, ConfigurationTarget.Workspace);
  }

  function breakIt(): Thenable<boolean> {
    return editor.edit((e) => e.insert(new Position(editor.document.lineCount, 0), '\nlet broken = 1 +\n'));
  }

  it('say when results are computed, from the moment they are changed', async () => {
    const clean = codes(editor.document.uri).length;
    await set('refresh', 'onSave');
    try {
      await pause(500);
      await breakIt();
      await pause(1500);
      assert.equal(codes(editor.document.uri).length, clean, 'typing computes nothing');
      const text = editor.document.getText();
      assert.equal(await editor.document.save(), true);
      await until('the finding after saving', () => codes(editor.document.uri).length > clean);
      await editor.edit((e) => e.insert(new Position(0, 0), '# another change\n'));
      await commands.executeCommand('undo');
      assert.equal(editor.document.getText(), text);
    } finally {
      await set('refresh', undefined);
    }
    await commands.executeCommand('undo');
    await editor.document.save();
    await until('the finding to go', () => codes(editor.document.uri).length === clean);
  });

  it('let a person ask for results where they are computed by hand only', async () => {
    const clean = codes(editor.document.uri).length;
    await set('refresh', 'manual');
    try {
      await pause(500);
      await breakIt();
      await pause(1500);
      assert.equal(codes(editor.document.uri).length, clean);
      await commands.executeCommand('thermogloss.evaluate');
      await until('the finding', () => codes(editor.document.uri).length > clean);
    } finally {
      await set('refresh', undefined);
    }
  });

  it('hide and show all inline results with one command', async () => {
    const shown = await until('inline results', async () => {
      const found = await hints(editor.document);
      return found.length > 0 ? found : undefined;
    });
    await commands.executeCommand('thermogloss.toggleInline');
    assert.deepEqual(await hints(editor.document), []);
    await commands.executeCommand('thermogloss.toggleInline');
    assert.equal((await hints(editor.document)).length, shown.length);
  });

  for (const kind of ['results', 'verdicts', 'windows']) {
    it(`hide and show inline ${kind} alone`, async () => {
      // One line of each kind.
      const text = 'run "vq217-1.csv"\n  mass 20.052 mg\n\nstep Own around 930 °C\n\nrequire Own.loss <= 50 %\n';
      await write(inFolder('kinds.gloss'), text);
      const { document } = await openGloss('kinds.gloss');
      const all = await until('inline results of each kind', async () => {
        const { length } = await hints(document);
        return length >= 3 && length;
      });
      await set(`inline.${kind}`, false);
      try {
        const fewer = await until('fewer inline results', async () => {
          const { length } = await hints(document);
          return length < all ? { length } : undefined;
        });
        assert.ok(fewer.length < all);
      } finally {
        await set(`inline.${kind}`, undefined);
      }
      await until('all of them again', async () => (await hints(document)).length === all);
    });
  }

  it('have no code lenses until a person wants them', async () => {
    const lenses = async (): Promise<number> =>
      (
        (await commands.executeCommand<unknown[] | undefined>('vscode.executeCodeLensProvider', editor.document.uri)) ??
        []
      ).length;
    assert.equal(await lenses(), 0);
    await set('lenses', true);
    try {
      await until('code lenses', async () => (await lenses()) > 0);
    } finally {
      await set('lenses', undefined);
    }
    await until('no code lenses', async () => (await lenses()) === 0);
  });

  it('help in the status item, once, where the editor shows no inlay hints', async () => {
    const hintsOf = workspace.getConfiguration('editor', editor.document);
    await hintsOf.update('inlayHints.enabled', 'off', ConfigurationTarget.Workspace);
    try {
      await until('the help', () => extension.status().help);
      await commands.executeCommand('thermogloss.hintsHelpRead');
      assert.equal(extension.status().help, false);
    } finally {
      await hintsOf.update('inlayHints.enabled', undefined, ConfigurationTarget.Workspace);
    }
  });
});
