/** Called by the editor when a gloss is opened. */
export function activate(): void {
  // The language itself is declared in the manifest.
}

export function deactivate(): void {
  // Nothing is held.
}
