import assert from 'node:assert/strict';
import { pathToFileURL } from 'node:url';
import { say } from '../cli/fakeTerminal';
import { history } from './support/history';
import { TemporaryRepository } from './support/repository';

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
});
