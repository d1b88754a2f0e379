import type { Snapshot } from '../engine/snapshot';
import type { Construction, Shape, ShapePoint } from '../evaluation/result';
import { fixedNumber, plainNumber } from './plainNumber';
import { textTable } from './textTable';

/** Construction lines and marks of every statement in data units: min of the file's own time, °C, the signal's own unit. */
export function geometryText(snapshot: Snapshot): string {
  const lines = snapshot.constructions.flatMap((c) => [...constructionLines(c), '']);
  return lines.map((l) => `${l}\n`).join('');
}

function constructionLines(construction: Construction): string[] {
  const rows = construction.shapes.flatMap(shapeRows);
  const unit = construction.unit === undefined ? '' : ` in ${construction.unit}`;
  return [
    `Geometry of ${construction.name}: ${construction.signal}${unit} over the file's time in min`,
    ...textTable(
      [
        { header: ['  shape'], align: 'left' },
        { header: ['min'], align: 'right' },
        { header: ['°C'], align: 'right' },
        { header: [construction.signal], align: 'right' },
      ],
      rows.map((cells) => ({ cells })),
    ),
  ];
}

function shapeRows(shape: Shape): string[][] {
  switch (shape.shape) {
    case 'line':
      return shape.points.map((p, i) => [`  ${i === 0 ? shape.role : ''}`, ...pointCells(p)]);
    case 'mark':
      return [[`  at ${shape.quantity}`, ...pointCells(shape.at)]];
    case 'area':
      return [
        ['  area from', fixedNumber(shape.from / 60, 3), '', ''],
        ['  area to', fixedNumber(shape.to / 60, 3), '', ''],
      ];
  }
}

function pointCells(p: ShapePoint): string[] {
  const temperature = Number.isFinite(p.temperature) ? fixedNumber(p.temperature, 2) : '';
  return [fixedNumber(p.time / 60, 3), temperature, plainNumber(p.y, 6)];
}
