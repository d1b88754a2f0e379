import type { EvaluationStatement, LetStatement, Place } from '../model';

export type Overridable = EvaluationStatement | LetStatement;

/**
 * The method's statement with what the override writes: a place, an expression or a clause replaces the method's as a
 * whole, the rest stays. Null where they are of different kinds. Id and reason are the override's.
 */
export function mergeOverride(base: Overridable, over: Overridable): Overridable | null {
  const common = {
    id: over.id,
    override: true,
    because: over.because,
    notes: [...base.notes, ...over.notes],
    allows: [...base.allows, ...over.allows],
  };
  if (base.kind === 'step' && over.kind === 'step') {
    return {
      ...base,
      ...common,
      ...summed(base, over),
      by: over.by ?? base.by,
      span: over.span ?? base.span,
      smooth: over.smooth ?? base.smooth,
      per: over.per ?? base.per,
      encloses: list(base.encloses, over.encloses),
    };
  }
  if (base.kind === 'peak' && over.kind === 'peak') {
    return {
      ...base,
      ...common,
      ...summed(base, over),
      of: over.of ?? base.of,
      baseline: over.baseline ?? base.baseline,
      expect: over.expect ?? base.expect,
      span: over.span ?? base.span,
      smooth: over.smooth ?? base.smooth,
      per: over.per ?? base.per,
      encloses: list(base.encloses, over.encloses),
    };
  }
  if (base.kind === 'glass' && over.kind === 'glass') {
    return {
      ...base,
      ...common,
      place: place(base.place, over.place),
      by: over.by ?? base.by,
      span: over.span ?? base.span,
      smooth: over.smooth ?? base.smooth,
    };
  }
  if (base.kind === 'onset' && over.kind === 'onset') {
    return {
      ...base,
      ...common,
      place: place(base.place, over.place),
      of: over.of ?? base.of,
      span: over.span ?? base.span,
      smooth: over.smooth ?? base.smooth,
    };
  }
  if (base.kind === 'crossing' && over.kind === 'crossing') {
    return {
      ...base,
      ...common,
      signal: over.signal,
      level: over.level,
      place: place(base.place, over.place),
      way: over.way ?? base.way,
      which: over.which ?? base.which,
      per: over.per ?? base.per,
    };
  }
  if (base.kind === 'residue' && over.kind === 'residue') {
    return { ...base, ...common, at: over.at, over: over.over ?? base.over, per: over.per ?? base.per };
  }
  if (base.kind === 'let' && over.kind === 'let') {
    return { ...base, ...common, expression: over.expression, show: over.show ?? base.show };
  }
  return null;
}

function place(base: Place, over: Place): Place {
  return over.window === null && over.segment === null ? base : over;
}

function list<T>(base: readonly T[], over: readonly T[]): readonly T[] {
  return over.length > 0 ? over : base;
}

type Summable = { readonly sumOf: readonly string[] | null; readonly place: Place };

function summed(base: Summable, over: Summable): Summable {
  return { sumOf: over.sumOf ?? base.sumOf, place: place(base.place, over.place) };
}
