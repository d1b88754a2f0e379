import assert from 'node:assert/strict';
import { commands, env, extensions, window, workspace } from 'vscode';
import { closeAll, codes, inFolder, observed, openGloss, read, until, write } from './support/extension';

describe('commands in the editor', () => {
  before(observed);
  afterEach(closeAll);

  it('are all there once the extension runs', async () => {
    const { contributes } = extensions.getExtension('thermogloss.thermogloss')!.packageJSON as {
      contributes: { commands: { command: string }[] };
    };
    const known = new Set(await commands.getCommands(true));
    const missing = contributes.commands.map((c) => c.command).filter((c) => !known.has(c));
    assert.deepEqual(missing, []);
    assert.ok(contributes.commands.length >= 9);
  });

  it('draft a gloss beside a run that has none, and open it', async () => {
    const run = inFolder('fresh.csv');
    await write(run, await read(inFolder('vq217-2.csv')));
    await commands.executeCommand('thermogloss.draft', run);
    const document = window.activeTextEditor!.document;
    assert.equal(document.uri.toString(), inFolder('fresh.gloss').toString());
    assert.equal(document.languageId, 'gloss');
    assert.match(await read(inFolder('fresh.gloss')), /^run "fresh\.csv"/m);
    assert.equal(document.isDirty, false);
  });

  it('never overwrite a gloss: a second draft is unsaved, under a free name', async () => {
    const run = inFolder('fresh.csv');
    const gloss = inFolder('fresh.gloss');
    await write(gloss, '# mine\n');
    await commands.executeCommand('thermogloss.draft', run);
    const document = window.activeTextEditor!.document;
    assert.equal(document.isUntitled, true);
    assert.match(document.uri.path, /\/fresh-2\.gloss$/);
    assert.match(document.getText(), /^run "fresh\.csv"/m);
    assert.equal(await read(gloss), '# mine\n');
    await commands.executeCommand('workbench.action.files.revert');
  });

  it('never overwrite a gloss that is open and not saved', async () => {
    const run = inFolder('other.csv');
    await write(run, await read(inFolder('vq217-2.csv')));
    const unsaved = await workspace.openTextDocument(inFolder('other.gloss').with({ scheme: 'untitled' }));
    await window.showTextDocument(unsaved);
    await commands.executeCommand('thermogloss.draft', run);
    assert.match(window.activeTextEditor!.document.uri.path, /\/other-2\.gloss$/);
    assert.equal(unsaved.getText(), '');
    await commands.executeCommand('workbench.action.files.revert');
  });

  it('copy the results of the active gloss', async () => {
    await openGloss('vq217-1.gloss');
    assert.equal(await commands.executeCommand<boolean>('thermogloss.copyResults', undefined, 'tsv'), true);
    const copied = await env.clipboard.readText();
    const [head, ...rows] = copied.trim().split('\n');
    assert.ok(rows.length > 5);
    assert.ok(rows.every((row) => row.split('\t').length === head!.split('\t').length));
    assert.match(copied, /First\t/);
  });

  it('approve results by name: a line that is saved, a record beside it, and what differs from it is found', async () => {
    await write(inFolder('approved.gloss'), await read(inFolder('vq217-1.gloss')));
    const { document } = await openGloss('approved.gloss');
    const said = { by: 'M. Ruiz', because: 'for a trial' };
    assert.equal(await commands.executeCommand<boolean>('thermogloss.approve', document.uri, said), true);
    assert.equal(document.isDirty, false);
    const text = await read(inFolder('approved.gloss'));
    const digest = /\napproved by "M\. Ruiz" on \d{4}-\d{2}-\d{2} digest ([0-9a-f]{32})\n$/.exec(text)?.[1];
    assert.ok(digest !== undefined, text);
    const record = JSON.parse(await read(inFolder('approved.gloss.approved.json'))) as {
      approval: { approvers: { by: string }[] };
    };
    assert.deepEqual(
      record.approval.approvers.map(({ by }) => by),
      ['M. Ruiz'],
    );
    await write(inFolder('approved.gloss.approved.json'), '{}');
    await until('the record to be found broken', () => codes(document.uri).includes('approval-broken'));
    await write(inFolder('approved.gloss.approved.json'), JSON.stringify(record));
    await until('it to stand again', () => !codes(document.uri).includes('approval-broken'));
    await workspace.fs.delete(inFolder('approved.gloss'));
    await workspace.fs.delete(inFolder('approved.gloss.approved.json'));
  });

  it('put the example into a folder and leave alone what is there', async () => {
    const target = inFolder('taken');
    await write(inFolder('taken', 'limestone-example', 'limestone.gloss'), '# mine\n');
    await commands.executeCommand('thermogloss.openExample', target);
    assert.equal(window.activeTextEditor!.document.uri.path.endsWith('/limestone-example/vq217-1.gloss'), true);
    assert.equal(await read(inFolder('taken', 'limestone-example', 'limestone.gloss')), '# mine\n');
    const data = await read(inFolder('taken', 'limestone-example', 'vq217-1.csv'));
    assert.equal(data, await read(inFolder('vq217-1.csv')));
  });
});
