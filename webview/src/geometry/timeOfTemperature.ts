import type { Band, Part } from '../../../server/src/protocol/view';

interface Anchor {
  readonly time: number;
  readonly temperature: number;
}

/**
 * Time in s at which a part reaches a temperature, interpolated between its ends and the edges known in it: exact there,
 * near it between. It only says where on the time axis to draw; numbers come from the server.
 */
export function timeOfTemperature(part: Part, bands: readonly Band[], temperature: number): number {
  return between(anchors(part, bands), temperature, 'temperature', 'time');
}

/** The way back, in °C. */
export function temperatureOfTime(part: Part, bands: readonly Band[], time: number): number {
  return between(anchors(part, bands), time, 'time', 'temperature');
}

function anchors(part: Part, bands: readonly Band[]): Anchor[] {
  const rising = part.to >= part.from ? 1 : -1;
  const known = bands
    .filter((band) => band.part === part.name)
    .flatMap((band) => [band.from, band.to])
    .flatMap(({ time, temperature }) => (temperature === null ? [] : [{ time, temperature }]));
  const ends = { first: { time: part.start, temperature: part.from }, last: { time: part.end, temperature: part.to } };
  const sorted = [ends.first, ...known, ends.last].sort((a, b) => a.time - b.time);
  // Only what goes on in the direction of the part can be inverted.
  const kept: Anchor[] = [];
  for (const anchor of sorted) {
    const last = kept.at(-1);
    const isOn =
      last === undefined || (anchor.time > last.time && rising * (anchor.temperature - last.temperature) > 0);
    if (isOn) kept.push(anchor);
  }
  return kept;
}

function between(list: readonly Anchor[], at: number, by: keyof Anchor, wanted: keyof Anchor): number {
  if (list.length < 2) return list[0]?.[wanted] ?? 0;
  const sign = Math.sign(list[1][by] - list[0][by]);
  let k = 1;
  while (k < list.length - 1 && sign * (list[k][by] - at) < 0) k++;
  const a = list[k - 1];
  const b = list[k];
  return a[wanted] + ((at - a[by]) / (b[by] - a[by])) * (b[wanted] - a[wanted]);
}
