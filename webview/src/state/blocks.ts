import type { Generation, Range, SamplesAnswer } from '../../../server/src/protocol/view';

export interface Sample {
  readonly x: number;
  readonly y: number;
}

/** Samples of one curve in one range, ascending, and how closely they were asked for. */
export interface Block {
  /** Revision of the picture it was answered for. */
  readonly revision: number;
  readonly range: Range;
  /** Abscissa a pixel column stood for. */
  readonly perPixel: number;
  /** Every sample of the range is here. */
  readonly complete: boolean;
  readonly samples: readonly Sample[];
}

/** What is there of a curve: the whole of it, coarse, and the part looked at, close. */
export interface CurveBlocks {
  readonly whole: Block | null;
  readonly close: Block | null;
  /** Both as one ascending list: close inside its range, coarse around it. */
  readonly drawn: readonly Sample[];
}

export const noBlocks: CurveBlocks = { whole: null, close: null, drawn: [] };

/** Little-endian Float64 from base64; null where the text does not hold `count` of them. */
export function floatsFrom(base64: string, count: number): Float64Array | null {
  let binary: string;
  try {
    binary = atob(base64);
  } catch {
    return null;
  }
  if (binary.length !== 8 * count) return null;
  const bytes = new Uint8Array(binary.length);
  for (let i = 0; i < binary.length; i++) bytes[i] = binary.charCodeAt(i);
  const view = new DataView(bytes.buffer);
  return Float64Array.from({ length: count }, (_, i) => view.getFloat64(8 * i, true));
}

export interface Asked {
  readonly generation: Generation;
  readonly range: Range;
  readonly perPixel: number;
  readonly isWhole: boolean;
}

/** The store after an answer. A curve whose block cannot be read keeps what it had. */
export function withAnswer(
  store: ReadonlyMap<string, CurveBlocks>,
  answer: SamplesAnswer,
  { generation, range, perPixel, isWhole }: Asked,
): ReadonlyMap<string, CurveBlocks> {
  const next = new Map(store);
  for (const { id, x, y, count, complete } of answer.curves) {
    const xs = floatsFrom(x, count);
    const ys = floatsFrom(y, count);
    if (xs === null || ys === null) continue;
    const samples = Array.from(xs, (value, i): Sample => ({ x: value, y: ys[i] }));
    const block = { revision: generation.revision, range, perPixel, complete, samples };
    const before = store.get(id) ?? noBlocks;
    const whole = isWhole ? block : before.whole;
    // What was close stays while it belongs to the same picture; an older one would be mixed in.
    const stays = before.close?.revision === block.revision ? before.close : null;
    const close = isWhole ? stays : block;
    next.set(id, { whole, close, drawn: joined(whole, close) });
  }
  return next;
}

/** Whether what was answered for `revision` draws `visible` with every sample or at least `perPixel` closely. */
export function suffices(blocks: CurveBlocks, visible: Range, perPixel: number, revision: number): boolean {
  const fits = (block: Block | null): boolean =>
    block !== null &&
    block.revision === revision &&
    block.range.from <= visible.from &&
    block.range.to >= visible.to &&
    (block.complete || block.perPixel <= perPixel * 1.02);
  return fits(blocks.close) || fits(blocks.whole);
}

function joined(whole: Block | null, close: Block | null): readonly Sample[] {
  if (close === null) return whole?.samples ?? [];
  if (whole === null || close.samples.length === 0)
    return close.samples.length > 0 ? close.samples : (whole?.samples ?? []);
  const first = close.samples[0].x;
  const last = close.samples[close.samples.length - 1].x;
  return [
    ...whole.samples.slice(0, firstNotBelow(whole.samples, first)),
    ...close.samples,
    ...whole.samples.slice(firstNotBelow(whole.samples, last, true)),
  ];
}

/** Index of the first sample at or above `x` (above, where `strictly`); the length where there is none. */
export function firstNotBelow(samples: readonly Sample[], x: number, strictly = false): number {
  let low = 0;
  let high = samples.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (samples[middle].x < x || (strictly && samples[middle].x === x)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Lowest and highest ordinate of the samples in a range; null where there is none. */
export function ordinateRange(samples: readonly Sample[], visible: Range): Range | null {
  let from = Infinity;
  let to = -Infinity;
  for (let i = firstNotBelow(samples, visible.from); i < samples.length && samples[i].x <= visible.to; i++) {
    const { y } = samples[i];
    if (y < from) from = y;
    if (y > to) to = y;
  }
  return from <= to ? { from, to } : null;
}
