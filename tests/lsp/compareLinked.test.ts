import assert from 'node:assert/strict';
import { mkdtempSync, realpathSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Spellings } from '../../server/src/lsp/compare/spellings';
import { NodeOutside } from '../../server/src/lsp/nodeOutside';
import { method } from '../../server/src/protocol/messages';
import { defaultChoices, type ViewState } from '../../server/src/protocol/view';
import { startClient } from './support/client';
import { CompareDesk, gloss, narrower, only, rowOf } from './support/compareDesk';
import { gatheredViews } from './support/gatheredViews';

describe('a folder opened through a link', () => {
  const desk = CompareDesk.inSuite();
  let beside: string;

  beforeEach(async () => {
    beside = realpathSync(mkdtempSync(join(tmpdir(), 'thermogloss-link-')));
    symlinkSync(desk.repository.path, join(beside, 'linked'), 'junction');
    desk.client.close();
    desk.outside = new NodeOutside();
    desk.client = await startClient(desk.outside, {}, [linked()]);
  });
  afterEach(() => rmSync(beside, { recursive: true, force: true }));
  const linked = (name = ''): string => pathToFileURL(join(beside, 'linked', name)).href;

  it('has its unsaved text compared with HEAD, and opens the texts under the link', async () => {
    const uri = desk.client.open(linked('a.gloss'), narrower);
    const comparison = await desk.compared(uri);
    assert.equal(comparison.to, 'working copy with unsaved texts');
    const rows = only(comparison);
    assert.equal(rows.status, 'both');
    assert.equal(rows.uri, uri);
    const loss = rowOf(rows, 'First.loss');
    assert.match(loss.cause, /decision changed: step First 200\.\.450 °C → step First 200\.\.335 °C$/);
    assert.equal(loss.place?.uri, uri);
    assert.equal(loss.place?.old?.uri, uri);
    assert.equal(await desk.old(loss.place.old), gloss);
  });

  it('has no unsaved text where the text is that of the file', async () => {
    const comparison = await desk.compared(desk.client.open(linked('a.gloss'), gloss));
    assert.equal(comparison.to, 'working copy');
    assert.deepEqual(only(comparison).rows, []);
  });

  it('tells in the view how far each result is from HEAD', async () => {
    const uri = desk.client.open(linked('a.gloss'), narrower);
    const { next } = gatheredViews(desk.client);
    await desk.client.connection.sendRequest(method.watch, { id: 'p', uri, choices: defaultChoices, editable: true });
    const loss = (s: ViewState): ViewState['ledger']['rows'][number] | undefined =>
      s.ledger.rows.find((r) => r.id === 'First.loss');
    const state = await next((s) => (loss(s)?.since ?? '') !== '');
    assert.match(loss(state)!.since, /^[+−-]\d.* %$/);
  });
});

describe('paths between the editor and git', () => {
  // Windows as it is documented for `realpath` and seen of git: both with a capital letter, the editor with a small one.
  const spellings = new Spellings('c:/lab/project', 'C:/lab', (path) => path);

  it('take the letter of the drive as git has it, and give it back as the editor has it', () => {
    assert.equal(spellings.ofGit('c:/lab/project/a.gloss'), 'C:/lab/project/a.gloss');
    assert.equal(spellings.ofGit('c:/lab/m.gloss'), 'C:/lab/m.gloss');
    assert.equal(spellings.ofEditor('C:/lab/project/a.gloss'), 'c:/lab/project/a.gloss');
    assert.equal(spellings.ofEditor('C:/lab/m.gloss'), 'c:/lab/m.gloss');
  });

  it('leave alone what is spelled alike', () => {
    const same = new Spellings('/lab', '/lab', (path) => path);
    assert.equal(same.ofGit('/lab/a.gloss'), '/lab/a.gloss');
    assert.equal(same.ofEditor('/lab/a.gloss'), '/lab/a.gloss');
    assert.equal(same.ofEditor('/laboratory/a.gloss'), '/laboratory/a.gloss');
  });
});
