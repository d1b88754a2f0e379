import type { Lane } from '../../../server/src/protocol/view';
import { keyed, make, setAttribute, setText } from '../dom';
import { allowedHeight, arranged, movedLane } from '../geometry/lanes';
import type { Actions, Look } from '../look';
import { noBlocks, ordinateRange } from '../state/blocks';
import { padded } from '../geometry/zoom';
import { say } from '../words';
import { menuButton, type MenuEntry } from './menu';

export interface LaneHead {
  /** In the order they stand: grip, name with unit and direction; then tabs; then reading and menu. */
  readonly before: readonly HTMLElement[];
  readonly after: readonly HTMLElement[];
  update(look: Look, lane: Lane): void;
  /** Only what the cursor reads. */
  updateReading(look: Look): void;
}

/** Name, unit, direction, reading and menu of one lane. `grab` begins dragging the lane to another place. */
export function laneHead(
  id: string,
  actions: Actions,
  look: () => Look | null,
  grab: (event: PointerEvent) => void,
): LaneHead {
  const grip = make('button', { class: 'lane-grip', text: '⠿', attributes: { type: 'button' } });
  const label = make('span', { class: 'lane-label' });
  const unit = make('select', { class: 'lane-unit' });
  const name = make('span', { class: 'lane-name', children: [label, unit] });
  const direction = make('span', { class: 'direction' });
  const title = make('div', { class: 'lane-title', children: [name, direction] });
  const reading = make('span', { class: 'reading', attributes: { 'aria-hidden': 'true' } });
  const menu = menuButton('⋯', '', () => entries(id, actions, look()));
  menu.classList.add('lane-menu');
  const move = (by: -1 | 1): void => {
    const now = look();
    if (now !== null) actions.keep({ do: 'order', lanes: reordered(now, id, by) });
    grip.focus();
  };
  grip.addEventListener('pointerdown', grab);
  grip.addEventListener('keydown', (event) => {
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    event.stopPropagation();
    move(event.key === 'ArrowUp' ? -1 : 1);
  });
  unit.addEventListener('change', () => {
    actions.choose({ units: { ...actions.choices().units, [id]: unit.value } });
  });
  const updateReading = ({ cursor }: Look): void => {
    const values = cursor?.answer?.values.filter((v) => v.lane === id) ?? [];
    setText(reading, values.map((v) => v.text).join(', '));
    setAttribute(reading, 'title', values.length > 1 ? values.map((v) => v.text).join('\n') : null);
  };
  return {
    updateReading,
    before: [grip, title],
    after: [reading, menu],
    update(now, lane) {
      setAttribute(grip, 'aria-label', say('laneGrip', lane.name));
      setAttribute(grip, 'title', say('laneGrip', lane.name));
      setText(label, lane.label);
      name.classList.toggle('has-units', lane.units.length > 1);
      unit.hidden = lane.units.length < 2;
      setAttribute(unit, 'aria-label', say('unitOf', lane.name));
      keyed(
        unit,
        lane.units,
        (u) => u,
        () => make('option'),
        (option, u) => {
          setText(option, u);
          setAttribute(option, 'value', u);
        },
      );
      if (unit.value !== lane.unit) unit.value = lane.unit;
      setText(direction, lane.direction === null ? '' : `${lane.direction}${arrow(lane.direction)}`);
      updateReading(now);
      setAttribute(menu, 'aria-label', say('laneMenu', lane.name));
    },
  };
}

/** The arrow is drawn beside the words, never instead of them. */
function arrow(direction: string): string {
  return /\bup\b/.test(direction) ? ' ↑' : /\bdown\b/.test(direction) ? ' ↓' : '';
}

export function reordered({ state, kept }: Look, id: string, by: -1 | 1): string[] {
  const all = arranged(state.lanes, kept.laneOrder, []).map((l) => l.id);
  const shown = arranged(state.lanes, kept.laneOrder, kept.hiddenLanes).map((l) => l.id);
  return movedLane(all, shown, id, by);
}

function entries(id: string, actions: Actions, look: Look | null): MenuEntry[] {
  const placed = look?.frame.lanes.find(({ lane }) => lane.id === id);
  if (look === null || placed === undefined) return [];
  const { frame, blocks } = look;
  const at = frame.lanes.indexOf(placed);
  const height = placed.box.plotBottom - placed.box.plotTop;
  const ranges = placed.lane.curves.flatMap((c) => ordinateRange((blocks.get(c.id) ?? noBlocks).drawn, frame.x) ?? []);
  const seen = { from: Math.min(...ranges.map((r) => r.from)), to: Math.max(...ranges.map((r) => r.to)) };
  const entry = (text: string, run: () => void, off = false): MenuEntry => ({ kind: 'do', text, run, off });
  const resize = (by: number): void => actions.keep({ do: 'height', lane: id, height: allowedHeight(height * by) });
  return [
    entry(
      say('laneFit'),
      () => actions.keep({ do: 'ordinate', lane: id, range: padded(seen, 0.06) }),
      ranges.length === 0,
    ),
    entry(
      say('laneWhole'),
      () => actions.keep({ do: 'ordinate', lane: id, range: null }),
      !(id in look.kept.ordinates),
    ),
    entry(say('laneTaller'), () => resize(1.3)),
    entry(say('laneLower'), () => resize(1 / 1.3)),
    entry(say('laneUp'), () => actions.keep({ do: 'order', lanes: reordered(look, id, -1) }), at === 0),
    entry(
      say('laneDown'),
      () => actions.keep({ do: 'order', lanes: reordered(look, id, 1) }),
      at === frame.lanes.length - 1,
    ),
    entry(say('laneHide'), () => actions.keep({ do: 'showLane', lane: id, shown: false }), frame.lanes.length < 2),
  ];
}
