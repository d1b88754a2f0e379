// Runs in the page before the view's own script, in the place of an editor and its server.
import type { FromView, KeptView, ToView } from '../../../../server/src/protocol/messages';
import type {
  CursorAnswer,
  CursorRequest,
  EdgePreview,
  EdgeRequest,
  SamplesAnswer,
  SamplesRequest,
  ViewChoices,
  ViewState,
} from '../../../../server/src/protocol/view';
import { ascending, base64, drawnSamples } from './samples';
import { picture, uri, usual, type Picture, type Scenario } from './scenario';

/** What a test sees of the page and may do to it. */
export interface Fake {
  readonly posted: FromView[];
  state: ViewState;
  /** Answers nothing while true. */
  silent: boolean;
  /** How many questions of a kind were open at once, at most. */
  readonly most: Partial<Record<FromView['type'], number>>;
  /** ms before an answer of a kind goes out. */
  delays: Partial<Record<FromView['type'], number>>;
  send(message: ToView): void;
  /** Sends the state with changes and the next revision. */
  update(changes: Partial<ViewState>): void;
}

declare global {
  interface Window {
    fake: Fake;
    fakeScenario?: Partial<Scenario>;
    acquireVsCodeApi(): unknown;
  }
}

const scenario: Scenario = { ...usual, ...(window.fakeScenario ?? {}) };
const { runs, state: first }: Picture = picture(scenario);
const kept = (): KeptView | undefined => JSON.parse(sessionStorage.getItem('kept') ?? 'null') ?? undefined;

const open: Partial<Record<FromView['type'], number>> = {};

const fake: Fake = {
  posted: [],
  state: first,
  silent: false,
  most: {},
  delays: {},
  send: (message) => window.dispatchEvent(new MessageEvent('message', { data: JSON.parse(JSON.stringify(message)) })),
  update(changes) {
    const { generation } = fake.state;
    const next = { ...generation, version: generation.version + 1, revision: generation.revision + 1 };
    fake.state = { ...fake.state, generation: next, ...changes };
    fake.send({ type: 'state', state: fake.state });
  },
};
window.fake = fake;
window.acquireVsCodeApi = () => ({
  postMessage(message: FromView) {
    fake.posted.push(JSON.parse(JSON.stringify(message)));
    const { type } = message;
    open[type] = (open[type] ?? 0) + 1;
    fake.most[type] = Math.max(fake.most[type] ?? 0, open[type]);
    setTimeout(() => {
      open[type] = (open[type] ?? 1) - 1;
      if (!fake.silent) answer(message);
    }, fake.delays[message.type] ?? 1);
  },
  getState: kept,
  setState: (value: KeptView) => sessionStorage.setItem('kept', JSON.stringify(value)),
});

function answer(message: FromView): void {
  switch (message.type) {
    case 'ready':
      return begin();
    case 'kept':
      return sessionStorage.setItem('told', JSON.stringify(message.kept));
    case 'choices':
      return fake.update(chosen(message.choices));
    case 'samples':
      return fake.send({ type: 'samples', call: message.call, answer: samples(message.request) });
    case 'cursor':
      return fake.send({ type: 'cursor', call: message.call, answer: cursor(message.request) });
    case 'edgePreview':
      return fake.send({ type: 'edgePreview', call: message.call, answer: preview(message.request) });
    case 'edgeEdit':
      return edit(message.call, message.request);
    case 'save':
    case 'copyText':
      return fake.send({ type: 'saved', call: message.call, ok: true, reason: '' });
    default:
      return;
  }
}

/** As the client does: what it was told is given back, and the state is drawn with it. */
function begin(): void {
  fake.send({ type: 'preferences', exportTheme: 'light' });
  const told = JSON.parse(sessionStorage.getItem('told') ?? 'null') as KeptView | null;
  if (told !== null) {
    fake.send({ type: 'kept', kept: told });
    fake.send({ type: 'pinned', pinned: told.pinned });
    fake.state = { ...fake.state, ...chosen(told.choices) };
  }
  fake.send({ type: 'state', state: fake.state });
}

/** Parts, overlays, abscissa and units as chosen; a unit is a factor of the first. */
function chosen(choices: ViewChoices): Partial<ViewState> {
  const factors: Readonly<Record<string, number>> = { mg: 0.20052, '%/K': 0.1, 'W/g': 0.05 };
  const laid = choices.overlays.map((one) => first.companions.findIndex((c) => c.uri === one)).filter((i) => i >= 0);
  const lanes = first.lanes.map((lane) => {
    const unit = choices.units[lane.id] ?? lane.units[0];
    const factor = factors[unit] ?? 1;
    const own = lane.curves.filter((c) => !choices.hiddenParts.includes(c.part));
    const others = laid.flatMap((i) =>
      own.map((c) => ({ ...c, id: `${i + 1}:${c.id}`, of: 'overlay' as const, name: first.companions[i].name })),
    );
    const label = lane.label.replace(lane.units[0], unit);
    const extent = { from: lane.extent.from * factor, to: lane.extent.to * factor };
    return { ...lane, unit, label, extent, curves: [...own, ...others] };
  });
  return {
    choices,
    lanes,
    parts: first.parts.map((p) => ({ ...p, shown: !choices.hiddenParts.includes(p.name) })),
    overlays: laid.map((i) => ({ ...first.companions[i], reason: null })),
  };
}

function samples({ generation, curves, abscissa, from, to, pixels }: SamplesRequest): SamplesAnswer | null {
  if (generation.revision !== fake.state.generation.revision) return null;
  const factors: Readonly<Record<string, number>> = { mg: 0.20052, '%/K': 0.1, 'W/g': 0.05 };
  return {
    generation,
    curves: curves.map((id) => {
      const [, run = '', lane, name] = /^(?:(\d+):)?(.*)\/(.*)$/.exec(id) ?? [];
      const part = runs[Number(run)].find((p) => p.name === name) ?? runs[0][0];
      const { x, y, complete } = drawnSamples(part, lane, abscissa, from, to, pixels);
      const factor = factors[fake.state.choices.units[lane] ?? ''] ?? 1;
      return { id, x: base64(x), y: base64(y.map((v) => v * factor)), count: x.length, complete };
    }),
  };
}

function cursor({ generation, abscissa, at, part, step }: CursorRequest): CursorAnswer | null {
  const shown = fake.state.parts.filter((p) => p.shown).map((p) => p.name);
  const parts = runs[0].filter((p) => shown.includes(p.name));
  const axis = (p: (typeof parts)[number]): Float64Array => (abscissa === 'time' ? p.time : p.temperature);
  const holds = (p: (typeof parts)[number]): boolean => {
    const ends = [axis(p)[0], axis(p)[axis(p).length - 1]];
    return at >= Math.min(...ends) && at <= Math.max(...ends);
  };
  const on = parts.find((p) => p.name === part) ?? parts.find(holds) ?? parts[0];
  if (on === undefined) return null;
  const xs = axis(on);
  const order = ascending(xs);
  const nearest = order.reduce((best, i, k) => (Math.abs(xs[i] - at) < Math.abs(xs[order[best]] - at) ? k : best), 0);
  const i = order[Math.min(order.length - 1, Math.max(0, nearest + step))];
  const values = fake.state.lanes.map((lane) => {
    const y = on.lanes[lane.id][i];
    return { lane: lane.id, label: lane.label, text: `${lane.label.split('/')[0]} ${y.toFixed(3)} ${lane.unit}`, y };
  });
  const [temperature, time] = [on.temperature[i], on.time[i]];
  return {
    generation,
    time,
    temperature,
    part: on.name,
    values,
    spoken: `${on.name}, ${temperature.toFixed(2)} °C, mass ${on.lanes.mass[i].toFixed(2)} %`,
  };
}

function written(request: EdgeRequest): string {
  const band = fake.state.bands.find((b) => b.statement === request.statement);
  const edge = band?.[request.edge];
  if (band === undefined || edge === undefined) return '';
  const part = runs[0].find((p) => p.name === band.part) ?? runs[0][0];
  const share = (request.time - part.start) / (part.end - part.start);
  const found =
    edge.unit === 'min' ? edge.value + (request.time - edge.time) / 60 : part.from + share * (part.to - part.from);
  return (request.typed ?? found).toFixed(edge.decimals);
}

function preview(request: EdgeRequest): EdgePreview {
  const text = written(request);
  return {
    generation: request.generation,
    written: text,
    rows: [{ id: 'First.loss', value: `${(Number(text) / 50).toFixed(3)} ± 0.026 %`, number: Number(text) / 50 }],
  };
}

function edit(call: number, request: EdgeRequest): void {
  const text = written(request);
  const place = { start: { line: 4, character: 2 }, end: { line: 4, character: 5 } };
  const edits = [{ span: { start: 10, end: 13 }, range: place, text }];
  const touches = request.into === 'method' ? 1 + scenario.companions : 1;
  fake.send({
    type: 'edgeEdit',
    call,
    answer: {
      ok: true,
      uri,
      version: 1,
      edits,
      label: `Move ${request.edge === 'from' ? 'the start' : 'the end'} of ${request.statement} to ${text}`,
      touches,
      caret: null,
    },
  });
  const value = Number(text);
  fake.update({
    bands: fake.state.bands.map((band) => {
      if (band.statement !== request.statement) return band;
      const edge = band[request.edge];
      const temperature = edge.unit === '°C' ? value : edge.temperature;
      return { ...band, [request.edge]: { ...edge, value, temperature, time: request.time } };
    }),
  });
}
