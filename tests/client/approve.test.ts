import assert from 'node:assert/strict';
import { approveResults, type ApproveWorld, type Outcome } from '../../client/src/commands/approve';
import { localDay } from '../../client/src/text/localDay';
import type { ApproveAnswer, ApproveParams } from '../../server/src/protocol/messages';

const uri = 'file:///b.gloss';
const writing: ApproveAnswer = {
  ok: true,
  uri,
  version: 3,
  edits: [],
  record: { uri: `${uri}.approved.json`, text: '{}' },
  digest: '0'.repeat(32),
};
const due: ApproveAnswer = { ok: false, needs: 'reason', message: 'line 4: requirement-not-met' };
const t = (text: string): string => text;

/** What the person and the editor say; `did` is what was asked and written, in order. */
async function tried(of: Partial<ApproveWorld> & { readonly answers?: readonly (ApproveAnswer | null)[] } = {}) {
  const did: string[] = [];
  const asked: ApproveParams[] = [];
  const answers = of.answers ?? [writing];
  const world: ApproveWorld = {
    today: () => '2026-10-02',
    proposal: () => Promise.resolve('M. Ruiz'),
    name: (proposal) => Promise.resolve(proposal),
    reason: (why) => {
      did.push(`reason for ${why}`);
      return Promise.resolve('a trial');
    },
    writable: () => Promise.resolve(true),
    ...of,
    ask: (params) => {
      asked.push(params);
      return Promise.resolve(answers[asked.length - 1] ?? null);
    },
    linked: of.linked ?? no,
    edit: () => {
      did.push('edit');
      return of.edit?.(writing as never) ?? Promise.resolve(true);
    },
    record: () => {
      did.push('record');
      return of.record?.(writing as never) ?? Promise.resolve(true);
    },
    save: () => {
      did.push('save');
      return of.save?.() ?? Promise.resolve(true);
    },
  };
  const outcome: Outcome = await approveResults(uri, world, t);
  return { outcome, did, asked };
}

const no = (): Promise<boolean> => Promise.resolve(false);
const calledOff = (): Promise<undefined> => Promise.resolve(undefined);

describe('approving in the editor', () => {
  it('asks for the name, which is proposed, and writes the line, then the record, then saves', async () => {
    const { outcome, did, asked } = await tried();
    assert.deepEqual(asked, [{ uri, by: 'M. Ruiz', on: '2026-10-02', because: null }]);
    assert.deepEqual(did, ['edit', 'record', 'save']);
    assert.deepEqual(outcome, { done: true, by: 'M. Ruiz', digest: '0'.repeat(32) });
  });

  it('asks for a reason only where one is due, with what stands against the results', async () => {
    const { outcome, did, asked } = await tried({ answers: [due, writing], name: () => Promise.resolve(' C. Lund ') });
    assert.deepEqual(
      asked.map(({ by, because }) => [by, because]),
      [
        ['C. Lund', null],
        ['C. Lund', 'a trial'],
      ],
    );
    assert.deepEqual(did, ['reason for line 4: requirement-not-met', 'edit', 'record', 'save']);
    assert.equal(outcome.done, true);
  });

  it('writes nothing where a person calls it off or gives nothing', async () => {
    for (const of of [
      { name: calledOff },
      { name: () => Promise.resolve(' ') },
      { answers: [due, writing], reason: calledOff },
      { answers: [due, writing], reason: () => Promise.resolve('') },
    ]) {
      const { outcome, did } = await tried(of);
      assert.deepEqual(outcome, { done: false, reason: null });
      assert.deepEqual(did, []);
    }
  });

  it('writes nothing where the gloss is read-only, and asks nobody', async () => {
    const { outcome, did, asked } = await tried({ writable: no });
    assert.match((!outcome.done && outcome.reason) || '', /read-only/);
    assert.deepEqual([did, asked], [[], []]);
  });

  it('writes nothing where the server refuses or is gone', async () => {
    const refused: ApproveAnswer = { ok: false, needs: 'other', message: 'b.gloss evaluates nothing' };
    for (const [answers, words] of [
      [[refused], /evaluates nothing/],
      [[null], /gave no answer/],
      [[due, null], /gave no answer/],
      [[due, due], /requirement-not-met/],
    ] as const) {
      const { outcome, did } = await tried({ answers });
      assert.match((!outcome.done && outcome.reason) || '', words);
      assert.ok(!did.includes('edit'));
    }
  });

  it('writes nothing where a link stands in the place of the record', async () => {
    const { outcome, did } = await tried({ linked: () => Promise.resolve(true) });
    assert.match((!outcome.done && outcome.reason) || '', /link stands where the record goes/);
    assert.deepEqual(did, []);
  });

  it('writes no record where the text is another by then, and says what is lacking where a later step fails', async () => {
    const text = await tried({ edit: no });
    assert.deepEqual(text.did, ['edit']);
    assert.match((!text.outcome.done && text.outcome.reason) || '', /text changed/);
    const record = await tried({ record: no });
    assert.deepEqual(record.did, ['edit', 'record']);
    assert.match((!record.outcome.done && record.outcome.reason) || '', /record could not be written/);
    const saved = await tried({ save: no });
    assert.match((!saved.outcome.done && saved.outcome.reason) || '', /not saved/);
  });

  it('dates by the day where the person is', () => {
    assert.equal(localDay(new Date(2026, 0, 5, 0, 1)), '2026-01-05');
    assert.equal(localDay(new Date(2026, 11, 31, 23, 59)), '2026-12-31');
  });
});
