import assert from 'node:assert/strict';
import { GitObjects } from '../../server/src/host/gitObjects';
import { TemporaryRepository } from '../revisions/support/repository';

describe('contents from git', () => {
  let repository: TemporaryRepository;
  const contents = [
    '',
    'one line\n',
    'no line end',
    'blob 5\nlike an answer\n',
    'ä€\u{1F525}\r\n',
    'x'.repeat(300_000),
  ];
  before(() => {
    repository = TemporaryRepository.make();
    repository.commit('start', Object.fromEntries(contents.map((text, k) => [`${k}.txt`, text])));
  });
  after(() => repository.remove());

  const ids = (): string[] => contents.map((_, k) => repository.git('rev-parse', `HEAD:${k}.txt`));

  it('come whole and in order, asked for all at once or one after the other', async () => {
    const objects = new GitObjects(repository.path);
    const atOnce = await Promise.all(ids().map((id) => objects.read(id)));
    assert.deepEqual(
      atOnce.map((b) => b!.toString('utf8')),
      contents,
    );
    for (const [k, id] of ids().entries()) assert.equal((await objects.read(id))!.toString('utf8'), contents[k]);
    objects.end();
  });

  it('are null for what is not there or no file, and what follows is right', async () => {
    const objects = new GitObjects(repository.path);
    const [first] = ids();
    const asked = [
      '0'.repeat(40),
      first,
      repository.git('rev-parse', 'HEAD'),
      repository.git('rev-parse', 'HEAD^{tree}'),
    ];
    const answers = await Promise.all([...asked, ids()[1]].map((id) => objects.read(id)));
    assert.deepEqual(
      answers.map((b) => b?.toString('utf8') ?? null),
      [null, contents[0], null, null, contents[1]],
    );
    objects.end();
  });

  it('come again after the process has ended', async () => {
    const objects = new GitObjects(repository.path);
    for (let k = 0; k < 2; k++) {
      assert.equal((await objects.read(ids()[1]))!.toString('utf8'), contents[1]);
      objects.end();
    }
  });

  it('end their process a while after the last answer, and come again', async () => {
    const calls: (() => void)[] = [];
    let pending = 0;
    const objects = new GitObjects(repository.path, (_, call) => {
      calls.push(call);
      pending++;
      return () => (pending -= 1);
    });
    for (let k = 1; k < 4; k++) {
      assert.equal((await objects.read(ids()[1]))!.toString('utf8'), contents[1]);
      assert.equal(calls.length, k);
    }
    // A new question puts the end off.
    assert.equal(pending, 1);
    calls.at(-1)!();
    assert.equal((await objects.read(ids()[2]))!.toString('utf8'), contents[2]);
    objects.end();
  });

  it('are null where there is no repository', async () => {
    const nowhere = new GitObjects('/');
    assert.equal(await nowhere.read(ids()[1]), null);
  });
});
