import { strict as assert } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { StillSource } from '../../server/src/base/source';
import { Engine } from '../../server/src/engine/engine';
import { GitAncestry } from '../../server/src/host/gitAncestry';
import { NodeHost } from '../../server/src/host/nodeHost';
import { Repository } from '../../server/src/host/repository';
import { SourceHost } from '../../server/src/host/sourceHost';
import { WorkSource } from '../../server/src/host/workSource';
import { RevisionsBeside } from '../../server/src/lsp/revisionsBeside';
import type { Timers } from '../../server/src/lsp/timers';
import { againstOf } from '../../server/src/lsp/views/against';
import type { Ground } from '../../server/src/lsp/views/picture';
import { defaultTolerance } from '../../server/src/presentation/diff/tolerance';
import { defaultChoices } from '../../server/src/protocol/view';
import { compareAll } from '../../server/src/revisions/compareAll';
import { historyOf } from '../../server/src/revisions/history';
import { RevisionEngine } from '../../server/src/revisions/revisionEngine';
import { statesOf } from '../../server/src/revisions/states';
import { TemporaryRepository } from '../revisions/support/repository';
import { summary, time, type BenchRow, type Timing } from './harness';
import {
  editSeries,
  hundredResults,
  longHistory,
  secondsRun,
  seriesMethod,
  seriesRepository,
} from './support/repositories';

const program = join(__dirname, '..', '..', '..', 'dist', 'thermogloss.js');
const options = { tolerance: defaultTolerance, bytes: (text: string) => Buffer.from(text, 'utf8'), causes: true };

function called(made: TemporaryRepository, words: readonly string[], code: number): string {
  const run = spawnSync(process.execPath, [program, ...words], { cwd: made.path, encoding: 'utf8' });
  assert.equal(run.status, code, run.stderr);
  return run.stdout;
}

function row(name: string, { median, p95 }: Timing, limit: number | null, note = ''): BenchRow {
  const more = note === '' ? '' : `; ${note}`;
  return { name: `${name}, p95`, value: p95, unit: 'ms', limit, note: `median ${median.toFixed(0)} ms${more}` };
}

/** What is to be asked again after a time lasts as long as the bench. */
const never: Timers = { after: () => () => undefined };

/** Comparisons with git: a process of its own each time, and a program that stays. */
export async function revisions(): Promise<readonly BenchRow[]> {
  return [...(await series()), ...(await walk()), await sinceHead()];
}

async function series(): Promise<readonly BenchRow[]> {
  const made = seriesRepository();
  try {
    editSeries(made);
    assert.ok(called(made, ['diff'], 1).includes('\nr20.gloss\n'));
    const cold = await time(() => called(made, ['diff'], 1), 20, 1);
    const repository = (await Repository.open(made.path))!;
    const head = await repository.source((await repository.commit('HEAD'))!, 'HEAD');
    const engine = new RevisionEngine(new SourceHost(repository.top, head));
    const work = new WorkSource(repository.top);
    const paths = readdirSync(made.path)
      .filter((n) => n.endsWith('.gloss'))
      .map((n) => `${repository.top}/${n}`);
    const glosses = { old: paths, new: paths, renames: new Map<string, string>() };
    let edge = 340;
    const compare = async (): Promise<void> => {
      const still = new StillSource(work);
      const { glosses: compared } = await compareAll(engine, head, still, glosses, options);
      assert.equal(compared.filter((g) => g.rows.some((r) => r.status === 'changed')).length, 20);
    };
    const again = await time(compare, 20, 1);
    const edited: number[] = [];
    for (let k = 0; k < 20; k++) {
      made.write({ 'method.gloss': seriesMethod((edge -= 0.5)) });
      const start = performance.now();
      await compare();
      edited.push(performance.now() - start);
    }
    repository.rest();
    return [
      row('diff of 20 runs against HEAD from the start of the process', cold, 2000, '20 times'),
      row('the same in a program that stays', again, 300, '20 times'),
      row('the same after each edit of the method of all 20', summary(edited), null, '20 edits'),
    ];
  } finally {
    made.remove();
  }
}

async function walk(): Promise<readonly BenchRow[]> {
  const made = longHistory(100);
  try {
    assert.equal(called(made, ['history', 'First.loss', '--format', 'csv'], 0).trimEnd().split('\r\n').length, 101);
    const cold = await time(() => called(made, ['history', 'First.loss'], 0), 5, 0);
    const repository = (await Repository.open(made.path))!;
    const head = (await repository.commit('HEAD'))!;
    const engine = new RevisionEngine(new SourceHost(repository.top, await repository.source(head, 'HEAD')));
    const warm = await time(
      async () => {
        const ancestry = (await GitAncestry.from(repository, head, null))!;
        const { states, asked } = await statesOf(engine, ancestry, `${repository.top}/a.gloss`, Infinity);
        const { rows } = await historyOf(engine, 'First.loss', states, asked, options);
        assert.equal(rows.filter((r) => (r.result?.value ?? 0) > 0).length, 100);
      },
      10,
      1,
    );
    repository.rest();
    return [
      row('history of one result over 100 revisions in a program that stays', warm, 5000, '10 times'),
      row('the same from the start of the process', cold, null, '5 times'),
    ];
  } finally {
    made.remove();
  }
}

/** What the server does for the column of differences: the unsaved text evaluated, HEAD's side known or not, both compared. */
async function sinceHead(): Promise<BenchRow> {
  const made = TemporaryRepository.make();
  try {
    made.import([{ 'a.gloss': hundredResults(0), 'a.csv': secondsRun(1) }]);
    const engine = new Engine(new NodeHost(made.path));
    const path = `${made.path}/a.gloss`;
    const times: number[] = [];
    for (let k = 0; k < 23; k++) {
      // Nothing is known of HEAD yet: the first look at it counts each time.
      const revisionsBeside = new RevisionsBeside(never);
      const start = performance.now();
      const snapshot = await engine.evaluate(path, hundredResults(0.25 * (k + 1)));
      const committed = (await revisionsBeside.at(made.path, path, 'HEAD'))!;
      // No curve is asked for: of the ground the comparison reads the snapshot alone.
      const ground = { snapshot, curves: null } as unknown as Ground;
      const { against } = againstOf(committed, ground, defaultChoices);
      times.push(performance.now() - start);
      const moved = [...against.since.values()].filter((s) => s.moved).length;
      assert.ok(against.since.size >= 100 && moved > 20, `${against.since.size} ${moved}`);
    }
    return row(
      'unsaved text against HEAD, 100 results and their quantities',
      summary(times),
      1000,
      'HEAD unknown each time',
    );
  } finally {
    made.remove();
  }
}
