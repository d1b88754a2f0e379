import { keyed, make, px, setText } from '../dom';
import type { Look } from '../look';

/** The hairline through all lanes, a dot on every signal, and where it is on the abscissa. Elements, so that it moves alone. */
export function cursorLine(): { readonly element: HTMLElement; update(look: Look): void } {
  const hair = make('div', { class: 'hairline' });
  const chip = make('div', { class: 'chip' });
  const dots = make('div');
  const element = make('div', { class: 'cursor', attributes: { 'aria-hidden': 'true' }, children: [hair, dots, chip] });
  return {
    element,
    update({ frame, cursor, state }) {
      const x = cursor === null ? NaN : frame.xScale.px(cursor.at);
      element.hidden = !(x >= frame.left && x <= frame.right) || frame.lanes.length === 0;
      if (cursor === null || element.hidden) return;
      const top = frame.lanes[0].box.plotTop;
      hair.style.transform = `translate(${px(x)}, ${px(top)})`;
      hair.style.height = px(frame.axisTop - top);
      const { answer } = cursor;
      const place = frame.abscissa === 'time' ? answer?.time : answer?.temperature;
      const dotX = place === null || place === undefined ? x : frame.xScale.px(place);
      // A dot for a place the hairline has left would be beside the curve.
      const values = Math.abs(dotX - x) > 40 ? [] : (answer?.values ?? []);
      keyed(
        dots,
        values.flatMap((value, i) => {
          const lane = frame.lanes.find((l) => l.lane.id === value.lane);
          if (lane === undefined) return [];
          const y = lane.yScale.px(value.y);
          return y < lane.box.plotTop || y > lane.box.plotBottom ? [] : [{ key: `${value.lane}/${i}`, y }];
        }),
        ({ key }) => key,
        () => make('div', { class: 'dot' }),
        (dot, { y }) => {
          dot.style.transform = `translate(${px(dotX)}, ${px(y)})`;
        },
      );
      const lanes = new Set(state.lanes.map((l) => l.id));
      const own = answer?.values.filter((v) => !lanes.has(v.lane)).map((v) => v.text) ?? [];
      setText(chip, own.length > 0 ? own.join('   ') : abscissaText(answer?.temperature ?? null, answer?.time ?? null));
      chip.hidden = answer === null;
      const half = chip.offsetWidth / 2;
      chip.style.transform = `translate(${px(Math.min(frame.width - half - 2, Math.max(half + 2, x)))}, ${px(frame.axisTop + 3)})`;
    },
  };
}

function abscissaText(temperature: number | null, time: number | null): string {
  const parts = [
    ...(temperature === null ? [] : [`${temperature.toFixed(1)} °C`]),
    ...(time === null ? [] : [`${(time / 60).toFixed(2)} min`]),
  ];
  return parts.join('   ');
}
