/** One curves view, as the registry sees it. */
export interface CurvesPanelLike {
  /** URI of the gloss it shows. */
  readonly uri: string;
  /** Stays with its gloss; otherwise it follows the active text. */
  readonly pinned: boolean;
  show(uri: string): void;
  setPinned(pinned: boolean): void;
}

/** All curves views: at most one follows the active text, the others stay with their gloss. */
export class PanelRegistry<P extends CurvesPanelLike> {
  private readonly panels = new Set<P>();

  get all(): readonly P[] {
    return [...this.panels];
  }

  get follower(): P | null {
    return this.all.find((p) => !p.pinned) ?? null;
  }

  /** A second one that would follow stays where it is instead. */
  add(panel: P): void {
    if (!panel.pinned && this.follower !== null) panel.setPinned(true);
    this.panels.add(panel);
  }

  remove(panel: P): void {
    this.panels.delete(panel);
  }

  /** The view to bring forward for a gloss: one that shows it, else the one that follows, turned to it; null: none yet. */
  forGloss(uri: string): P | null {
    const shown = this.all.filter((p) => p.uri === uri);
    const found = shown.find((p) => !p.pinned) ?? shown[0] ?? this.follower;
    if (found !== null && found !== undefined && found.uri !== uri) found.show(uri);
    return found ?? null;
  }

  /** The active text changed. */
  follow(uri: string): void {
    const follower = this.follower;
    if (follower !== null && follower.uri !== uri) follower.show(uri);
  }

  pin(panel: P, pinned: boolean): void {
    if (!pinned) {
      for (const other of this.all) if (other !== panel && !other.pinned) other.setPinned(true);
    }
    if (panel.pinned !== pinned) panel.setPinned(pinned);
  }
}
