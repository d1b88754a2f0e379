import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { digestedText, digestOf } from '../../server/src/approval/digest';
import { readRecord, recordText, type ApprovalRecord } from '../../server/src/approval/record';
import { MemoryHost } from '../../server/src/host/memoryHost';
import { NodeHost } from '../../server/src/host/nodeHost';
import { ClientHost } from '../../server/src/lsp/worker/clientHost';
import { savedResults } from '../../server/src/presentation/diff/saved';
import { byRuiz, Lab, record } from './support/lab';

const schema = (name: string): object => JSON.parse(readFileSync(`server/src/presentation/${name}`, 'utf8')) as object;
// Judged by an independent validator (ajv, JSON Schema draft-07).
const validate = new Ajv({ allErrors: true })
  .addSchema(schema('results.schema.json'), 'results.schema.json')
  .compile(schema('approval.schema.json'));
const errors = (text: string): string[] =>
  validate(JSON.parse(text)) ? [] : validate.errors!.map((e) => `${e.instancePath} ${e.message ?? ''}`);

const identity = 'a'.repeat(64);
const plain: ApprovalRecord = {
  approvers: [byRuiz],
  files: [
    { role: 'run', path: 'b "1".csv', identity },
    { role: 'blank', path: '../z.csv', identity: 'b'.repeat(64) },
  ],
  statements: ['require First.loss <= 5 %', 'run "b.csv"\nmass 20 mg\nsample "µ"'],
  stored: { schema: 'thermogloss-results/1', gloss: 'b.gloss', results: [{ value: 0.1 }] },
};

describe('the digest of an approval', () => {
  // The lines as language.md, section 4, lists them, written out by hand.
  const lines = `thermogloss-approval/1
run "b \\"1\\".csv" ${identity}
blank "../z.csv" ${'b'.repeat(64)}
require First.loss <= 5 %
run "b.csv" mass 20 mg sample "µ"
{"schema":"thermogloss-results/1","gloss":"b.gloss","results":[{"value":0.1}]}`;

  it('is taken over schema, files, statements and the results as they are stored, and not over who approved', () => {
    assert.equal(digestedText(plain), lines);
    const expected = createHash('sha256').update(Buffer.from(lines, 'utf8')).digest('hex').slice(0, 32);
    assert.equal(digestOf(new MemoryHost(), plain), expected);
    assert.equal(digestOf(new MemoryHost(), { ...plain, approvers: [] } as ApprovalRecord), expected);
  });

  it('is the same for the record as it is written and read', () => {
    const read = readRecord(recordText(plain)) as ApprovalRecord;
    assert.deepEqual(read, plain);
    assert.equal(digestedText(read), lines);
  });

  it('comes from SHA-256, on every host the same', () => {
    const hosts = [new MemoryHost(), new NodeHost('.'), new ClientHost('memfs:/lab', { read: never, list: never })];
    for (const host of hosts) {
      // FIPS 180-4, examples of SHA-256 published by NIST with it (from memory): one block and two.
      assert.equal(host.digest('abc'), 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
      assert.equal(
        host.digest('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq'),
        '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
      );
      assert.equal(host.digest('µ'), createHash('sha256').update(Uint8Array.of(0xc2, 0xb5)).digest('hex'));
    }
  });
});

describe('the record of an approval', () => {
  it('keeps the committed schema, with one who approves and with two', async () => {
    const lab = new Lab();
    await lab.approve({ ...byRuiz, because: 'a trial' });
    assert.deepEqual(errors(lab.text(record)), []);
    await lab.approve({ ...byRuiz, by: 'C. Lund' });
    assert.deepEqual(errors(lab.text(record)), []);
  });

  it('has a schema that is strict: no key more, none less', async () => {
    const lab = new Lab();
    await lab.approve();
    const json = JSON.parse(lab.text(record)) as { approval: { approvers: object[]; files: object[] } };
    const { approval } = json;
    for (const bad of [
      { ...json, more: 1 },
      { ...json, approval: { ...approval, more: 1 } },
      { ...json, approval: { ...approval, approvers: [] } },
      { ...json, approval: { ...approval, files: [{ ...approval.files[0], identity: 'A' }] } },
      { ...json, approval: { ...approval, approvers: [{ ...approval.approvers[0], more: 1 }] } },
      { ...json, approval: undefined },
      { ...json, results: undefined },
    ]) {
      assert.notDeepEqual(errors(JSON.stringify(bad)), []);
    }
  });

  it('is a saved results file, which a comparison reads', async () => {
    const lab = new Lab();
    await lab.approve();
    const saved = savedResults(lab.text(record));
    assert.ok(!('problem' in saved));
    assert.deepEqual(
      saved.map((s) => [s.gloss, s.results.some((r) => r.id === 'First.loss' && r.value !== null)]),
      [['series/b.gloss', true]],
    );
  });

  it('that holds anything else is refused with what it lacks', () => {
    const problem = (text: string): string => {
      const read = readRecord(text);
      assert.ok('problem' in read, text);
      return read.problem;
    };
    const json = JSON.parse(recordText(plain)) as { approval: object };
    const block = (change: object): string => JSON.stringify({ ...json, approval: { ...json.approval, ...change } });
    assert.match(problem(''), /no JSON/);
    assert.match(problem('[]'), /no results/);
    assert.match(problem('null'), /no results/);
    assert.match(problem(JSON.stringify(plain.stored)), /holds no thermogloss-approval\/1/);
    assert.match(problem(block({ schema: 'thermogloss-approval/2' })), /holds no thermogloss-approval\/1/);
    assert.match(problem(block({ approvers: [{ by: 1 }] })), /approvers/);
    assert.match(problem(block({ approvers: 'M. Ruiz' })), /approvers/);
    assert.match(problem(block({ files: [{ role: 'method', path: 'm.gloss', identity }] })), /files/);
    assert.match(problem(block({ statements: [1] })), /statements/);
  });
});

function never(): Promise<never> {
  return Promise.reject(new Error('reads nothing'));
}
