import { strict as assert } from 'node:assert';
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { NodeHost } from '../../server/src/host/nodeHost';

describe('the host over the file system', () => {
  let folder: string;
  let host: NodeHost;

  beforeEach(() => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'gloss-host-')));
    mkdirSync(join(folder, 'lab', '.git'), { recursive: true });
    mkdirSync(join(folder, 'lab', 'runs'));
    writeFileSync(join(folder, 'lab', 'runs', 'a.csv'), '\ufefft,T\r\n0,25\r\n');
    writeFileSync(join(folder, 'secret.csv'), 'never,shown\n1,2\n');
    host = new NodeHost(join(folder, 'lab', 'runs'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  async function content(path: string): Promise<string> {
    const file = await host.read(path);
    assert.ok(file.ok);
    let text = '';
    for await (const chunk of file.chunks()) text += host.decode(chunk);
    return text;
  }

  it('takes the nearest folder above with .git as its root, else the folder itself', () => {
    assert.equal(host.root, join(folder, 'lab'));
    assert.equal(new NodeHost(folder).root, folder);
  });

  it('reads a file below the root as LF text without its mark', async () => {
    assert.equal(await content(join(folder, 'lab', 'runs', 'a.csv')), 't,T\n0,25\n');
    assert.equal(host.display(join(folder, 'lab', 'runs', 'a.csv')), 'runs/a.csv');
  });

  it('refuses a path that leaves the root, by dots or through a link, and quotes nothing of it', async () => {
    symlinkSync(join(folder, 'secret.csv'), join(folder, 'lab', 'runs', 'link.csv'));
    symlinkSync(folder, join(folder, 'lab', 'up'));
    for (const path of [
      host.resolve(join(folder, 'lab', 'runs', 'a.gloss'), '../../secret.csv'),
      join(folder, 'lab', 'runs', 'link.csv'),
      join(folder, 'lab', 'up', 'secret.csv'),
      join(folder, 'lab', 'up', 'nowhere.csv'),
    ]) {
      const file = await host.read(path);
      assert.ok(!file.ok);
      assert.equal(file.reason, 'outside');
      assert.ok(!file.message.includes('never'));
    }
    assert.deepEqual(await host.list(folder), []);
    assert.deepEqual(await host.list(join(folder, 'lab', 'up')), []);
  });

  it('follows a link that stays inside', async () => {
    symlinkSync(join(folder, 'lab', 'runs', 'a.csv'), join(folder, 'lab', 'b.csv'));
    assert.equal(await content(join(folder, 'lab', 'b.csv')), 't,T\n0,25\n');
  });

  it('names a missing file and a folder as what they are', async () => {
    const missing = await host.read(join(folder, 'lab', 'runs', 'none.csv'));
    assert.deepEqual(missing, { ok: false, reason: 'missing', message: 'there is no file runs/none.csv' });
    const directory = await host.read(join(folder, 'lab', 'runs'));
    assert.ok(!directory.ok && directory.reason === 'unreadable');
  });

  it('puts an open text in place of the file until it is closed', async () => {
    const path = join(folder, 'lab', 'runs', 'a.csv');
    host.setText(path, 'open\r\ntext');
    assert.equal(await content(path), 'open\ntext');
    host.setText(path, null);
    assert.equal(await content(path), 't,T\n0,25\n');
    host.setText(join(folder, 'lab', 'new.gloss'), 'run "a.csv"');
    assert.equal(await content(join(folder, 'lab', 'new.gloss')), 'run "a.csv"');
  });

  it('lists a folder sorted, and none that is not there', async () => {
    writeFileSync(join(folder, 'lab', 'runs', 'B.csv'), '');
    assert.deepEqual(await host.list(join(folder, 'lab', 'runs')), ['B.csv', 'a.csv']);
    assert.deepEqual(await host.list(join(folder, 'lab', 'none')), []);
  });

  it('parses quoted text with the full parser, loaded on demand', async () => {
    const { records, lines } = await host.parseDelimited('"a;b";1\n"two\nlines";2\n3;4\n', { delimiter: ';' });
    assert.deepEqual(records, [
      ['a;b', '1'],
      ['two\nlines', '2'],
      ['3', '4'],
    ]);
    assert.deepEqual(lines, [1, 2, 4]);
    const blanks = await host.parseDelimited('  1   "a  b"\t2 \n"x" 3\n', { delimiter: null });
    assert.deepEqual(blanks.records, [
      ['1', 'a  b', '2'],
      ['x', '3'],
    ]);
    const open = await host.parseDelimited('1,"open\n2,3\n', { delimiter: ',' });
    assert.deepEqual(open.records, [
      ['1', '"open'],
      ['2', '3'],
    ]);
  });

  it('gives the same key to the same text only', () => {
    assert.equal(host.key('a'), host.key('a'));
    assert.notEqual(host.key('a'), host.key('b'));
  });
});
