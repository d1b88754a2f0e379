/** A canvas of the size asked for in CSS pixels, sharp on any screen. Cleared. */
export function cleared(canvas: HTMLCanvasElement, width: number, height: number): CanvasRenderingContext2D | null {
  const ratio = window.devicePixelRatio || 1;
  const columns = Math.max(1, Math.round(width * ratio));
  const rows = Math.max(1, Math.round(height * ratio));
  if (canvas.width !== columns || canvas.height !== rows) {
    canvas.width = columns;
    canvas.height = rows;
    canvas.style.width = `${width}px`;
    canvas.style.height = `${height}px`;
  }
  const context = canvas.getContext('2d');
  context?.setTransform(ratio, 0, 0, ratio, 0, 0);
  context?.clearRect(0, 0, width, height);
  return context;
}

/** A one-pixel line lies on pixels, not between them. */
export function crisp(value: number): number {
  return Math.round(value) + 0.5;
}

export function line(context: CanvasRenderingContext2D, x1: number, y1: number, x2: number, y2: number): void {
  context.beginPath();
  context.moveTo(x1, y1);
  context.lineTo(x2, y2);
  context.stroke();
}

/** Parallel strokes over a rectangle: a warning that needs no colour. */
export function hatched(
  context: CanvasRenderingContext2D,
  left: number,
  top: number,
  width: number,
  height: number,
  colour: string,
): void {
  if (width <= 0 || height <= 0) return;
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  context.strokeStyle = colour;
  context.lineWidth = 1;
  context.beginPath();
  // Anchored to the sheet, so that the strokes of neighbours meet.
  const first = Math.floor((left - height) / 7) * 7;
  for (let x = first; x < left + width + height; x += 7) {
    context.moveTo(x, top + height);
    context.lineTo(x + height, top);
  }
  context.stroke();
  context.restore();
}
