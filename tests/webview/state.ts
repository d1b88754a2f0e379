import { defaultChoices, type Band, type Edge, type Part, type ViewState } from '../../server/src/protocol/view';

const edge = (time: number, temperature: number, more: Partial<Edge> = {}): Edge => ({
  time,
  temperature,
  unit: '°C',
  value: temperature,
  decimals: 1,
  source: 'own',
  token: 'window.from',
  ...more,
});

export const heating: Part = { name: 'heating 1', shown: true, start: 0, end: 5820, from: 30, to: 1000 };
export const cooling: Part = { name: 'cooling 1', shown: true, start: 5820, end: 8520, from: 1000, to: 100 };

export function bandOf(more: Partial<Band> = {}, edges: { from?: Partial<Edge>; to?: Partial<Edge> } = {}): Band {
  return {
    statement: 'step First',
    name: 'First',
    kind: 'step',
    lanes: ['mass'],
    part: 'heating 1',
    from: edge(3540, 620, edges.from),
    to: edge(4872, 842, edges.to),
    overlaps: [],
    severity: null,
    construction: [],
    ...more,
  };
}

/** A small picture of two lanes; nothing measured. */
export function stateOf(revision: number, more: Partial<ViewState> = {}): ViewState {
  const lane = (id: string): ViewState['lanes'][number] => ({
    id,
    label: `${id}/1`,
    name: id,
    unit: '1',
    units: ['1'],
    direction: null,
    extent: { from: 0, to: 1 },
    curves: [heating, cooling].map((p) => ({ id: `${id}/${p.name}`, part: p.name, of: 'run', name: '', points: 1000 })),
  });
  return {
    generation: { uri: 'file:///a.gloss', version: revision, revision },
    freshness: { state: 'current', text: 'current', error: null },
    title: 'a',
    conditions: [],
    role: 'run',
    texts: [],
    editable: true,
    choices: defaultChoices,
    parts: [heating, cooling],
    lanes: [lane('mass'), lane('rate')],
    bands: [bandOf()],
    gasChanges: [],
    ledger: { columns: [], rows: [] },
    findings: [],
    companions: [],
    overlays: [],
    runs: [],
    offers: [],
    ...more,
  };
}
