import { checked, columns, fires, silent } from './checked';
import { bell, programme, rise, signalOf } from './curves';

const ramp = programme(30, [{ to: 600, rate: 10 }]);
const own = 'run "a.csv"\n  mass 10 mg\n  endothermic up';

function heating(
  heat: (T: number) => number,
  statements: string,
  mass?: (T: number) => number,
  temperature?: (t: number, T: number) => number,
) {
  const p = temperature === undefined ? ramp : { ...ramp, temperature: signalOf(ramp, (T, t) => temperature(t, T)) };
  const signals = [
    { signal: 'heatflow', unit: 'mW', values: signalOf(ramp, heat, 0.003) } as const,
    ...(mass === undefined ? [] : [{ signal: 'mass', unit: 'mg', values: signalOf(ramp, mass, 0.0004, 3) } as const]),
  ];
  return checked(columns(p, signals), `${own}\n${statements}`);
}

describe('checks of what a peak is taken for', () => {
  it('see a peak 7 K from the largest rate of loss in the same window, and not 3 K', () => {
    const both = 'step First 340..460 °C\npeak Heat 340..460 °C';
    const apart = (kelvin: number) =>
      heating(
        (T) => 1 + 8 * bell(T, 400 + kelvin, 12),
        both,
        (T) => 10 - 2 * rise(T, 400, 8),
      );
    fires(
      apart(7),
      'peak-apart-from-rate',
      /Heat peaks at 40[67](\.\d)? °C, (7|6\.9|7\.\d) K above the largest rate of First at (400|399\.\d|400\.\d) °C \(limit 5 K\)/,
    );
    silent(apart(3), 'peak-apart-from-rate');
  });

  it('note an onset that is used alone for a flank of 18 K, and not for one of 12 K', () => {
    const melting = (width: number, uses: string) =>
      heating((T) => 1 + 8 * bell(T, 400, width), `peak Melting 280..520 °C\n${uses}`);
    const onset = 'require Melting.onset in 350..400 °C';
    // The tangent of a bell meets the baseline two widths before its middle.
    fires(
      melting(9.5, onset),
      'onset-without-peak',
      /Melting\.onset at 38\d(\.\d)? °C is used alone, but the flank is 1[89] K wide \(limit 15 K\); the peak is at 400/,
    );
    silent(melting(6, onset), 'onset-without-peak');
    silent(melting(9.5, `${onset}\nrequire Melting.peak in 390..410 °C`), 'onset-without-peak');
  });

  it('see a specimen 1.3 K ahead of its ramp in an exothermic peak, and not 0.7 K, nor in an endothermic one', () => {
    const ahead = (kelvin: number, sign = -1) =>
      heating(
        (T) => 1 + sign * 8 * bell(T, 400, 10),
        'peak Burning 340..460 °C',
        undefined,
        (_, T) => T + kelvin * bell(T, 400, 15),
      );
    fires(ahead(1.3), 'self-heating', /runs 1\.[23]\d* K ahead of the ramp, at 40\d(\.\d)? °C \(limit 1 K\)/);
    silent(ahead(0.7), 'self-heating');
    silent(ahead(1.3, 1), 'self-heating');
  });

  it('see a freezing onset 4 K below the melting onset that stands for an equilibrium, and not at 1 K', () => {
    const cycle = programme(30, [
      { to: 700, rate: 10 },
      { to: 300, rate: 10 },
    ]);
    const turn = 670 * 6;
    const cooling = (undercooling: number, use: string) => {
      // Onsets: two widths below the middle of the melting, two above that of the freezing.
      const heat = signalOf(
        cycle,
        (T, t) => 1 + (t < turn ? 8 * bell(T, 580, 5) : -8 * bell(T, 570 - undercooling - 10, 5)),
        0.003,
      );
      const statements = `peak Melting 520..640 °C\npeak Freezing 520..600 °C in cooling 1\n${use}`;
      return checked(columns(cycle, [{ signal: 'heatflow', unit: 'mW', values: heat }]), `${own}\n${statements}`);
    };
    const use = 'require Freezing.onset in 560..575 °C';
    fires(
      cooling(4, use),
      'freezing-undercooled',
      /Freezing\.onset at 56\d(\.\d)? °C lies [34](\.\d)? K below the melting onset of Melting at 5\d\d(\.\d)? °C \(limit 2 K\)/,
    );
    silent(cooling(1, use), 'freezing-undercooled');
    silent(cooling(4, 'let undercooling = Melting.onset - Freezing.onset'), 'freezing-undercooled');
  });
});

describe('checks of onsets', () => {
  it('see an onset that moves by more than 2 K with its fit, and not a sharp one', () => {
    const rounded = (curvature: number) => (T: number) => 1 - 0.5 * bell(T, 300, 25) * curvature + 8 * rise(T, 420, 12);
    const start = 'onset Start 320..470 °C\n  of heatflow\n  span 60 K';
    fires(
      heating(rounded(8), start),
      'onset-unstable',
      /With span and smoothing 20 % shorter and longer the onset lies between .* and .* °C, \d+(\.\d)? K apart \(limit 2 K\)/,
    );
    silent(heating(rounded(0), 'onset Start 320..470 °C\n  of heatflow'), 'onset-unstable');
  });
});
