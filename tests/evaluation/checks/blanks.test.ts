import assert from 'node:assert/strict';
import { dayOf } from '../../../server/src/evaluation/checks/blankUse';
import { lift } from '../../../server/src/evaluation/checks/buoyancy';
import { checked, columns, fires, quiet, silent, type BlankData } from './checked';
import { bell, programme, rise, signalOf, type Programme } from './curves';

const heating = programme(30, [{ to: 900, rate: 10 }, { hold: 300 }]);
const own = ['  crucible alumina 85 µL, no lid', '  atmosphere nitrogen 50 mL/min'];
const emptyGloss = (clauses: readonly string[] = own) => ['run "z.csv"', '  sample none', ...clauses].join('\n');
/** Lift of nitrogen on carrier and crucible in mg (1.145 mg/mL at 25 °C: table of gas densities). */
const nitrogen = (T: number) => lift(1.145, 30, T);

function blankOf(p: Programme, of: (T: number, t: number) => number, more: Partial<BlankData> = {}): BlankData {
  return {
    columns: columns(p, [
      { signal: 'mass', unit: 'mg', values: signalOf(p, of, 0.0004, 7) },
      { signal: 'heatflow', unit: 'mW', values: signalOf(p, (T) => -2 + 0.006 * T - 4e-6 * T * T, 0.003, 8) },
    ]),
    gloss: emptyGloss(),
    ...more,
  };
}

interface Case {
  readonly clauses?: readonly string[];
  readonly evaluate?: string;
  readonly blank?: string;
  readonly p?: Programme;
  readonly lifted?: boolean;
}

/** A specimen that loses 3 mg of 20 mg at 400 °C, in nitrogen, with its lift, with the blanks given. */
function withBlanks(blanks: readonly BlankData[], c: Case = {}) {
  const p = c.p ?? heating;
  const mass = signalOf(p, (T) => 20 - 3 * rise(T, 400, 8) + (c.lifted === false ? 0 : nitrogen(T)), 0.0004);
  const heatflow = signalOf(p, (T) => -2 + 0.006 * T - 4e-6 * T * T + 8 * bell(T, 400, 12), 0.003);
  const data = columns(p, [
    { signal: 'mass', unit: 'mg', values: mass },
    { signal: 'heatflow', unit: 'mW', values: heatflow },
  ]);
  const statements = blanks.map((_, i) => `blank "z${i}.csv"\n  subtract mass, heatflow${c.blank ?? ''}`);
  const gloss = ['run "a.csv"', '  mass 20 mg', '  endothermic up', '  measured 2026-10-12', ...(c.clauses ?? own)];
  return checked(data, [...gloss, ...statements, c.evaluate ?? 'step First 300..500 °C'].join('\n'), blanks);
}

describe('checks of blanks', () => {
  it('find nothing in a blank that fits', () => {
    quiet(withBlanks([blankOf(heating, nitrogen)]));
  });

  it('see another gas, crucible, lid or volume', () => {
    const other = (crucible: string, gas: string) =>
      withBlanks([
        blankOf(heating, nitrogen, { gloss: emptyGloss([`  crucible ${crucible}`, `  atmosphere ${gas}`]) }),
      ]);
    fires(other('alumina 85 µL, no lid', 'argon 50 mL/min'), 'blank-mismatch', /gas argon instead of nitrogen/);
    fires(
      other('platinum 85 µL, no lid', 'nitrogen 50 mL/min'),
      'blank-mismatch',
      /crucible platinum instead of alumina/,
    );
    fires(
      other('alumina 85 µL, pierced lid', 'nitrogen 50 mL/min'),
      'blank-mismatch',
      /"pierced lid" instead of "no lid"/,
    );
    fires(other('alumina 70 µL, no lid', 'nitrogen 50 mL/min'), 'blank-mismatch', /volume 70 µL instead of 85 µL/);
    silent(other('alumina 85 µL, no lid', 'N2 50 mL/min'), 'blank-mismatch');
  });

  it('see a flow that is 12 % off, and not one that is 8 % off', () => {
    const flow = (text: string) =>
      withBlanks([blankOf(heating, nitrogen, { gloss: emptyGloss([own[0], `  atmosphere nitrogen ${text}`]) })]);
    fires(flow('56 mL/min'), 'blank-mismatch', /flow 56 mL\/min instead of 50 mL\/min \(12 % off\)/);
    silent(flow('54 mL/min'), 'blank-mismatch');
  });

  it('see a rate that is 3 % off, with the temperatures it leads to, and not one that is 1 % off', () => {
    const rate = (value: number, start = 30) =>
      withBlanks([blankOf(programme(start, [{ to: 900, rate: value }, { hold: 400 }]), nitrogen)], {
        evaluate: 'step First 300..500 °C',
      });
    fires(
      rate(10.3),
      'blank-mismatch',
      /heating 1 at 10\.3 instead of 10 K\/min \(3\.?0? % off, limit 2 %\).*limit 5 K/,
    );
    silent(rate(10.04), 'blank-mismatch');
  });

  it('see that at equal times the blank was 6 K away, and not at 4 K', () => {
    const shifted = (by: number) =>
      withBlanks([blankOf({ ...heating, temperature: heating.temperature.map((T) => T + by) }, nitrogen)]);
    fires(shifted(6), 'blank-mismatch', /it is at [\d.]+ °C and the run at [\d.]+ °C \(limit 5 K\)/);
    silent(shifted(4), 'blank-mismatch');
  });

  it('see a blank that ends before the run', () => {
    const short = programme(30, [{ to: 800, rate: 10 }]);
    fires(withBlanks([blankOf(short, nitrogen)]), 'blank-too-short', /does not reach 90\d of 5520 readings of mass/, 2);
    silent(withBlanks([blankOf(heating, nitrogen)]), 'blank-too-short');
  });

  it('ask how a bare blank was measured, and offer what the run says', () => {
    const bare = (blank: string) => withBlanks([blankOf(heating, nitrogen, { gloss: null })], { blank });
    const found = fires(bare(''), 'blank-undescribed', /which crucible and atmosphere z0\.csv was measured with/);
    assert.deepEqual(
      found.fixes.map((f) => f.title),
      ['Write "crucible alumina 85 µL, no lid"', 'Write "atmosphere nitrogen 50 mL/min"'],
    );
    silent(bare('\n  crucible alumina 85 µL, no lid\n  atmosphere nitrogen 50 mL/min'), 'blank-undescribed');
  });

  it('see one measurement named twice', () => {
    const pair = (identity: string) =>
      withBlanks([
        blankOf(heating, nitrogen, { identity: 'first' }),
        blankOf(heating, (T) => nitrogen(T) + 0.001, { identity }),
      ]);
    fires(pair('first'), 'blank-twice', /z1\.csv holds the same data as the blank z0\.csv/);
    silent(pair('second'), 'blank-twice');
  });

  it('see an export that was corrected before: the corrected mass is the blank upside down', () => {
    fires(
      withBlanks([blankOf(heating, nitrogen)], { lifted: false }),
      'blank-twice',
      /upside down, with a correlation of -(1|0\.9\d) \(limit -0\.9\) and (9\d|10\d)(\.\d)? % of its size/,
    );
    silent(withBlanks([blankOf(heating, nitrogen)]), 'blank-twice');
  });

  it('do not take a slow straight loss for a blank upside down', () => {
    const slow = programme(30, [{ to: 900, rate: 10 }]);
    const mass = signalOf(slow, (T) => 20 - 0.08 * ((T - 30) / 870) + nitrogen(T), 0.0004);
    const found = checked(
      columns(slow, [{ signal: 'mass', unit: 'mg', values: mass }]),
      ['run "a.csv"', '  mass 20 mg', ...own, 'blank "z.csv"', 'step First 300..500 °C'].join('\n'),
      [blankOf(slow, nitrogen)],
    );
    silent(found, 'blank-twice');
  });

  it('see two blanks 13 µg apart, and not 7 µg', () => {
    const pair = (apart: number) =>
      withBlanks([blankOf(heating, nitrogen), blankOf(heating, (T) => nitrogen(T) + apart * rise(T, 600, 40))]);
    fires(pair(0.013), 'blanks-differ', /up to 13 µg apart in mass, at .*\(limit 10 µg\)/);
    silent(pair(0.007), 'blanks-differ');
  });

  it('see two blanks 0.35 mW apart, and not 0.25 mW', () => {
    const pair = (apart: number) => {
      const other = blankOf(heating, nitrogen);
      const moved = other.columns.map((c) =>
        c.signal === 'heatflow' ? { ...c, values: c.values.map((v) => v + apart) } : c,
      );
      return withBlanks([blankOf(heating, nitrogen), { ...other, columns: moved }]);
    };
    fires(pair(0.35), 'blanks-differ', /up to 0\.35 mW apart in heatflow.*limit 0\.3 mW/);
    silent(pair(0.25), 'blanks-differ');
  });

  it('see 16 µg lost in the blank itself, and not 6 µg, nor the start of the ramp', () => {
    const dirty = (lost: number) =>
      withBlanks(
        [blankOf(heating, (T, t) => nitrogen(T) + 0.012 * (1 - Math.exp(-t / 180)) - lost * rise(T, 440, 6))],
        {
          evaluate: 'step First 300..500 °C',
        },
      );
    fires(dirty(0.016), 'blank-has-effect', /z0\.csv loses 1[4-7] µg between 4\d\d.*and 4\d\d.*limit 10 µg/);
    silent(dirty(0.006), 'blank-has-effect');
  });

  it('see a peak of the blank above 10 % of the one evaluated, and not below', () => {
    const withPeak = (height: number) => {
      const blank = blankOf(heating, nitrogen);
      const bumped = blank.columns.map((c) =>
        c.signal === 'heatflow'
          ? { ...c, values: c.values.map((v, i) => v + height * bell(heating.temperature[i], 400, 12)) }
          : c,
      );
      return withBlanks([{ ...blank, columns: bumped }], { evaluate: 'peak P 340..460 °C' });
    };
    // What is evaluated is the run less its blank: 8 mW less the bump.
    fires(withPeak(0.95), 'effect-in-blank', /z0\.csv shows a peak of 0\.9\d? mW .* % of P \(limit 10 %\)/);
    silent(withPeak(0.5), 'effect-in-blank');
  });

  it('see a blank measured eight days away, and not six', () => {
    const measured = (day: string) =>
      withBlanks([blankOf(heating, nitrogen, { gloss: emptyGloss([...own, `  measured ${day}`]) })]);
    fires(measured('2026-10-04'), 'blank-old', /measured on 2026-10-04, 8 days before the run \(limit 7 days\)/);
    silent(measured('2026-10-06'), 'blank-old');
  });

  it('count days through leap years and centuries', () => {
    // Reference: the calendar of JavaScript's own Date.
    for (const [a, b] of [
      ['2024-02-28', '2024-03-01'],
      ['2023-12-31', '2024-01-01'],
      ['1999-12-31', '2100-03-01'],
    ]) {
      const days = (Date.parse(b) - Date.parse(a)) / 86400e3;
      assert.equal(dayOf(b)! - dayOf(a)!, days, `${a} to ${b}`);
    }
    assert.equal(dayOf('yesterday'), null);
  });

  it('see a blank exported as a fraction', () => {
    const fraction: BlankData = {
      columns: columns(heating, [{ signal: 'mass', unit: '1', values: signalOf(heating, () => 1) }]),
      gloss: emptyGloss(),
    };
    const data = columns(heating, [
      { signal: 'mass', unit: 'mg', values: signalOf(heating, (T) => 20 - 3 * rise(T, 400, 8)) },
    ]);
    const gloss = ['run "a.csv"', '  mass 20 mg', ...own, 'blank "z.csv"', 'step First 300..500 °C'].join('\n');
    fires(checked(data, gloss, [fraction]), 'blank-of-fraction', /z\.csv is exported as a fraction/);
    silent(checked(data, gloss, [blankOf(heating, nitrogen)]), 'blank-of-fraction');
  });

  it('see 16 µg gained at the start, four times the repeatability, and not 9 µg', () => {
    // The run's own unknown blank and the one measured: u = 3 µg · √2 (JCGM 100, 5.1.2).
    const gain = (size: number) =>
      withBlanks([blankOf(heating, (T) => nitrogen(T) - size * rise(T, 90, 6))], { blank: '\n  repeatability 3 µg' });
    fires(
      gain(0.016),
      'gain-at-start',
      /the mass rises by 16 µg in inert gas, 3\.\d times the repeatability of the blank \(limit 3\)/,
    );
    silent(gain(0.009), 'gain-at-start');
  });
});

describe('checks of steps without a blank', () => {
  const bare = (loss: number, place = '300..500 °C', clauses: readonly string[] = own) => {
    const mass = signalOf(heating, (T) => 20 - loss * rise(T, 400, 8) + nitrogen(T), 0.0002);
    return checked(
      columns(heating, [{ signal: 'mass', unit: 'mg', values: mass }]),
      ['run "a.csv"', '  mass 20 mg', ...clauses, `step First ${place}`].join('\n'),
    );
  };

  it('ask for one where the step is 1.8 %, and not at 2.2 %', () => {
    fires(
      bare(0.36),
      'no-blank',
      /1\.7\d* % of the initial mass \(limit 2 %\); the lift of the gas is estimated at 1\d µg/,
    );
    silent(bare(0.45), 'no-blank');
  });

  it('mark a step that is less than a quarter of the estimated lift', () => {
    // Lift from 300 to 500 °C: 0.085 mL · 1.145 mg/mL · 298.15 K · (1/573 K - 1/773 K) = 13 µg.
    const trace = (apparent: number) => bare(0.0131 + apparent);
    fires(trace(0.0025), 'step-within-buoyancy', /the step is 2\.\d µg, 1\d(\.\d)? % of the 13 µg .*\(limit 25 %\)/i);
    silent(trace(0.005), 'step-within-buoyancy');
  });
});
