import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { say } from '../cli/fakeTerminal';
import { history } from './support/history';
import { historyJson, historySaid } from './support/historySaid';
import { TemporaryRepository } from './support/repository';
import { smallGloss, smallRun } from './support/small';

const pointer = `version https://git-lfs.github.com/spec/v1
oid sha256:${'0123456789abcdef'.repeat(4)}
size 123456
`;

describe('what is not in the clone', () => {
  let repository: TemporaryRepository;
  const clones: TemporaryRepository[] = [];
  before(() => {
    repository = history();
    repository.git('checkout', '-q', '-b', 'large', 'start');
    repository.commit('pointer', { 'a.csv': pointer });
  });
  after(() => [repository, ...clones].forEach((r) => r.remove()));

  it('data that are a pointer to large-file storage cannot be computed, and the command that fetches them is named', async () => {
    const said = await say(['diff', 'start', 'pointer'], { cwd: repository.path });
    assert.equal(said.code, 1, said.error);
    assert.match(said.out, /cannot compute now: The content of a\.csv in pointer is a pointer to large-file storage/);
    assert.doesNotMatch(said.out, /removed|gone/);
    assert.match(said.out, /`git lfs fetch origin [0-9a-f]{40}` fetches it/);
  });

  it('a revision before the end of a shallow clone is refused with the command that fetches it', async () => {
    const clone = TemporaryRepository.cloned(pathToFileURL(repository.path).href, '--depth', '1', '--branch', 'large');
    clones.push(clone);
    const said = await say(['diff', 'HEAD~1'], { cwd: clone.path });
    assert.equal(said.code, 2);
    assert.match(said.error, /git fetch --unshallow/);
  });

  it('data left out of a partial clone cannot be computed, and the command that fetches them is named', async () => {
    repository.git('config', 'uploadpack.allowFilter', 'true');
    const url = pathToFileURL(repository.path).href;
    const clone = TemporaryRepository.cloned(url, '--filter=blob:limit=4k', '--branch', 'main');
    clones.push(clone);
    const said = await say(['diff', 'start', 'window'], { cwd: clone.path });
    assert.equal(said.code, 1, said.error);
    const command =
      /cannot compute now: The content of a\.csv in \w+ is not in this clone; `git ([^`]+)` fetches it/.exec(said.out);
    assert.ok(command !== null, said.out);
    clone.git(...command[1].split(' '));
    const fetched = await say(['diff', 'start', 'window'], { cwd: clone.path });
    assert.match(fetched.out, /^2 results moved beyond tolerance/m);
  });

  it('a clone without contents is followed as far as they are here, without an invented cause, and the command fetches the rest', async () => {
    const origin = TemporaryRepository.make();
    clones.push(origin);
    origin.git('config', 'uploadpack.allowFilter', 'true');
    origin.commit('start', { 'a.gloss': smallGloss(), 'a.csv': smallRun() });
    origin.commit('data', { 'a.csv': smallRun(12) });
    origin.commit('window', { 'a.gloss': smallGloss({ to: 300 }) });
    origin.commit('again', { 'a.csv': smallRun(14) });
    const clone = TemporaryRepository.cloned(pathToFileURL(origin.path).href, '--filter=blob:none');
    clones.push(clone);
    const part = await historyJson(clone.path, 'First.loss');
    // What git itself has of the commits; of their files it has those of the last one alone.
    assert.deepEqual(
      part.rows.map((r) => r.revision!.commit),
      [origin.git('rev-parse', 'again'), origin.git('rev-parse', 'window')],
    );
    assert.equal(part.end, 'content');
    assert.match(part.rows[1].reason!, /a\.csv in \w+ is not in this clone/);
    assert.ok(!part.rows.some((r) => r.causes.some((c) => c.change === 'step First')));
    const diff = await say(['diff', 'HEAD~2', 'HEAD'], { cwd: clone.path });
    assert.match(diff.out, /cannot compute before: the content of a\.gloss in \S+ is not in this clone/);
    assert.doesNotMatch(diff.out, /no file|added|decision changed/);
    const said = await historySaid(clone.path, 'First.loss');
    const command =
      /What came before is not shown: the content of a\.gloss in \w+ is not in this clone; `git ([^`]+)` fetches it\./;
    const [, words] = command.exec(said.out) ?? [];
    assert.ok(words !== undefined, said.out);
    clone.git(...words.split(' '));
    const whole = await historyJson(clone.path, 'First.loss');
    assert.deepEqual(whole.rows, (await historyJson(origin.path, 'First.loss')).rows);
    assert.deepEqual([whole.rows.length, whole.end], [4, 'begins']);
  });
});
