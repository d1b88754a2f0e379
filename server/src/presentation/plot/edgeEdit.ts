import type { Span } from '../../base/span';
import type { Snapshot } from '../../engine/snapshot';
import type { GlossRole } from '../../findings/finding';
import { placedStatements, type PlacedStatement } from './bands';
import { edgeTarget, type EdgeTarget, type MovedEdge } from './edgeTarget';
import { textOf, tokenText, writtenPlaces, type Texts, type WrittenPlace } from './places';
import type { PlotCurves } from './plotCurves';
import { digitsIn, frozenWindow, headBetween, movedPlaceText, neededSegment } from './windowText';
import { numberIn } from './writtenNumber';

export interface EdgeContext {
  readonly role: 'run' | 'method';
  /** Whether the gloss in the view, and the method it imports, can be edited. */
  readonly editable: boolean;
  readonly methodEditable: boolean;
  /** The picture on which the move began. */
  readonly drawn: Pick<Snapshot, 'gloss' | 'method' | 'results'>;
  readonly curves: PlotCurves;
  /** The texts as they stand now. */
  readonly present: Texts;
}

export interface EdgeMoveRequest extends MovedEdge {
  readonly statement: string;
  /** For an edge of the method: an override in the run's gloss, or the method itself. */
  readonly into: 'gloss' | 'method';
}

/** One text edit in offsets of the present text, or why there is none. */
export type EdgeTextEdit =
  | {
      readonly ok: true;
      readonly file: GlossRole;
      /** Empty where the digits stay the same. */
      readonly edits: readonly { readonly span: Span; readonly text: string }[];
      /** The digits for the number: `652.3`. */
      readonly written: string;
      readonly label: string;
      /** Where the caret should go, in the text after the edit: between the quotes of an empty reason. */
      readonly caret: number | null;
    }
  | { readonly ok: false; readonly reason: string };

/**
 * The text edit that a moved edge of a window comes to.
 *
 * A number of the text changes alone: unit, spacing, sign of minus, comments stay, and on a cooling ramp the order in which
 * the ends are written. An edge of the method becomes `override KIND NAME FROM..TO UNIT` with an empty reason, as one edit
 * in the run's gloss, or, by choice, an edit of the method. An edge found by a rule freezes: both ends are written. Where
 * the text has gone on since the picture but the statement still says the same, the edit is made where it stands now.
 */
export function edgeEdit(request: EdgeMoveRequest, context: EdgeContext): EdgeTextEdit {
  if (!context.editable) return refused('This text cannot be edited here.');
  const drawn = drawnStatement(request.statement, context);
  if (drawn === undefined) return refused('That statement has no window in this picture.');
  const { name } = drawn.place;
  const now = writtenPlaces(context.present).find((p) => p.name === name);
  const changed = changedSince(drawn.place, now, context);
  if (now === undefined || changed !== null) return refused(changed ?? gone(name));
  const immovable = cannotMove(now, context);
  if (immovable !== null) return refused(immovable);
  const target = edgeTarget(request, now, drawn.placed, context.curves);
  if ('refused' in target) return refused(target.refused);
  const into = now.holder.file === 'method' && context.role === 'run' && request.into === 'gloss' ? 'override' : 'text';
  if (into === 'text' && now.holder.file === 'method' && context.role === 'run' && !context.methodEditable) {
    return refused('The method cannot be edited here.');
  }
  const move: Move = { now, placed: drawn.placed, edge: request.edge, target, context };
  const edit = into === 'override' ? overrideEdit(move) : ownEdit(move);
  const end = now.point !== null ? '' : request.edge === 'from' ? 'the start of ' : 'the end of ';
  return { ok: true, written: target.digits, label: `Move ${end}${name} to ${target.spoken}`, ...edit };
}

interface Move {
  readonly now: WrittenPlace;
  readonly placed: PlacedStatement['placed'];
  readonly edge: 'from' | 'to';
  readonly target: EdgeTarget;
  readonly context: EdgeContext;
}

type Edit = Pick<Extract<EdgeTextEdit, { ok: true }>, 'file' | 'edits' | 'caret'>;

function drawnStatement(statement: string, { drawn, curves }: EdgeContext): PlacedStatement | undefined {
  return placedStatements(drawn, curves).find(({ place }) => place.shown.node.id === statement);
}

/** Why a picture no longer fits the text; null where the statement and its place say what they said. */
function changedSince(drawn: WrittenPlace, now: WrittenPlace | undefined, context: EdgeContext): string | null {
  if (now === undefined) return gone(drawn.name);
  const before = [drawn.shown.node.id, drawn.holder.node.id].join('\n');
  if (before !== [now.shown.node.id, now.holder.node.id].join('\n')) {
    return `${drawn.name} is written elsewhere since this picture was drawn: move it again.`;
  }
  const same = ['window', 'segment', 'at', 'sum', 'level'].every(
    (token) => tokenText(drawn.holder, token, context.drawn) === tokenText(now.holder, token, context.present),
  );
  return same ? null : `The window of ${drawn.name} was changed since this picture was drawn: move it again.`;
}

function gone(name: string): string {
  return `${name} is gone from the text, or cannot be read there.`;
}

function cannotMove(now: WrittenPlace, { role }: EdgeContext): string | null {
  const { name, window, segment, point, sumOf, holder } = now;
  if (role === 'method' && holder.file === 'gloss') {
    return `The run in view overrides ${name}: its window stands in that run's gloss.`;
  }
  if (holder.statement.kind === 'residue' && point === null) {
    return `${name} is read at the end of ${segment === null ? 'its segment' : `${segment.direction} ${segment.index}`}: there is no number to move.`;
  }
  if (sumOf !== null && window === null && segment === null) {
    return `${name} reaches from the first to the last edge of its parts: move an edge of ${sumOf.join(' or ')}.`;
  }
  return null;
}

/** The edit of the text in which the place stands. */
function ownEdit({ now, placed, edge, target, context: { present, curves } }: Move): Edit {
  const { holder } = now;
  const { file, node } = holder;
  const at = (span: Span, text: string): Edit => ({ file, edits: [{ span, text }], caret: null });
  const { written } = target;
  if (written !== null) {
    const token = node.tokens.get(written.span)!;
    const number = numberIn(tokenText(holder, written.span, present))!;
    const span = { start: token.start + number.start, end: token.start + number.end };
    const digits = digitsIn(target, number.minus);
    return digits === number.text ? { file, edits: [], caret: null } : at(span, digits);
  }
  const frozen = frozenWindow(placed, edge, target);
  const window = node.tokens.get('window');
  if (window !== undefined) return at(window, `${frozen}${neededSegment(now, placed, curves)}`);
  const segment = node.tokens.get('segment');
  if (segment !== undefined) {
    const before = textOf(file, present).slice(0, segment.start);
    const start = before.length - (/in[ \t]*$/.exec(before)?.[0].length ?? 0);
    return at({ start, end: start }, `${frozen} `);
  }
  // A crossing may stand without a place: behind its level.
  const end = (node.tokens.get('level') ?? node.tokens.get('name') ?? node.span).end;
  return at({ start: end, end }, ` ${frozen}${neededSegment(now, placed, curves)}`);
}

/** The place in an override of this run's gloss: of the one there is, or of a new one with an empty reason. */
function overrideEdit({ now, placed, edge, target, context: { present, curves } }: Move): Edit {
  const place = movedPlaceText(now, placed, edge, target, present, curves);
  const { override, holder } = now;
  if (override !== null) {
    const { tokens, span } = override.node;
    const end = (tokens.get('level') ?? tokens.get('name') ?? span).end;
    return { file: 'gloss', edits: [{ span: { start: end, end }, text: ` ${place}` }], caret: null };
  }
  const text = textOf('gloss', present);
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const { at, isAfterOverride } = placeForOverride(present);
  const head = `override ${holder.statement.kind} ${now.name}${headBetween(holder, present)} ${place}`;
  const gap = isAfterOverride ? eol : eol + eol;
  const inserted = `${gap}${head}${eol}  because ""`;
  return {
    file: 'gloss',
    edits: [{ span: { start: at, end: at }, text: inserted }],
    caret: at + inserted.length - 1,
  };
}

/** Behind the last override, else behind the method's own line, else at the end. */
function placeForOverride({ gloss }: Texts): { readonly at: number; readonly isAfterOverride: boolean } {
  const { text, statements } = gloss.tree;
  const last = statements.filter((s) => s.statement?.override === true).at(-1);
  const after = last ?? statements.find((s) => s.statement?.kind === 'use method');
  let at = after?.span.end ?? text.trimEnd().length;
  while (at < text.length && text[at] !== '\n' && text[at] !== '\r') at++;
  return { at, isAfterOverride: last !== undefined };
}

/**
 * The edits of a move as they are evaluated for a preview: with a reason in the quotes, for an override without one fails.
 */
export function previewEdits(edit: Extract<EdgeTextEdit, { ok: true }>): Extract<EdgeTextEdit, { ok: true }>['edits'] {
  if (edit.caret === null) return edit.edits;
  return edit.edits.map((e) => ({ ...e, text: `${e.text.slice(0, -1)}preview"` }));
}

function refused(reason: string): EdgeTextEdit {
  return { ok: false, reason };
}

/** A text with edits that do not overlap made in it. */
export function withEdits(text: string, edits: readonly { readonly span: Span; readonly text: string }[]): string {
  return [...edits]
    .sort((a, b) => b.span.start - a.span.start)
    .reduce((t, e) => t.slice(0, e.span.start) + e.text + t.slice(e.span.end), text);
}
