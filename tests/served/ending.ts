const endings = new Set<() => void>();
let listening = false;

/**
 * Has something undone when this process ends, also by a signal; returns what undoes it earlier. A server or a folder left
 * over would stay on the machine for good.
 */
export function atTheEnd(undo: () => void): () => void {
  if (!listening) {
    listening = true;
    process.on('exit', () => {
      for (const one of [...endings].reverse()) one();
    });
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => process.exit(1));
  }
  const once = (): void => {
    if (endings.delete(once)) undo();
  };
  endings.add(once);
  return once;
}
