import { shownPerUnit, abscissaLabel } from '../geometry/abscissa';
import { keyed, make, setText } from '../dom';
import type { Look } from '../look';
import { noBlocks, ordinateRange } from '../state/blocks';
import { say } from '../words';
import type { Part } from './controls';

/** What the picture shows, as a table: every curve, its range in view, how many of its samples are drawn, and its age. */
export function drawn(): Part {
  const caption = make('caption');
  const titles = ['lane', 'whose', 'part', 'range', 'drawnPoints'] as const;
  const heads = make('tr', {
    children: titles.map((word) => make('th', { text: say(word), attributes: { scope: 'col' } })),
  });
  const body = make('tbody');
  const table = make('table', { children: [caption, make('thead', { children: [heads] }), body] });
  const wrap = make('div', {
    class: 'table-wrap',
    attributes: { tabindex: '0', role: 'region', 'aria-label': say('drawn') },
    children: [table],
  });
  const element = make('details', { class: 'drawn', children: [make('summary', { text: say('drawn') }), wrap] });
  let now: Look | null = null;
  element.addEventListener('toggle', () => {
    if (element.open && now !== null) show(now);
  });
  return {
    element,
    update(look) {
      now = look;
      if (element.open) show(look);
    },
  };

  // Counting samples takes time that a zoom does not have: only where it is seen.
  function show(look: Look): void {
    const { x, abscissa } = look.frame;
    const per = shownPerUnit(abscissa);
    const view = `${abscissaLabel(abscissa)} ${short(x.from / per)} … ${short(x.to / per)}`;
    setText(
      caption,
      `${say('drawnCaption', `${say('revision', look.state.generation.revision)}, ${look.freshness.text}`)} · ${view}`,
    );
    keyed(
      body,
      rows(look),
      (row) => row[0],
      () => make('tr', { children: titles.map(() => make('td')) }),
      (tr, row) => [...tr.children].forEach((cell, i) => setText(cell, row[i + 1] ?? '')),
    );
  }
}

function rows({ frame, blocks }: Look): string[][] {
  return frame.lanes.flatMap(({ lane }) =>
    lane.curves.map((curve) => {
      const { drawn: samples, close, whole } = blocks.get(curve.id) ?? noBlocks;
      const seen = ordinateRange(samples, frame.x);
      const range = seen === null ? '–' : `${lane.label} ${short(seen.from)} … ${short(seen.to)}`;
      const inView = samples.filter(({ x }) => x >= frame.x.from && x <= frame.x.to).length;
      const isAll = (close ?? whole)?.complete === true;
      const count = isAll ? `${inView}, ${say('everySample')}` : say('samplesOf', inView, curve.points);
      return [
        `${lane.id}/${curve.id}`,
        lane.name,
        curve.of === 'run' ? say('thisRun') : curve.name,
        curve.part,
        range,
        count,
      ];
    }),
  );
}

function short(value: number): string {
  return String(Number(value.toPrecision(5))).replace('-', '−');
}

/** One sentence for a lane's picture. */
export function laneSummary({ frame, blocks }: Look, id: string): string {
  const placed = frame.lanes.find(({ lane }) => lane.id === id);
  if (placed === undefined) return '';
  const { lane } = placed;
  const ranges = lane.curves.flatMap((c) => ordinateRange((blocks.get(c.id) ?? noBlocks).drawn, frame.x) ?? []);
  const low = Math.min(...ranges.map((r) => r.from));
  const high = Math.max(...ranges.map((r) => r.to));
  const parts = [...new Set(lane.curves.map((c) => c.part))].join(', ');
  const count = lane.curves.length === 1 ? say('laneCurve') : say('laneCurves', lane.curves.length);
  const bands = frame.bands.filter(({ band }) => band.lanes.includes(id)).length;
  const [from, to] = ranges.length === 0 ? ['–', '–'] : [short(low), short(high)];
  return say('laneSummary', lane.name, lane.direction ?? lane.label, count, parts, from, `${to} ${lane.unit}`, bands);
}
