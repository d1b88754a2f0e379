import assert from 'node:assert/strict';
import {
  defaultChoices,
  type CursorAnswer,
  type EdgeEdit,
  type EdgePreview,
  type EdgeRequest,
  type SamplesAnswer,
  type ViewState,
} from '../../server/src/protocol/view';
import { method, type StateParams } from '../../server/src/protocol/messages';
import { startClient, type TestClient } from './support/client';
import { lossRun } from './support/lossRun';
import { MemoryOutside } from './support/memoryOutside';

const gloss = 'run "a.csv"\n  hazard "none: invented"\nstep First 200..450 °C\n';

/** Collects the states of one view; `next` waits for one that is as wanted. */
function states(client: TestClient): { next(wanted: (state: ViewState) => boolean): Promise<ViewState> } {
  const seen: ViewState[] = [];
  const waiting: { wanted: (state: ViewState) => boolean; done: (state: ViewState) => void }[] = [];
  client.connection.onNotification(method.state, ({ state }: StateParams) => {
    seen.push(state);
    for (const w of waiting.splice(0)) {
      if (w.wanted(state)) w.done(state);
      else waiting.push(w);
    }
  });
  return {
    next: (wanted) => {
      const known = seen.find(wanted);
      return known !== undefined ? Promise.resolve(known) : new Promise((done) => waiting.push({ wanted, done }));
    },
  };
}

function watch(client: TestClient, uri: string, choices = defaultChoices): Promise<unknown> {
  return client.connection.sendRequest(method.watch, { id: 'p', uri, choices, editable: true });
}

describe('a view of a gloss', () => {
  it('is one state with lanes, band and ledger, and its samples are those of the file', async () => {
    const client = await startClient(new MemoryOutside({ 'a.csv': lossRun() }));
    const { next } = states(client);
    const uri = client.open('a.gloss', gloss);
    await watch(client, uri);
    const state = await next((s) => s.freshness.state === 'current');
    assert.deepEqual(
      state.lanes.map((l) => l.id),
      ['mass', 'rate'],
    );
    assert.deepEqual(
      state.bands.map((b) => [b.name, b.from.value, b.to.value]),
      [['First', 200, 450]],
    );
    const loss = state.ledger.rows.find((r) => r.id === 'First.loss');
    // 2 mg of 10 mg by construction.
    assert.ok(Math.abs(loss!.number! - 20) < 0.01, loss!.value);
    const request = {
      generation: state.generation,
      curves: state.lanes[0].curves.map((c) => c.id),
      abscissa: 'temperature',
      from: 100,
      to: 110,
      pixels: 1000,
    };
    const answer: SamplesAnswer = await client.connection.sendRequest(method.samples, request);
    const x = new Float64Array(Uint8Array.from(Buffer.from(answer.curves[0].x, 'base64')).buffer);
    // Every sample from 100 to 110 °C, one a kelvin, and a neighbour on each side.
    assert.deepEqual([...x], [99, 100, 101, 102, 103, 104, 105, 106, 107, 108, 109, 110, 111]);
    const cursor: CursorAnswer = await client.connection.sendRequest(method.cursor, {
      generation: state.generation,
      abscissa: 'temperature',
      at: 329.8,
      part: null,
      step: 0,
    });
    assert.equal(cursor.temperature, 330);
    assert.deepEqual(client.logged, []);
    client.close();
  });

  it('keeps the last good picture while a line it shows is broken, says of which revision it is and where the error is', async () => {
    const client = await startClient(new MemoryOutside({ 'a.csv': lossRun() }));
    const { next } = states(client);
    const uri = client.open('a.gloss', gloss);
    await watch(client, uri);
    const good = await next((s) => s.freshness.state === 'current');
    client.change(uri, 2, gloss.replace('200..450', '200..'));
    const stale = await next((s) => s.freshness.state === 'stale');
    assert.equal(stale.freshness.text, `revision ${good.generation.revision}: line 3 has an error`);
    assert.equal(stale.freshness.error?.line, 3);
    assert.deepEqual(stale.bands, good.bands);
    assert.ok(stale.generation.revision > good.generation.revision);
    client.change(uri, 3, gloss.replace('450', '440'));
    const mended = await next((s) => s.freshness.state === 'current' && s.generation.version === 3);
    assert.equal(mended.bands[0].to.value, 440);
    client.close();
  });

  it('of a method is drawn with a run that names it, and lays others of the method over it', async () => {
    const files = {
      'a.csv': lossRun(),
      'b.csv': lossRun(340),
      'm.gloss': 'method "Invented"\nstep First 200..450 °C\n',
      'a.gloss': 'run "a.csv"\n  hazard "none: invented"\nmethod "m.gloss"\n',
      'b.gloss': 'run "b.csv"\n  hazard "none: invented"\nmethod "m.gloss"\n',
    };
    const client = await startClient(new MemoryOutside(files));
    const { next } = states(client);
    const uri = client.open('m.gloss', files['m.gloss']);
    await watch(client, uri, { ...defaultChoices, overlays: ['file:///lab/b.gloss'] });
    const state = await next((s) => s.lanes.length > 0);
    assert.equal(state.role, 'method');
    // A caret in either text is followed.
    assert.deepEqual(state.texts.map((text) => text.replace(/.*\//, '')).sort(), ['a.gloss', 'm.gloss']);
    assert.deepEqual(
      state.runs.map((r) => r.name),
      ['a', 'b'],
    );
    assert.deepEqual(state.overlays, [{ uri: 'file:///lab/b.gloss', name: 'b', reason: null }]);
    assert.deepEqual([...new Set(state.lanes[0].curves.map((c) => c.of))], ['run', 'overlay']);
    client.close();
  });

  it('has a number of its own for each picture, in whichever panel, and goes on behind what a client has seen', async () => {
    const client = await startClient(new MemoryOutside({ 'a.csv': lossRun() }));
    const seen: StateParams[] = [];
    client.connection.onNotification(method.state, (params: StateParams) => void seen.push(params));
    const uri = client.open('a.gloss', gloss);
    const panel = (id: string, abscissa: 'time' | 'temperature', after: number): Promise<unknown> =>
      client.connection.sendRequest(method.watch, {
        id,
        uri,
        choices: { ...defaultChoices, abscissa, units: abscissa === 'time' ? { mass: 'mg' } : {} },
        editable: true,
        after,
      });
    await panel('p', 'temperature', 41);
    await panel('q', 'time', 0);
    const numbers = seen.map((s) => s.state.generation.revision);
    assert.equal(new Set(numbers).size, numbers.length, numbers.join());
    assert.ok(Math.min(...numbers) > 41, numbers.join());
    // The sample at the start is 10 mg, 100 %: each picture in its own unit.
    for (const { state } of seen) {
      const answer: SamplesAnswer = await client.connection.sendRequest(method.samples, {
        generation: state.generation,
        curves: [state.lanes.find((l) => l.id === 'mass')!.curves[0].id],
        abscissa: state.choices.abscissa,
        from: -1e9,
        to: 1e9,
        pixels: 100,
      });
      const y = new Float64Array(Uint8Array.from(Buffer.from(answer.curves[0].y, 'base64')).buffer);
      assert.ok(Math.abs(y[0] - (state.choices.abscissa === 'time' ? 10 : 100)) < 1e-3, `${y[0]}`);
    }
    client.close();
  });

  it('offers what to do where there is nothing to draw, and answers nothing for an old picture', async () => {
    const client = await startClient(new MemoryOutside({}));
    const { next } = states(client);
    const uri = client.open('a.gloss', '');
    await watch(client, uri);
    const state = await next((s) => s.freshness.state === 'empty');
    assert.equal(state.offers[0].command, 'thermogloss.draft');
    const request = {
      generation: { uri, version: 1, revision: 999 },
      curves: [],
      abscissa: 'time',
      from: 0,
      to: 1,
      pixels: 9,
    };
    assert.equal(await client.connection.sendRequest(method.samples, request), null);
    client.close();
  });

  it('makes a moved edge one edit of the number, previews what it would give, and makes it where the text has gone on', async () => {
    const client = await startClient(new MemoryOutside({ 'a.csv': lossRun() }));
    const { next } = states(client);
    const uri = client.open('a.gloss', gloss);
    await watch(client, uri);
    const state = await next((s) => s.freshness.state === 'current');
    const request: EdgeRequest = {
      generation: state.generation,
      statement: 'step First',
      edge: 'to',
      // 10 K/min from 30 °C: 440.37 °C after 41.037 min.
      time: 41.037 * 60,
      perPixel: 0.1,
      typed: null,
      into: 'gloss',
    };
    const preview = await client.connection.sendRequest<EdgePreview>(method.edgePreview, request);
    assert.equal(preview.written, '440');
    assert.ok(Math.abs(preview.rows.find((r) => r.id === 'First.loss')!.number! - 20) < 0.02);
    client.change(uri, 2, `# moved on\n${gloss}`);
    const edit = await client.connection.sendRequest<EdgeEdit>(method.edgeEdit, request);
    assert.ok(edit.ok);
    assert.deepEqual(
      edit.edits.map((e) => [e.range, e.text]),
      [[{ start: { line: 3, character: 16 }, end: { line: 3, character: 19 } }, '440']],
    );
    assert.equal(edit.version, 2);
    client.change(uri, 3, gloss.replace('450', '455'));
    const refused = await client.connection.sendRequest<EdgeEdit>(method.edgeEdit, request);
    assert.equal(refused.ok, false);
    client.close();
  });

  it('drafts a gloss for a run and gives the results as cells', async () => {
    const client = await startClient(new MemoryOutside({ 'a.csv': lossRun() }));
    const draft = await client.connection.sendRequest<{ ok: boolean; text: string; uri: string }>(method.draft, {
      path: 'file:///lab/a.csv',
      method: null,
    });
    assert.equal(draft.uri, 'file:///lab/a.gloss');
    assert.match(draft.text, /^step +Loss1 /m);
    const uri = client.open('a.gloss', gloss);
    const table = await client.connection.sendRequest<{ text: string }>(method.table, { uri, format: 'tsv' });
    assert.match(table.text, /^First\tloss\t/m);
    client.close();
  });
});
