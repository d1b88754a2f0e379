import assert from 'node:assert/strict';
import { findingTable } from '../../server/src/findings/table';
import { clauseOf, statements } from '../../server/src/language/vocabulary/statements';
import { bases } from '../../server/src/language/vocabulary/bases';
import { because, everywhere } from '../../server/src/language/vocabulary/clauses';
import { functions } from '../../server/src/language/vocabulary/functions';
import { generateReference } from '../../server/src/language/vocabulary/reference';
import type { ClauseRecord, StatementRecord } from '../../server/src/language/vocabulary/record';
import { signals } from '../../server/src/language/vocabulary/signals';
import { check, expectSilent } from './support/check';
import { alone, limestone, limestoneMethod } from './support/examples';

describe('the examples of the language', () => {
  it('of the design page are read and resolved without a finding', () => {
    for (const text of alone) expectSilent(text);
    expectSilent(limestone, limestoneMethod);
  });

  for (const record of statements) {
    it(`of \`${record.form}\` has no finding`, () => {
      expectSilent(inGloss(record, record.example), methodFor(record));
    });
    for (const clause of record.clauses) {
      it(`of \`${record.keyword}\` with \`${clause.form}\` has no finding and sets the clause`, () => {
        const word = clause.example.split(' ')[0]!;
        const [head, ...lines] = withoutOn(record, clause).split('\n');
        const needed = lines.filter((line) => line.startsWith('  of ') && word !== 'of');
        const { tree } = expectSilent(
          inGloss(record, [head, ...needed, `  ${clause.example}`].join('\n'), clause),
          methodFor(record),
        );
        const { canonical } = tree.statements.filter(({ statement }) => statement?.kind === record.kind).at(-1)!;
        // `on` of `allow` is written in its head, as the first form has it.
        const written =
          record.kind === 'allow' && word === 'on' ? canonical.split(' because')[0]!.split(' ') : words(canonical);
        assert.ok(written.includes(word), canonical);
      });
    }
  }

  it('of `because` changes a statement of a method', () => {
    const text = `run "a.csv"\nmethod "m.gloss"\noverride step First 655..805 °C\n  ${because.example}\n`;
    expectSilent(text, 'method "M"\nstep First 640..800 °C\n');
  });

  for (const { name, example } of functions) {
    it(`of \`${name}\` has a value`, () => {
      expectSilent(`run "a.csv"\nlet x = ${example}\n`);
    });
  }

  it('of bases and signals are read where they belong', () => {
    for (const { example } of bases) {
      expectSilent(
        `run "a.csv"\nstep Moisture 40..180 °C\nresidue Oxides at end of hold 1\nstep First 640..800 °C\n  ${example}\n`,
      );
    }
    for (const { example, evaluated } of signals) {
      if (evaluated) expectSilent(`run "a.csv"\nonset Start 640..800 °C\n  of ${example}\n`);
    }
  });
});

describe('the records of findings about text', () => {
  const families = new Set(['syntax', 'names', 'units']);
  // What their method holds is described there in words.
  const methods: Readonly<Record<string, string>> = {
    'given-missing': 'method "M"\ngiven polymer in %\n',
    'override-of-nothing': 'method "M"\nstep First 640..800 °C\n',
    'override-without-reason': 'method "M"\nstep First 640..800 °C\n',
  };
  for (const record of findingTable.values()) {
    if (!families.has(record.family) && record.code !== 'allow-not-possible') continue;
    const codes = (gloss: string): readonly string[] =>
      check(gloss, methods[record.code] ?? null)
        .findings.filter((finding) => record.code === 'confusing-name' || finding.severity !== 'note')
        .map((finding) => finding.code);
    it(`${record.code} fires in its example and nothing else does`, () => {
      assert.deepEqual([...new Set(codes(record.fires.gloss))], [record.code]);
    });
    it(`nothing fires in the near miss of ${record.code}`, () => {
      assert.deepEqual(codes(record.silent.gloss), []);
    });
  }
});

describe('the reference', () => {
  it('is the same every time and names every word of the language', () => {
    const text = generateReference();
    assert.equal(generateReference(), text);
    const words = statements.flatMap((record) => [record.keyword, ...record.clauses.map((clause) => clause.word)]);
    for (const word of new Set([...words, ...functions.map((f) => f.name), ...signals.map((s) => s.word)])) {
      assert.match(text, new RegExp(`\`${word}\\b`), word);
    }
  });

  it('shows each clause with prose and an example that begins with its word', () => {
    for (const record of statements) {
      for (const clause of record.clauses) {
        assert.ok(clause.prose.length > 10, clause.word);
        assert.ok(clause.example.startsWith(clause.word), clause.word);
        assert.equal(clauseOf(record, clause.word), clause);
      }
      for (const common of everywhere) assert.ok(record.clauses.includes(common));
    }
  });
});

/** First words of the clauses. */
function words(canonical: string): readonly string[] {
  return canonical
    .split('\n')
    .slice(1)
    .map((line) => line.split(' ')[0]!);
}

/** A gloss of the right role around an example, with the statements it names. */
function inGloss(record: StatementRecord, example: string, clause: ClauseRecord | null = null): string {
  const first =
    record.kind === 'given' ? 'method "M"' : record.roles.includes('run') && record.kind !== 'run' ? 'run "a.csv"' : '';
  const names = clause === null ? [] : ['First', 'Second', 'Moisture'].filter((name) => clause.example.includes(name));
  const steps = names
    .filter((name) => !example.startsWith(`step ${name}`) && !record.context.includes(`step ${name}`))
    .map((name, i) => `step ${name} ${640 + 100 * i}..${740 + 100 * i} °C`);
  return [first, record.context, ...steps, example].filter((line) => line !== '').join('\n');
}

/** The head of `allow` in its short form, where `on` is to be a clause. */
function withoutOn(record: StatementRecord, clause: ClauseRecord): string {
  return clause.word === 'on' ? record.example.replace(' on First', '') : record.example;
}

function methodFor(record: StatementRecord): string | null {
  return record.kind === 'use method' ? 'method "M"\n' : null;
}
