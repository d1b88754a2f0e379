import assert from 'node:assert/strict';
import { GitAncestry } from '../../server/src/host/gitAncestry';
import { Repository } from '../../server/src/host/repository';
import { SourceHost } from '../../server/src/host/sourceHost';
import { defaultTolerance } from '../../server/src/presentation/diff/tolerance';
import { historyOf } from '../../server/src/revisions/history';
import { RevisionEngine } from '../../server/src/revisions/revisionEngine';
import { statesOf } from '../../server/src/revisions/states';
import { TemporaryRepository } from './support/repository';
import { smallGloss, smallRun } from './support/small';

/** Counts whole evaluations, those that were remembered below among them. */
class CountingEngine extends RevisionEngine {
  evaluations = 0;

  override evaluate(...given: Parameters<RevisionEngine['evaluate']>): ReturnType<RevisionEngine['evaluate']> {
    this.evaluations++;
    return super.evaluate(...given);
  }
}

describe('a walk through a hundred revisions', () => {
  let made: TemporaryRepository;
  let repository: Repository;
  before(async () => {
    made = TemporaryRepository.make();
    // Three windows and two runs come and go; each content comes back many times, and every other commit is about something else.
    made.import(
      Array.from({ length: 100 }, (_, k): Record<string, string> =>
        k % 2 === 1
          ? { 'elsewhere.txt': `${k}` }
          : { 'a.gloss': smallGloss({ to: [450, 440, 430][(k / 2) % 3] }), 'a.csv': smallRun(10, 1 + (k % 4) / 2) },
      ),
    );
    repository = (await Repository.open(made.path))!;
  });
  after(() => {
    repository.rest();
    made.remove();
  });

  const start = async (): Promise<{ engine: CountingEngine; ancestry: GitAncestry }> => {
    const head = (await repository.commit('HEAD'))!;
    const host = new SourceHost(repository.top, await repository.source(head, 'HEAD'));
    return { engine: new CountingEngine(host), ancestry: (await GitAncestry.from(repository, head, null))! };
  };

  it('evaluates each content once, and nothing for the commits that touch something else', async () => {
    const { engine, ancestry } = await start();
    const { states, asked, end } = await statesOf(engine, ancestry, `${repository.top}/a.gloss`, Infinity);
    assert.deepEqual([states.length, asked, end], [50, 50, 'no parent']);
    const options = { tolerance: defaultTolerance, bytes: (t: string) => Buffer.from(t, 'utf8'), causes: false };
    const { rows } = await historyOf(engine, 'First.loss', states, asked, options);
    assert.equal(rows.length, 50);
    assert.equal(new Set(rows.map((r) => r.result!.value)).size, 6);
    assert.equal(engine.evaluations, 6);
    // The same walk again knows its engine, not its sides.
    await historyOf(engine, 'First.loss', states.slice(0, 10), 10, options);
    assert.equal(engine.evaluations, 12);
  });

  it('has at each commit the files that git lists there', async () => {
    const { ancestry } = await start();
    for (let k = 0; ; k++) {
      if (ancestry.parents === 0) break;
      ancestry.back(0);
      if (k % 9 > 0) continue;
      const source = ancestry.files('here');
      const listed = made.git('ls-tree', '-r', ancestry.at.commit).split('\n');
      for (const line of listed) {
        const [, , id, name] = line.split(/\s+/);
        assert.equal(await source.contentId(`${repository.top}/${name}`), id, `${ancestry.at.commit} ${name}`);
      }
      assert.equal((await source.list(repository.top)).length, listed.length);
    }
    assert.equal(ancestry.at.commit, made.git('rev-list', '--max-parents=0', 'HEAD'));
  });
});
