import type { Part, Uncertain } from '../quantities/uncertain';

/**
 * Names of influences. They name the physical input, so that results that share one are correlated through it:
 * this weighing, this blank, this element, this edge of the curve.
 */
export const influence = {
  weighing: (stem: string) => `mass of ${stem}`,
  firstReading: (stem: string) => `first reading of ${stem}`,
  temperatureScale: (stem: string) => `temperature scale of ${stem}`,
  signalScale: (signal: string, stem: string) => `${signal} scale of ${stem}`,
  blankStart: (signal: string, stem: string) => `blank of ${signal} at its first reading, ${stem}`,
  noise: (quantity: string, name: string, stem: string) => `noise in ${name}.${quantity}, ${stem}`,
};

/** An influence that sits at one place of one curve: a window's edge, or the noise of the level read there. */
export interface LocalInfluence {
  readonly what: 'edge' | 'level noise' | 'blank';
  readonly signal: string;
  readonly segment: string;
  /** °C, or min from the start of a hold. */
  readonly at: number;
  readonly unit: '°C' | 'min';
  readonly stem: string;
}

export function localInput(local: LocalInfluence): string {
  return `${local.what} of ${local.signal} at ${local.at} ${local.unit} in ${local.segment}, ${local.stem}`;
}

const localForm = /^(edge|level noise|blank) of (.+) at (-?[\d.e+-]+) (°C|min) in (.*?), (.*)$/;

function parseLocal(input: string): LocalInfluence | null {
  const match = localForm.exec(input);
  if (match === null) return null;
  return {
    what: match[1] as LocalInfluence['what'],
    signal: match[2],
    at: Number(match[3]),
    unit: match[4] as LocalInfluence['unit'],
    segment: match[5],
    stem: match[6],
  };
}

/** Edges closer than this are one decision (language.md 4): they move together. */
const oneEdge = { '°C': 5, min: 0.5 };

/**
 * Renames local influences that lie within 5 K (or 0.5 min) of each other on the same curve to one, over all values that
 * are about to be combined. Works on these values alone, so that no other statement can influence the combination.
 */
export function joinNearEdges(values: readonly Uncertain[]): Uncertain[] {
  const groups = new Map<string, { input: string; at: number; unit: LocalInfluence['unit'] }[]>();
  for (const value of values) {
    for (const part of value.parts) {
      const local = parseLocal(part.input);
      if (local === null) continue;
      const group = localInput({ ...local, at: 0 });
      const members = groups.get(group) ?? [];
      if (!members.some((m) => m.input === part.input))
        members.push({ input: part.input, at: local.at, unit: local.unit });
      groups.set(group, members);
    }
  }
  const renamed = new Map<string, string>();
  for (const members of groups.values()) {
    members.sort((a, b) => a.at - b.at);
    let head = members[0];
    for (const member of members) {
      if (member.at - head.at > oneEdge[member.unit]) head = member;
      if (member !== head) renamed.set(member.input, head.input);
    }
  }
  if (renamed.size === 0) return [...values];
  return values.map((value) => ({ value: value.value, parts: mergeParts(value.parts, renamed) }));
}

/** Sums parts of one influence; the sum of signed parts is exact for fully correlated ones. */
export function mergeParts(parts: readonly Part[], renamed: ReadonlyMap<string, string> = new Map()): Part[] {
  const merged = new Map<string, Part>();
  for (const part of parts) {
    const input = renamed.get(part.input) ?? part.input;
    const before = merged.get(input);
    merged.set(input, before === undefined ? { ...part, input } : { ...before, u: before.u + part.u });
  }
  return [...merged.values()];
}

/**
 * The part an edge contributes: half the range of the quantity with the edge 5 K earlier, in place and 5 K later, over √3,
 * with the sign of the change towards later, so that two windows that share an edge move together (rectangular distribution, JCGM 100 4.3.7).
 */
export function edgePart(input: string, earlier: number, inPlace: number, later: number): Part | null {
  if (!Number.isFinite(earlier) || !Number.isFinite(later)) return null;
  const halfRange = (Math.max(earlier, inPlace, later) - Math.min(earlier, inPlace, later)) / 2;
  const u = halfRange / Math.sqrt(3);
  return u === 0 ? null : { input, u: later < earlier ? -u : u, dof: null };
}
