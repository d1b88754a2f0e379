import type {
  Band,
  Edge,
  Lane,
  LedgerRow,
  ViewChoices,
  ViewShape,
  ViewState,
} from '../../../../server/src/protocol/view';
import { fakeRun, massAt, type FakePart } from './signals';

/** What a test may ask of the invented picture. */
export interface Scenario {
  /** s between samples. */
  readonly interval: number;
  readonly editable: boolean;
  readonly role: 'run' | 'method';
  /** Names as an enemy would write them. */
  readonly hostile: boolean;
  /** So many runs of the same method beside this one. */
  readonly companions: number;
  /** So many further bands, side by side and over each other. */
  readonly crowd: number;
  /** Nothing evaluated. */
  readonly empty: boolean;
  /** Source of the edges of `First`. */
  readonly source: Edge['source'];
}

export const usual: Scenario = {
  interval: 1,
  editable: true,
  role: 'run',
  hostile: false,
  companions: 3,
  crowd: 0,
  empty: false,
  source: 'own',
};

export const uri = 'file:///invented/vq217-1.gloss';
export const hostileName = '<img src=x onerror="document.title=\'taken\'">"\'&amp;';

export interface Picture {
  readonly runs: readonly (readonly FakePart[])[];
  readonly state: ViewState;
}

export function picture(scenario: Scenario): Picture {
  const runs = Array.from({ length: 1 + scenario.companions }, (_, i) => fakeRun(scenario.interval, 11 + i, 6 * i));
  return { runs, state: stateOf(scenario, runs[0]) };
}

const choices: ViewChoices = {
  abscissa: 'temperature',
  hiddenParts: [],
  units: {},
  overlays: [],
  run: null,
  against: null,
};

function stateOf(scenario: Scenario, parts: readonly FakePart[]): ViewState {
  const name = scenario.hostile ? hostileName : 'vq217-1';
  const companions = Array.from({ length: scenario.companions }, (_, i) => ({
    uri: `file:///invented/vq217-${i + 2}.gloss`,
    name: scenario.hostile ? `${hostileName} ${i}` : `vq217-${i + 2}`,
  }));
  const base: ViewState = {
    generation: { uri, version: 1, revision: 1 },
    freshness: { state: 'current', text: 'current', error: null },
    title: `${name} · Dolomitic limestone VQ-217 · 20.052 mg · carbon dioxide 50 mL/min`,
    conditions: [
      'crucible alumina 85 µL, no lid',
      'heating 1: 30.0 to 1000.0 °C at 10.00 K/min',
      'hold 1: 1000.0 °C for 10.0 min',
      'cooling 1: 1000.0 to 100.0 °C at 20.00 K/min',
      'blank blank-co2-1.csv subtracted from mass',
    ],
    role: scenario.role,
    texts: [uri],
    editable: scenario.editable,
    choices,
    parts: parts.map(({ name: part, start, end, from, to }) => ({ name: part, shown: true, start, end, from, to })),
    lanes: lanesOf(parts),
    bands: [...bandsOf(scenario, parts), ...crowdOf(scenario.crowd, parts)],
    gasChanges: [
      { time: parts[1].end, temperature: 1000, gas: 'nitrogen' },
      { time: 3400, temperature: 597, gas: 'carbon dioxide 20 % + nitrogen 80 %' },
    ],
    ledger: { columns: columns(), rows: rowsOf(scenario) },
    findings: findings(scenario),
    companions,
    overlays: [],
    runs: scenario.role === 'method' ? [{ uri, name: 'vq217-1' }, ...companions] : [],
    offers: [],
  };
  if (!scenario.empty) return base;
  return {
    ...base,
    freshness: { state: 'empty', text: 'no run is named yet', error: null },
    parts: [],
    lanes: [],
    bands: [],
    gasChanges: [],
    ledger: { columns: columns(), rows: [] },
    findings: [],
    offers: [
      { text: 'Draft a gloss for vq217-1.csv', command: 'thermogloss.draft', argument: 'vq217-1.csv' },
      { text: 'Draft a gloss for vq217-2.csv', command: 'thermogloss.draft', argument: 'vq217-2.csv' },
    ],
  };
}

function lanesOf(parts: readonly FakePart[]): Lane[] {
  const lane = (id: string, name: string, label: string, units: string[], direction: string | null): Lane => {
    const values = parts.flatMap((p) => [...p.lanes[id]]);
    const extent = { from: values.reduce((a, b) => Math.min(a, b)), to: values.reduce((a, b) => Math.max(a, b)) };
    const curves = parts.map((p) => ({
      id: `${id}/${p.name}`,
      part: p.name,
      of: 'run' as const,
      name: '',
      points: p.time.length,
    }));
    return { id, label, name, unit: units[0], units, direction, extent, curves };
  };
  return [
    lane('mass', 'mass', 'm/%', ['%', 'mg'], null),
    lane('rate', 'rate of mass loss', '−dm/dt/(%/min)', ['%/min', '%/K'], null),
    lane('heatflow', 'heat flow', 'Φ/mW', ['mW', 'W/g'], 'endothermic down'),
    lane('ion(44)', 'ion current 44', 'I(44)/nA', ['nA'], null),
  ];
}

function edge(
  parts: readonly FakePart[],
  part: string,
  temperature: number,
  token: Edge['token'],
  source: Edge['source'] = 'own',
): Edge {
  const p = parts.find((one) => one.name === part) ?? parts[0];
  const share = p.to === p.from ? 0 : (temperature - p.from) / (p.to - p.from);
  const decimals = source === 'rule' ? 1 : 0;
  return {
    time: p.start + share * (p.end - p.start),
    temperature,
    unit: '°C',
    value: temperature,
    decimals,
    source,
    token,
  };
}

function bandsOf(scenario: Scenario, parts: readonly FakePart[]): Band[] {
  const band = (
    kind: string,
    name: string,
    lanes: string[],
    part: string,
    from: number,
    to: number,
    more: Partial<Band> = {},
    source: Edge['source'] = 'own',
  ): Band => ({
    statement: `${kind} ${name}`,
    name,
    kind,
    lanes,
    part,
    from: edge(parts, part, from, 'window.from', source),
    to: edge(parts, part, to, 'window.to', source),
    overlaps: [],
    severity: null,
    construction: [],
    ...more,
  });
  const balance = ['mass', 'rate'];
  const hold = parts[1];
  const inHold = (minutes: number, token: Edge['token']): Edge => ({
    time: hold.start + 60 * minutes,
    temperature: 1000,
    unit: 'min',
    value: minutes,
    decimals: 2,
    source: 'own',
    token,
  });
  const first = scenario.hostile ? hostileName : 'First';
  return [
    band('step', 'Moisture', balance, 'heating 1', 70, 210),
    band(
      'step',
      first,
      balance,
      'heating 1',
      620,
      842,
      { statement: 'step First', overlaps: ['Second'], severity: 'warning', construction: stepShapes(620, 842) },
      scenario.source,
    ),
    band(
      'step',
      'Second',
      balance,
      'heating 1',
      832.5,
      950.2,
      { overlaps: [first], severity: 'warning', construction: stepShapes(832.5, 950.2) },
      'rule',
    ),
    band('peak', 'FirstHeat', ['heatflow'], 'heating 1', 640, 840, { construction: peakShapes(640, 840) }),
    band('onset', 'Gas', ['ion(44)'], 'heating 1', 660, 790, {}, 'method'),
    band('peak', 'Return', ['heatflow'], 'cooling 1', 470, 370),
    {
      ...band('residue', 'Oxides', ['mass'], 'hold 1', 1000, 1000),
      from: inHold(4, 'window.from'),
      to: inHold(9, 'window.to'),
    },
  ];
}

function crowdOf(count: number, parts: readonly FakePart[]): Band[] {
  return Array.from({ length: count }, (_, i) => ({
    statement: `step Crowd${i}`,
    name: `Crowd${i}WithALongName`,
    kind: 'step',
    lanes: ['mass', 'rate'],
    part: 'heating 1',
    from: edge(parts, 'heating 1', 100 + 17 * i, 'window.from'),
    to: edge(parts, 'heating 1', 160 + 17 * i, 'window.to'),
    overlaps: [],
    severity: null,
    construction: [],
  }));
}

function point(temperature: number, y: number): { time: number; temperature: number; y: number } {
  return { time: (temperature - 30) * 6, temperature, y };
}

function stepShapes(from: number, to: number): ViewShape[] {
  const [high, low] = [massAt(from), massAt(to)];
  const middle = (from + to) / 2 + 25;
  const slope = (massAt(middle + 1) - massAt(middle - 1)) / 2;
  const level = (at: number, y: number): ViewShape => ({
    shape: 'line',
    lane: 'mass',
    role: 'level',
    points: [point(at - 5, y), point(at + 5, y)],
  });
  const longLevel = (y: number): ViewShape => ({
    shape: 'line',
    lane: 'mass',
    role: 'baseline',
    points: [point(from, y), point(to, y)],
  });
  const at = (y: number): number => middle + (y - massAt(middle)) / slope;
  const mark = (quantity: string, temperature: number, y: number): ViewShape => ({
    shape: 'mark',
    lane: 'mass',
    quantity,
    text: `${quantity} ${temperature.toFixed(1)} ± 1.5 °C`,
    at: point(temperature, y),
  });
  return [
    level(from, high),
    level(to, low),
    longLevel(high),
    longLevel(low),
    {
      shape: 'line',
      lane: 'mass',
      role: 'tangent',
      points: [point(at(high + 1), high + 1), point(at(low - 1), low - 1)],
    },
    mark('start', at(high), high),
    mark('midpoint', at((high + low) / 2), (high + low) / 2),
    mark('end', at(low), low),
    mark('inflection', middle, massAt(middle)),
  ];
}

function peakShapes(from: number, to: number): ViewShape[] {
  const base = (t: number): number => -0.6 + 0.0006 * t;
  const mark = (quantity: string, temperature: number, y: number): ViewShape => ({
    shape: 'mark',
    lane: 'heatflow',
    quantity,
    text: `${quantity} ${temperature.toFixed(1)} ± 2.0 °C`,
    at: point(temperature, y),
  });
  const baseline = [point(from, base(from)), point(to, base(to))];
  return [
    { shape: 'line', lane: 'heatflow', role: 'baseline', points: baseline },
    { shape: 'area', lane: 'heatflow', from: baseline[0], to: baseline[1], baseline },
    mark('onset', 727, base(727)),
    mark('peak', 760, -5.7),
    mark('end', 795, base(795)),
  ];
}

function columns(): ViewState['ledger']['columns'] {
  const column = (id: string, title: string): ViewState['ledger']['columns'][number] => ({ id, title, align: 'left' });
  return [
    column('name', 'Name'),
    column('quantity', 'Quantity'),
    column('value', 'Value'),
    column('basis', 'Basis'),
    column('state', 'State'),
    column('since', 'Since HEAD'),
    column('limit', 'Limit'),
  ];
}

function rowsOf(scenario: Scenario): LedgerRow[] {
  const first = scenario.hostile ? hostileName : 'First';
  const row = (
    id: string,
    kind: string,
    name: string,
    quantity: string,
    value: string,
    more: Partial<LedgerRow> = {},
  ): LedgerRow => ({
    id,
    statement: `${kind} ${id.split('.')[0]}`,
    name,
    kind,
    quantity,
    value,
    number: Number(/^-?[\d.]+/.exec(value)?.[0] ?? 'NaN'),
    unit: value.split(' ').at(-1) ?? '',
    basis: value.endsWith('%') ? 'initial' : '',
    state: '',
    since: '',
    sinceMoved: false,
    limit: '',
    verdict: null,
    severity: null,
    main: true,
    details: [
      { label: 'definition', text: `${quantity} of a ${kind}, mean of the levels at both ends, divided by the basis` },
      { label: 'method', text: 'levels over 10 K, ISO 11358-1' },
      { label: 'contributions', text: 'noise 0.018, weighed mass 0.012, edges 0.009' },
    ],
    ...more,
  });
  return [
    row('Moisture.loss', 'step', 'Moisture', 'loss', '0.397 ± 0.025 %', {
      limit: 'met (≤ 0.5 %)',
      verdict: 'met',
      since: '—',
    }),
    row('Moisture.start', 'step', 'Moisture', 'start', '119.5 ± 1.8 °C', { main: false }),
    row('First.loss', 'step', first, 'loss', '14.793 ± 0.026 %', {
      since: '+0.02 %',
      sinceMoved: true,
      limit: 'in dolomite; window-overlap',
      severity: 'warning',
    }),
    row('First.start', 'step', first, 'start', '725.6 ± 1.5 °C', { main: false }),
    row('First.midpoint', 'step', first, 'midpoint', '760.9 ± 1.5 °C'),
    row('First.end', 'step', first, 'end', '796.5 ± 1.5 °C', { main: false }),
    row('Second.loss', 'step', 'Second', 'loss', '29.732 ± 0.035 %', {
      since: '—',
      state: 'apparent',
      limit: 'window-overlap',
      severity: 'warning',
    }),
    row('Second.midpoint', 'step', 'Second', 'midpoint', '905.1 ± 1.5 °C'),
    row('Oxides.remaining', 'residue', 'Oxides', 'remaining', '55.001 ± 0.037 %'),
    row('Oxides.drift', 'residue', 'Oxides', 'drift', '-0.0057 ± 0.0096 %/min', { main: false }),
    row('FirstHeat.enthalpy', 'peak', 'FirstHeat', 'enthalpy', '423.1 ± 9.0 J/g', {
      since: '−3.2 J/g',
      sinceMoved: true,
    }),
    row('FirstHeat.onset', 'peak', 'FirstHeat', 'onset', '709.7 ± 2.9 °C', { main: false }),
    row('FirstHeat.peak', 'peak', 'FirstHeat', 'peak', '770.8 ± 2.0 °C'),
    row('dolomite', 'let', 'dolomite', '', '61.98 ± 0.11 %', { limit: 'met (60..65 %)', verdict: 'met' }),
    row('calcite', 'let', 'calcite', '', '36.4 ± 0.3 %', {
      limit: 'not met (32..36 %)',
      verdict: 'not met',
      severity: 'error',
    }),
    row(
      'Balance',
      'require',
      'Balance',
      'Moisture.loss + First.loss + Second.loss + Oxides.remaining',
      '99.92 ± 0.07 %',
      { limit: 'inconclusive (99.9..100.5 %)', verdict: 'inconclusive' },
    ),
  ];
}

function findings(scenario: Scenario): ViewState['findings'] {
  const about = scenario.hostile ? hostileName : 'First';
  const span = { start: 0, end: 4 };
  return [
    {
      code: 'calibration-not-stated',
      severity: 'note',
      message: 'No calibration is stated for temperature; temperatures are indicated.',
      uri,
      span,
      line: 3,
      statement: null,
    },
    {
      code: 'window-overlap',
      severity: 'warning',
      message: `The windows of ${about} and Second overlap from 832.5 to 842 °C.`,
      uri,
      span,
      line: 12,
      statement: 'step First',
    },
    {
      code: 'limit',
      severity: 'error',
      message: 'calcite is 36.4 ± 0.3 %, which is not in 32..36 %.',
      uri,
      span,
      line: 21,
      statement: 'require calcite',
    },
  ];
}
