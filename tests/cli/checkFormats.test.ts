import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import * as fc from 'fast-check';
import { escapedData, escapedProperty, findingsGithub } from '../../server/src/presentation/findingsGithub';
import { findingsSarif } from '../../server/src/presentation/findingsSarif';
import { finding, snapshot } from '../presentation/snapshots';
import { folderWith, say } from './fakeTerminal';
import { smallGloss, smallRun } from './smallRun';

// The schema of SARIF 2.1.0 (OASIS) as an MIT package carries it; written in draft 4, of which it uses nothing that draft 7 reads otherwise.
const schema = JSON.parse(
  readFileSync('node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json', 'utf8'),
) as Record<string, unknown>;
delete schema.$schema;
delete schema.id;
const validate = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile(schema);

interface Log {
  readonly runs: readonly {
    readonly results: readonly {
      readonly ruleId: string;
      readonly partialFingerprints: Record<string, string>;
      readonly suppressions: readonly { readonly justification: string }[];
      readonly locations: readonly {
        readonly physicalLocation: { artifactLocation: { uri: string }; region: Record<string, number> };
      }[];
    }[];
  }[];
}

const undone = (text: string): string =>
  text.replace(/%3A/g, ':').replace(/%2C/g, ',').replace(/%0D/g, '\r').replace(/%0A/g, '\n').replace(/%25/g, '%');

describe('check --format github', () => {
  it('escapes any text so that one command stays one line and nothing of it is lost', () => {
    const text = fc.string({ unit: fc.constantFrom('%', '\r', '\n', ':', ',', '=', 'a', '2', '5', '°', '\u{1F525}') });
    fc.assert(
      fc.property(text, (t) => {
        assert.doesNotMatch(escapedData(t), /[\r\n]|%(?!25|0D|0A)/);
        assert.doesNotMatch(escapedProperty(t), /[\r\n:,]|%(?!25|0D|0A|3A|2C)/);
        assert.equal(undone(escapedProperty(t)), t);
      }),
      { seed: 4 },
    );
  });

  it('puts the worst ten first and the rest in one line', () => {
    const many = Array.from({ length: 14 }, (_, i) =>
      finding({ severity: i === 13 ? 'error' : 'note', message: `::error::${i}\nnext` }),
    );
    const lines = findingsGithub([snapshot({ findings: many })])
      .trimEnd()
      .split('\n');
    assert.equal(lines.length, 11);
    assert.match(lines[0], /^::error file=b\.gloss,line=3,endLine=3,col=12,endColumn=22,title=.*::::error::13%0Anext$/);
    assert.equal(lines.slice(0, 10).filter((l) => l.startsWith('::notice ')).length, 9);
    assert.match(lines[10], /^1 error, 13 notes in 1 gloss; the 4 not shown here/);
  });

  it('says in one line that nothing stands, also where all is allowed', () => {
    assert.equal(findingsGithub([snapshot({ findings: [finding({ allowed: 'so' })] })]), '1 allowed in 1 gloss\n');
  });
});

describe('check --format sarif', () => {
  const missed = smallGloss.replace('in 14..16 %', 'in 1..2 %');
  const allowed = missed.replace('as Loss', 'as Loss\n  allow requirement-not-met because "agreed"');
  const folder = folderWith({
    'b.csv': smallRun,
    'dir ä/m,1.gloss': missed.replace('b.csv', '../b.csv'),
    'missed.gloss': missed,
    'allowed.gloss': allowed,
  });
  after(() => folder.remove());
  const sarif = async (...words: string[]): Promise<Log> => {
    const { out } = await say(['check', ...words, '--format', 'sarif'], { cwd: folder.path });
    return JSON.parse(out) as Log;
  };
  const of = (log: Log) => log.runs[0].results.find((r) => r.ruleId === 'requirement-not-met')!;

  it('keeps the schema of SARIF 2.1.0, which refuses a level it does not know', async () => {
    const log = await sarif('.');
    assert.ok(validate(log), JSON.stringify(validate.errors));
    const wrong = JSON.parse(JSON.stringify(log).replace('"level":"error"', '"level":"grave"')) as unknown;
    assert.ok(!validate(wrong));
  });

  it('marks the place of the finding and no more, relative to the root and escaped as an address', async () => {
    const { physicalLocation } = of(await sarif('dir ä/m,1.gloss')).locations[0];
    assert.equal(physicalLocation.artifactLocation.uri, 'dir%20%C3%A4/m%2C1.gloss');
    assert.deepEqual(physicalLocation.region, { startLine: 11, startColumn: 9, endLine: 11, endColumn: 19 });
  });

  it('knows a finding again when lines move, and tells two of one kind apart', async () => {
    const before = of(await sarif('missed.gloss')).partialFingerprints;
    const moved = await say(['check', '-', '--at', 'missed.gloss', '--format', 'sarif'], {
      cwd: folder.path,
      input: `# a line\n\n${missed}`,
    });
    assert.deepEqual(of(JSON.parse(moved.out) as Log).partialFingerprints, before);
    const twice = findingsSarif([snapshot({ findings: [finding(), finding({ message: 'another' })] })]) as Log;
    assert.equal(new Set(twice.runs[0].results.map((r) => r.partialFingerprints['statement/v1'])).size, 2);
  });

  it('suppresses what is allowed, with its reason, and says of the rest that it is not', async () => {
    assert.deepEqual(of(await sarif('allowed.gloss')).suppressions, [{ kind: 'inSource', justification: 'agreed' }]);
    assert.deepEqual(of(await sarif('missed.gloss')).suppressions, []);
  });
});
