import type { Snapshot } from '../../engine/snapshot';
import { edgeShift } from '../../evaluation/place';
import type { Requirement, Result } from '../../evaluation/result';
import { quantityRecord, type EvaluationKind } from '../../language/vocabulary/quantities';
import { blankWords, shortInput } from '../explain';
import { roundToUncertainty } from '../number';
import { plainNumber } from '../plainNumber';
import { shownBasis, shownExpanded, shownWindow, stateAndReasons, unitText } from '../shown';
import type { SnapshotTexts } from '../statements';
import { oneLine } from '../width';
import type { FindingsByName } from './viewFindings';

export interface Detail {
  readonly label: string;
  readonly text: string;
}

/** What the opened rows of one snapshot's results show: what each is, how it was made, what it rests on. */
export class ResultDetails {
  /** What all results of a name have in common. */
  private readonly shared = new Map<string, { readonly blank: string; readonly findings: readonly Entry[] }>();

  constructor(
    private readonly snapshot: Snapshot,
    private readonly texts: SnapshotTexts,
    private readonly findings: FindingsByName,
  ) {}

  /** Empty facts are left out. */
  of(r: Result): readonly Detail[] {
    const { texts } = this;
    const { blank, findings } = this.sharedOf(r);
    const record = r.kind === 'let' ? null : quantityRecord(r.kind as EvaluationKind, r.quantity);
    const place = [shownWindow(r.window), r.segment === null ? '' : `in ${r.segment}`];
    return filled([
      ['Definition', record === null ? '' : `${record.definition.replaceAll('`', '')} ${record.standard}.`],
      ['Formula', r.kind === 'let' ? texts.words(r.file, r.statement, 'expression') : ''],
      ['Method', r.method],
      ['Window', place.filter((t) => t !== '').join(' ')],
      ['Basis', r.basis === null ? '' : shownBasis(r.basis)],
      ['Blank', r.window === null ? '' : blank],
      ['State', stateAndReasons(r)],
      ...findings,
      ['Coverage', coverage(r)],
      ['Uncertainty from', shares(r)],
      ['Edges', edgeWords(r)],
      ['Written in', `${texts.path(r.file)}, line ${texts.line(r.file, r.statement)}`],
    ]);
  }

  private sharedOf({ name }: Result): { readonly blank: string; readonly findings: readonly Entry[] } {
    const known = this.shared.get(name);
    if (known !== undefined) return known;
    const findings = this.findings.of(name).map((f): Entry => {
      return [f.severity === 'note' ? 'Note' : 'Finding', `${f.message} (${f.code})`];
    });
    const made = { blank: blankWords(this.snapshot, name), findings };
    this.shared.set(name, made);
    return made;
  }
}

type Entry = readonly [label: string, text: string];

/** What the opened row of a requirement shows. */
export function requirementDetails(r: Requirement, texts: SnapshotTexts): readonly Detail[] {
  const apart = r.value === null ? '' : shownExpanded(r);
  return filled([
    ['Requirement', r.text],
    ['Expanded uncertainty', apart],
    ['Written in', `${texts.path(r.file)}, line ${texts.line(r.file, r.statement)}`],
  ]);
}

function filled(details: readonly Entry[]): Detail[] {
  return details.filter(([, text]) => text !== '').map(([label, text]) => ({ label, text: oneLine(text) }));
}

/** `U = 0.08 % (k = 2, many degrees of freedom)`. */
function coverage(r: Result): string {
  if (r.value === null || r.uncertainty === null || !(r.uncertainty > 0)) return '';
  const few = r.dof !== null && r.dof < 1000;
  const freedom = few ? `${plainNumber(r.dof, 2)} degrees of freedom` : 'many degrees of freedom';
  const expanded = roundToUncertainty(r.value, r.k * r.uncertainty).uncertainty;
  return `U = ${expanded}${differenceUnit(r)} (about 95 %, k = ${plainNumber(r.k, 3)}, ${freedom})`;
}

/** Shares of the variance, down to a hundredth of it. Merged by input they do not correlate, and add up to 100 %. */
function shares(r: Result): string {
  const whole = r.contributions.reduce((sum, c) => sum + c.u * c.u, 0);
  if (!(whole > 0)) return '';
  const parts = r.contributions.map(({ input, u }) => ({ input, u, share: (100 * u * u) / whole }));
  const shown = parts.filter((p) => p.share >= 1).sort((a, b) => b.share - a.share);
  const words = shown.map(
    (p) => `${shortInput(p.input)} ${plainNumber(p.share, 2)} % (${plainNumber(Math.abs(p.u), 2)}${differenceUnit(r)})`,
  );
  const rest = parts.length - shown.length;
  return [...words, ...(rest === 0 ? [] : [`${rest} more below 1 %`])].join('; ');
}

const edgeForm = /^edge of (.+) at (-?[\d.e+-]+) (°C|min) in (.*?), /;

/**
 * How far the result moves when an edge does. An edge enters the uncertainty as half the range over 5 K to each side, over
 * √3 (language.md 4): that half range is said again here.
 */
function edgeWords(r: Result): string {
  const words = r.contributions.flatMap(({ input, u }) => {
    const edge = edgeForm.exec(input);
    if (edge === null) return [];
    const [, , at, unit, segment] = edge;
    const shift = unit === 'min' ? `${edgeShift.seconds} s` : `${edgeShift.kelvin} K`;
    const within = r.kind === 'let' ? ` in ${segment}` : '';
    const place = `${plainNumber(Number(at), 5)} ${unit}${within}`;
    return [`${place} moved by ±${shift}: ±${plainNumber(Math.abs(u) * Math.sqrt(3), 2)}${differenceUnit(r)}`];
  });
  return words.join('; ');
}

/** Differences of temperatures are in K. */
function differenceUnit(r: Result): string {
  return unitText(r.unit.text === '°C' ? 'K' : r.unit.text);
}
