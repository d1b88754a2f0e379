import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  type ProtocolConnection,
} from 'vscode-languageserver-protocol/node';
import { debounce } from '../../server/src/lsp/evaluations';
import { method, type StateParams } from '../../server/src/protocol/messages';
import {
  defaultChoices,
  type SamplesAnswer,
  type SamplesRequest,
  type ViewState,
} from '../../server/src/protocol/view';
import { seeded } from '../support/random';
import { syntheticRun } from '../support/syntheticRun';
import { summary, type BenchRow } from './harness';

const program = join(__dirname, '..', '..', '..', 'dist', 'thermogloss.js');
const duration = 6000;

function dataOf(rows: number, first = 300): string {
  return syntheticRun({
    every: duration / rows,
    rate: (970 / duration) * 60,
    steps: [
      { at: first, width: 8, loss: 10 },
      { at: 600, width: 10, loss: 25 },
    ],
  });
}

function glossOf(data: string, edge: number): string {
  return [
    `run "${data}"`,
    '  mass 20.000 ± 0.010 mg',
    `step First ${edge.toFixed(2)}..420 °C`,
    'step Second 480..750 °C',
    'residue Rest at 950 °C',
    'let share = First.loss / Second.loss',
    '',
  ].join('\n');
}

/** The server as any editor starts it: a process of its own that is spoken to over its standard streams. */
class Served {
  private readonly child = spawn(process.execPath, [program, 'lsp'], { stdio: ['pipe', 'pipe', 'inherit'] });
  readonly connection: ProtocolConnection = createProtocolConnection(
    new StreamMessageReader(this.child.stdout),
    new StreamMessageWriter(this.child.stdin),
  );
  private readonly seen = new Map<string, (state: ViewState) => void>();
  private readonly told = new Map<string, () => void>();

  async start(folder: string): Promise<void> {
    this.connection.onNotification(method.state, ({ id, state }: StateParams) => this.seen.get(id)?.(state));
    this.connection.onNotification(
      'textDocument/publishDiagnostics',
      ({ uri, version }: { uri: string; version?: number }) => this.told.get(`${uri} ${version}`)?.(),
    );
    this.connection.listen();
    const rootUri = pathToFileURL(folder).href;
    await this.connection.sendRequest('initialize', {
      processId: process.pid,
      rootUri,
      capabilities: { textDocument: { publishDiagnostics: { versionSupport: true } } },
      workspaceFolders: [{ uri: rootUri, name: 'bench' }],
    });
    await this.connection.sendNotification('initialized', {});
  }

  async open(uri: string, text: string): Promise<void> {
    await this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'gloss', version: 1, text },
    });
  }

  /** Until the diagnostics of a version are there. */
  diagnostics(uri: string, version: number): Promise<void> {
    return new Promise((resolve) => this.told.set(`${uri} ${version}`, resolve));
  }

  /** The next picture that is current. */
  picture(id: string): Promise<ViewState> {
    return new Promise((resolve) => {
      this.seen.set(id, (state) => {
        if (state.freshness.state !== 'current' || state.lanes.length === 0) return;
        this.seen.delete(id);
        resolve(state);
      });
    });
  }

  async watch(id: string, uri: string): Promise<ViewState> {
    const picture = this.picture(id);
    await this.connection.sendRequest(method.watch, { id, uri, choices: defaultChoices, editable: true });
    return picture;
  }

  async end(): Promise<void> {
    await this.connection.sendRequest('shutdown');
    await this.connection.sendNotification('exit');
    await once(this.child, 'exit');
    this.connection.dispose();
  }
}

/** What an editor waits for, over the standard streams of the server. */
export async function overStdio(): Promise<readonly BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'gloss-bench-'));
  const uri = (name: string): string => pathToFileURL(join(folder, name)).href;
  writeFileSync(join(folder, 'large.csv'), dataOf(200_000));
  writeFileSync(join(folder, 'small.csv'), dataOf(1000));
  const million = dataOf(1_000_000);
  for (let k = 0; k < 6; k++) writeFileSync(join(folder, `million${k}.csv`), million);
  const served = new Served();
  await served.start(folder);
  await served.open(uri('small.gloss'), glossOf('small.csv', 200));
  await served.diagnostics(uri('small.gloss'), 1);
  try {
    return [
      await changed(served, uri('large.gloss')),
      await replaced(served, uri('large.gloss'), uri('large.csv'), join(folder, 'large.csv')),
      await whileLoading(served, uri, [0, 1, 2], false),
      await whileLoading(served, uri, [3, 4, 5], true),
      await ranges(served, uri('million0.gloss')),
    ];
  } finally {
    await served.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

function row(name: string, limit: number, times: readonly number[], more = ''): BenchRow {
  const { median, p95 } = summary(times);
  const note = `median ${median.toFixed(1)} ms of ${times.length}, longest ${Math.max(...times).toFixed(0)} ms${more}`;
  return { name: `${name}, p95`, value: p95, unit: 'ms', limit, note };
}

/** From a changed edge to new diagnostics and a new picture. */
async function changed(served: Served, uri: string): Promise<BenchRow> {
  await served.open(uri, glossOf('large.csv', 200));
  await served.watch('large', uri);
  const times: number[] = [];
  for (let k = 0; k < 33; k++) {
    const version = k + 2;
    const both = Promise.all([served.diagnostics(uri, version), served.picture('large')]);
    const start = performance.now();
    await served.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri, version },
      contentChanges: [{ text: glossOf('large.csv', 200 - 0.25 * (k + 1)) }],
    });
    await both;
    if (k >= 3) times.push(performance.now() - start - debounce);
  }
  return row(`200,000 rows: from a change to diagnostics and picture, beyond ${debounce} ms`, 60, times);
}

/** From new data on disk, of which the client tells, to a picture with the results of them. */
async function replaced(served: Served, gloss: string, uri: string, path: string): Promise<BenchRow> {
  const places = [310, 300];
  const data = places.map((first) => dataOf(200_000, first));
  const id = 'replaced';
  await served.watch(id, gloss);
  const times: number[] = [];
  for (let k = 0; k < 18; k++) {
    writeFileSync(path, data[k % 2]);
    const start = performance.now();
    void served.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri, type: 2 }] });
    for (let state = await served.picture(id); ; state = await served.picture(id)) {
      const found = state.ledger.rows.find((r) => r.id === 'First.inflection')?.number ?? NaN;
      if (Math.abs(found - places[k % 2]) < 3) break;
    }
    if (k >= 3) times.push(performance.now() - start);
  }
  return row('200,000 rows replaced on disk: from the word of it to the new picture', 1000, times);
}

/** Hover and completion on a small gloss while a million rows of another are read, evaluated and, if so, drawn first. */
async function whileLoading(
  served: Served,
  uri: (name: string) => string,
  files: readonly number[],
  isDrawn: boolean,
): Promise<BenchRow> {
  const small = uri('small.gloss');
  const times: number[] = [];
  for (const k of files) {
    const other = uri(`million${k}.gloss`);
    let loading = true;
    const diagnosed = served.diagnostics(other, 1);
    await served.open(other, glossOf(`million${k}.csv`, 200));
    const loaded = Promise.all([diagnosed, isDrawn ? drawn(served, `million${k}`, other) : null]);
    const done = loaded.then(() => (loading = false));
    while (loading) {
      for (const request of ['textDocument/hover', 'textDocument/completion']) {
        const start = performance.now();
        await served.connection.sendRequest(request, {
          textDocument: { uri: small },
          position: { line: 2, character: 6 },
        });
        times.push(performance.now() - start);
      }
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    await done;
  }
  const what = isDrawn ? '1,000,000 rows load and are drawn first' : '1,000,000 rows load';
  return row(`${what}: hover and completion on another gloss`, 50, times);
}

/** A view of a gloss, with the samples of its whole range. */
async function drawn(served: Served, id: string, uri: string): Promise<void> {
  const { generation, lanes } = await served.watch(id, uri);
  const curves = lanes.flatMap((lane) => lane.curves.map((curve) => curve.id));
  const request: SamplesRequest = { generation, curves, abscissa: 'temperature', from: 30, to: 1000, pixels: 1600 };
  await served.connection.sendRequest(method.samples, request);
}

/** Ranges of a million rows at 1600 pixels, as zoom and pan ask for them. */
async function ranges(served: Served, uri: string): Promise<BenchRow> {
  const { generation, lanes } = await served.watch('million', uri);
  const random = seeded(20263);
  const curves = lanes.flatMap((lane) => lane.curves.map(({ id }) => id));
  const times: number[] = [];
  for (let k = 0; k < 63; k++) {
    const width = 970 * random.uniform() ** 2 + 1;
    const from = 30 + (970 - width) * random.uniform();
    const request: SamplesRequest = {
      generation,
      curves,
      abscissa: 'temperature',
      from,
      to: from + width,
      pixels: 1600,
    };
    const start = performance.now();
    const answer: SamplesAnswer | null = await served.connection.sendRequest(method.samples, request);
    if (answer === null) throw new Error('the picture is not known');
    if (k >= 3) times.push(performance.now() - start);
  }
  return row('1,000,000 rows: curves of a visible range, 1600 pixels', 20, times, `, ${curves.length} curves`);
}
