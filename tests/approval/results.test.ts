import assert from 'node:assert/strict';
import { digestOf } from '../../server/src/approval/digest';
import { readRecord, recordText, type ApprovalRecord } from '../../server/src/approval/record';
import { aboutApprovals, gloss, Lab, record } from './support/lab';

type Stored = { results: { id: string; value: number; uncertainty: number; state: string }[] };

/** An approved gloss whose record says otherwise of one result, with the digest that fits: as if it had come out so then. */
async function stored(id: string, change: (r: Stored['results'][number]) => void, more = ''): Promise<string[]> {
  const lab = new Lab();
  lab.put(gloss, lab.text(gloss) + more);
  await lab.approve();
  const read = readRecord(lab.text(record)) as ApprovalRecord;
  const old = digestOf(lab.host, read);
  change((read.stored as unknown as Stored).results.find((r) => r.id === id)!);
  lab.put(record, recordText(read));
  lab.put(gloss, lab.text(gloss).replace(old, digestOf(lab.host, read)));
  return aboutApprovals(await lab.checked());
}

const last = (x: number): number => x * (1 + Number.EPSILON);

// max(0.05 u, 1e-9 relative) of language.md, section 4, with the u that is stored.
describe('an approved result', () => {
  it('may differ in its last bit, as on another machine', async () => {
    const found = await stored('First.loss', (r) => {
      const other = last(r.value);
      assert.notEqual(other, r.value);
      r.value = other;
    });
    assert.deepEqual(found, []);
  });

  it('may move by 0.04 of its standard uncertainty and not by 0.06, either way', async () => {
    for (const [part, fires] of [
      [0.04, false],
      [-0.04, false],
      [0.06, true],
      [-0.06, true],
    ] as const) {
      const found = await stored('First.loss', (r) => (r.value -= part * r.uncertainty));
      assert.equal(found.length, fires ? 1 : 0, `${part}: ${found.join('\n')}`);
      if (fires) {
        const digits = String.raw`15\.\d{3} ± 0\.030 % \(initial\)`;
        const sign = part > 0 ? '\\+' : '-';
        assert.match(
          found[0],
          new RegExp(`^approved-result-moved: .*: First\\.loss from ${digits} to ${digits}, ${sign}0\\.002 %\\.$`),
        );
      }
    }
  });

  it('is judged by the uncertainty that is stored, whatever it is now', async () => {
    const narrow = await stored('First.loss', (r) => {
      r.value -= 0.049 * r.uncertainty;
      r.uncertainty /= 1.04;
    });
    assert.match(narrow.join('\n'), /^approved-result-moved: .*First\.loss/);
    const wide = await stored('First.loss', (r) => {
      r.value -= 0.051 * r.uncertainty;
      r.uncertainty *= 1.04;
    });
    assert.deepEqual(wide, []);
  });

  it('has moved where its uncertainty did by more than 0.05 of what is stored, or is known no more', async () => {
    for (const [factor, fires] of [
      [1.04, false],
      [0.97, false],
      [1.06, true],
      [0.05, true],
    ] as const) {
      const found = await stored('First.loss', (r) => (r.uncertainty *= factor));
      assert.equal(found.length, fires ? 1 : 0, `${factor}: ${found.join('\n')}`);
      if (fires) assert.match(found[0], /First\.loss .*\(its standard uncertainty was 0\.0\d+ %, is 0\.0295 %\)/);
    }
    const unknown = await stored('First.loss', (r) => Object.assign(r, { uncertainty: null }));
    assert.match(unknown.join('\n'), /First\.loss .*\(its standard uncertainty was not known, is 0\.0295 %\)/);
    const last = await stored('exact', (r) => (r.uncertainty = 2.9e-9), '\nlet exact = 3 mg\n');
    assert.deepEqual(last, []);
    const more = await stored('exact', (r) => (r.uncertainty = 3.1e-9), '\nlet exact = 3 mg\n');
    assert.match(more.join('\n'), /exact .*standard uncertainty was 3\.1e-9 mg, is 0 mg/);
  });

  it('that is exact may move by 1e-9 of its value', async () => {
    const exact = '\nlet exact = 3 mg\n';
    const by = (part: number) => stored('exact', (r) => (r.value *= 1 + part), exact);
    assert.deepEqual(await by(9e-10), []);
    assert.match((await by(1.1e-9)).join('\n'), /exact from 3 mg to 3 mg, -3\.3e-9 mg/);
  });

  it('has moved where it is a number no more, or one again', async () => {
    const found = await stored('First.loss', (r) => (r.state = 'apparent'));
    assert.match(found.join('\n'), /First\.loss .*\(was apparent, is a number\)/);
  });

  it('that a later version of the program adds was not approved, and says nothing', async () => {
    const lab = new Lab();
    await lab.approve();
    const read = readRecord(lab.text(record)) as ApprovalRecord;
    const old = digestOf(lab.host, read);
    const results = (read.stored as unknown as Stored).results;
    results.splice(
      results.findIndex((r) => r.id === 'First.loss'),
      1,
    );
    lab.put(record, recordText(read));
    lab.put(gloss, lab.text(gloss).replace(old, digestOf(lab.host, read)));
    assert.deepEqual(aboutApprovals(await lab.checked()), []);
  });
});
