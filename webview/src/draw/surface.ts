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
