import type { RunProposals } from '../../engine/engine';
import type { Result } from '../../evaluation/result';
import { shownWindow } from '../../presentation/shown';
import type { Span } from '../../base/span';
import { knownNames, type CompletionContext } from './context';
import type { Offer } from './offer';

type Found = RunProposals['windows'][number];

/** The windows that the run shows for a statement of this kind, also as rules that find them. */
export async function windowOffers(context: CompletionContext, kind: string, replace: Span): Promise<Offer[]> {
  const shown = await proposalsOf(context);
  if (shown === null) return [];
  const fitting = shown.windows.filter(({ proposal }) => kind === 'onset' || proposal.kind === kind);
  const placeKnown = /^\s*in\b/.test(context.cursor.rest);
  return fitting.flatMap((found) => {
    const { proposal, around } = found;
    const segment = placeKnown ? '' : segmentText(shown, found);
    const window = `${proposal.from}..${proposal.to} ${proposal.unit}${segment}`;
    const offer: Offer = { label: window, kind: 'window', detail: proposal.comment, replace };
    if (around === null || kind === 'onset') return [offer];
    // What a rule finds is shown as far as it is known; the rule itself is the label.
    const finds = shownWindow(around.found).replace(/ \(.*\)$/, '');
    return [
      offer,
      { label: `${around.text}${segment}`, kind: 'window', detail: `${proposal.comment}, found at ${finds}`, replace },
    ];
  });
}

/** Temperatures to go out from, behind the word `around`. */
export async function aroundOffers(context: CompletionContext, kind: string, replace: Span): Promise<Offer[]> {
  const offers = await windowOffers(context, kind, replace);
  return offers
    .filter((offer) => offer.label.startsWith('around '))
    .map((offer) => ({ ...offer, label: offer.label.slice('around '.length) }));
}

/** Whole statements for what the run shows and no statement evaluates yet. */
export async function statementOffers(context: CompletionContext): Promise<Offer[]> {
  const { document, results } = context;
  const shown = await proposalsOf(context);
  if (shown === null) return [];
  const taken = new Set(knownNames(document).map((n) => n.name));
  const eol = document.tree.text.includes('\r\n') ? '\r\n' : '\n';
  return shown.windows
    .filter((found) => !(results?.snapshot.results ?? []).some((r) => covers(r, found)))
    .map((found) => {
      const { proposal } = found;
      const name = freeName(proposal.name, taken);
      const head = `${proposal.kind} ${name} ${proposal.from}..${proposal.to} ${proposal.unit}${segmentText(shown, found)}`;
      return {
        label: head,
        kind: 'statement',
        detail: proposal.comment,
        insert: [head, ...proposal.clauses.map((clause) => `  ${clause}`)].join(eol),
      };
    });
}

function proposalsOf({ document }: CompletionContext): Promise<RunProposals | null> {
  const { engine } = document.project;
  // A method has no run of its own.
  return document.tree.role === 'method' ? Promise.resolve(null) : engine.proposals(document.path, document.text);
}

/** Which segment, unless it is the one that is meant where none is written. */
function segmentText({ segments }: RunProposals, { proposal }: Found): string {
  const heatings = segments.filter((s) => s.direction === 'heating');
  return heatings.length === 1 && proposal.segment === 'heating 1' ? '' : ` in ${proposal.segment}`;
}

/** Whether a result was evaluated over most of a proposed window. */
function covers({ kind, segment, window }: Result, { proposal }: Found): boolean {
  if (kind !== proposal.kind || segment !== proposal.segment || window === null || window.unit !== proposal.unit) {
    return false;
  }
  const [a, b] = sorted(Number(proposal.from), Number(proposal.to));
  const [from, to] = sorted(window.from, window.to);
  return Math.min(b, to) - Math.max(a, from) > (b - a) / 2;
}

function sorted(a: number, b: number): readonly [number, number] {
  return a <= b ? [a, b] : [b, a];
}

/** `Loss1`, or the next number that no name has. */
function freeName(proposed: string, taken: Set<string>): string {
  const word = proposed.replace(/\d+$/, '');
  let number = Number(proposed.slice(word.length));
  while (taken.has(`${word}${number}`)) number += 1;
  taken.add(`${word}${number}`);
  return `${word}${number}`;
}
