import assert from 'node:assert/strict';
import type { TemporaryRepository } from '../revisions/support/repository';
import { limestoneReport, limestoneRepository } from '../support/exampleReport';

// Items of ISO/IEC 17025:2017, 7.8.2.1 (general part of a report) and of the report clauses of ISO 11357-1 and ISO 11358-1;
// all three from memory.
const stated: readonly (readonly [string, RegExp])[] = [
  ['a title', /^# Evaluation report$/m],
  ['what identifies it', /^- SHA-256 of the gloss: [0-9a-f]{64}$/m],
  ['its end', /^End of report\.$/m],
  ['the method', /^- method: Carbonates in limestone under carbon dioxide/m],
  ['the item', /^- sample: Dolomitic limestone VQ-217, specimen 1$/m],
  ['the day of the measurement', /^- measured: 2026-10-02$/m],
  ['the day of issue', /^- issued: 2026-10-05$/m],
  ['that results relate to the items tested only', /^The results relate only to the items tested\.$/m],
  [
    'results with unit, basis and uncertainty',
    /^\| First\.loss \| 14\.\d+ ± 0\.\d+ % \(initial\) \| 0\.\d+ % \(k = 2\) \|/m,
  ],
  ['the decision rule', /^Decision rule after JCGM 106:2012/m],
  ['crucible with volume and lid', /^- crucible: alumina 85 µL, no lid\n- crucible volume: 85 µL\n- lid: no lid$/m],
  ['the mass of the specimen', /^- mass of the specimen: 20\.052 ± 0\.010 mg$/m],
  ['gas with its flow', /^- gas, with every switch: carbon dioxide 50 mL\/min$/m],
  ['the programme asked for, cooling included', /^- programme asked for: heat .* cool to 200 °C at 20 K\/min$/m],
  ['the programme as measured', /^\| cooling 1 \| 999\.3 \| 199\.0 \|/m],
  ['the calibration with its range', /^- calibrated: temperature 25\.\.1065 °C, u = 1\.5 K; heatflow/m],
  ['the number of specimens', /^- specimens evaluated here: 1 \(n = 1\)$/m],
  ['the blank subtracted', /^- blank: "blank-co2-1\.gloss", "blank-co2-2\.gloss" subtracted from mass$/m],
  ['baseline and smoothing', /^- baseline, levels, smoothing: baseline sigmoidal, span 60 K; derivative over 5 K$/m],
  ['the window and which heating it is in', /^- window: 500\.\.846 °C in heating 1$/m],
  ['the mass that percentages are of', /^- basis: initial$/m],
  ['what each temperature is', /^\| FirstHeat\.onset \| Where the tangent of the first flank meets the baseline/m],
  ['the curves with the endothermic direction', /^Figure .*: Curves over temperature: .*; endothermic down\.$/m],
  ['what was decided otherwise than by the method', /^### Decided otherwise than by method and defaults$/m],
];

const asked = [
  ['laboratory', 'place', 'customer', 'condition', 'sampling', 'received', 'operator', 'evaluator', 'authoriser'],
  ['method edition', 'deviations', 'instrument', 'sensor', 'form', 'preparation', 'history', 'gas purity'],
  ['calibration materials', 'calibration date'],
].flat();

describe('the content of a report', () => {
  let repository: TemporaryRepository;
  let report: string;
  let filled: string;

  before(async () => {
    repository = limestoneRepository();
    report = await limestoneReport(repository, 'markdown');
    const notes = asked.filter((a) => a !== 'operator' && a !== 'evaluator' && a !== 'gas purity');
    const text = repository.git('show', 'HEAD:vq217-1.gloss');
    repository.write({ 'vq217-1.gloss': `${text}\n${notes.map((n) => `note "${n}: invented ${n}"\n`).join('')}` });
    filled = await limestoneReport(repository, 'markdown');
  });
  after(() => repository.remove());

  for (const [item, wanted] of stated) {
    it(`holds ${item}`, () => assert.match(report, wanted));
  }

  for (const item of asked) {
    it(`names ${item} as missing where nothing states it, in its place and in the list at the end`, () => {
      const lines = report.split('\n');
      assert.ok(lines.includes(`- not stated: ${item}`), item);
      assert.ok(
        lines.some((l) => l.startsWith(`- not stated: ${item} (ISO`)),
        item,
      );
    });
  }

  it('names nothing as missing that a note states', () => {
    const missing = [...filled.matchAll(/^- not stated: (.*) \(ISO/gm)].map((m) => m[1]);
    assert.deepEqual(missing, ['operator', 'evaluator', 'gas purity']);
    assert.match(filled, /^- sampling: invented sampling$/m);
  });
});
