import assert from 'node:assert/strict';
import { readdirSync, readFileSync, readlinkSync } from 'node:fs';
import { commands, languages, Position, window, type TextEditor } from 'vscode';
import type { Observation } from '../../client/src/observation';
import { closeAll, codes, hints, observed, openGloss, pause, revert, until } from './support/extension';

describe('the language server in the editor', () => {
  let extension: Observation;
  let editor: TextEditor;

  before(async () => {
    extension = await observed();
    editor = await openGloss('vq217-1.gloss');
    const { document } = editor;
    await editor.edit((e) => e.insert(new Position(document.lineCount, 0), '\nlet broken = 1 +\n'));
    await until('findings', () => codes(document.uri).includes('unexpected-text'));
  });
  after(async () => {
    await revert(editor);
    await closeAll();
  });

  it('is a process of its own that has no connection to any network', () => {
    const pid = extension.serverId();
    assert.notEqual(pid, null);
    // Linux, proc(5): open files of a process; sockets of the network by their inode in the tenth column.
    const listed = ['tcp', 'tcp6', 'udp', 'udp6', 'raw', 'raw6'].flatMap((kind) =>
      readFileSync(`/proc/${pid}/net/${kind}`, 'utf8').split('\n').slice(1),
    );
    const network = new Set(listed.map((line) => line.trim().split(/\s+/)[9]));
    const open = readdirSync(`/proc/${pid}/fd`).map((fd) => link(`/proc/${pid}/fd/${fd}`));
    const sockets = open.flatMap((name) => /^socket:\[(\d+)\]$/.exec(name)?.[1] ?? []);
    assert.ok(open.length > 2, 'the open files were read');
    assert.deepEqual(
      sockets.filter((inode) => network.has(inode)),
      [],
    );
  });

  it('that is lost again and again is told of once, with a button that shows the log', async () => {
    const told: unknown[][] = [];
    const { showWarningMessage } = window;
    const instead = (...words: unknown[]): Promise<undefined> => {
      told.push(words);
      return Promise.resolve(undefined);
    };
    Object.assign(window, { showWarningMessage: instead });
    try {
      for (let k = 0; k < 2; k++) {
        const states: string[] = [];
        const listening = extension.onServerState((state) => states.push(state));
        process.kill(extension.serverId()!, 'SIGKILL');
        await until('the next server', () => states.includes('back'));
        await until('the gloss to be computed', () => !/starting|computing/.test(extension.status().text));
        await pause(300);
        listening.dispose();
      }
    } finally {
      Object.assign(window, { showWarningMessage });
    }
    assert.deepEqual(told, [['The language server ended and was started again.', 'Show Log']]);
  });

  it('that is killed is replaced, and nothing that is shown goes away meanwhile', async () => {
    const { uri } = editor.document;
    const before = codes(uri);
    const shown = (await hints(editor.document)).length;
    assert.ok(shown > 0);
    const pid = extension.serverId()!;
    const least = { findings: before.length };
    const watching = languages.onDidChangeDiagnostics(() => {
      least.findings = Math.min(least.findings, codes(uri).length);
    });
    const states: string[] = [];
    const listening = extension.onServerState((state) => states.push(state));
    process.kill(pid, 'SIGKILL');
    await until('the next server', () => states.includes('back'));
    const after = await hints(editor.document);
    await until('the gloss to be computed', () => !/starting|computing/.test(extension.status().text));
    await pause(500);
    watching.dispose();
    listening.dispose();
    assert.deepEqual(states, ['lost', 'back']);
    assert.notEqual(extension.serverId(), pid);
    assert.equal(after.length, shown);
    assert.equal(least.findings, before.length);
    assert.deepEqual(codes(uri).sort(), before.sort());
  });

  it('that is restarted by its command starts from nothing: old findings go, and come back with it', async () => {
    const { uri } = editor.document;
    const before = codes(uri);
    const pid = extension.serverId();
    let least = before.length;
    const watching = languages.onDidChangeDiagnostics(() => (least = Math.min(least, codes(uri).length)));
    await commands.executeCommand('thermogloss.restartServer');
    await until('the findings', () => codes(uri).length === before.length);
    watching.dispose();
    assert.equal(least, 0);
    assert.notEqual(extension.serverId(), pid);
    assert.deepEqual(codes(uri).sort(), before.sort());
  });
});

function link(path: string): string {
  try {
    return readlinkSync(path);
  } catch {
    return '';
  }
}
