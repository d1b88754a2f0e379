/** What a person may set. None of it changes a number, a verdict, a finding or its severity. */
export interface Settings {
  /** When results are computed. */
  readonly refresh: 'onType' | 'onSave' | 'manual';
  readonly inline: {
    readonly results: boolean;
    readonly verdicts: boolean;
    readonly windows: boolean;
  };
  readonly lenses: boolean;
  /** At most so many findings of one gloss are reported, errors first. */
  readonly mostFindings: number;
}

export const defaultSettings: Settings = {
  refresh: 'onType',
  inline: { results: true, verdicts: true, windows: true },
  lenses: false,
  mostFindings: 200,
};

/** Settings as a client sends them (`thermogloss.*`): what is missing or of another type is the default. */
export function settingsFrom(sent: unknown): Settings {
  const all = record(sent);
  const inline = record(all['inline']);
  const curves = defaultSettings.inline;
  const refresh = all['refresh'];
  const most = all['mostFindings'];
  return {
    refresh: refresh === 'onSave' || refresh === 'manual' ? refresh : 'onType',
    inline: {
      results: flag(inline['results'], curves.results),
      verdicts: flag(inline['verdicts'], curves.verdicts),
      windows: flag(inline['windows'], curves.windows),
    },
    lenses: flag(all['lenses'], defaultSettings.lenses),
    mostFindings: typeof most === 'number' && most >= 1 ? Math.floor(most) : defaultSettings.mostFindings,
  };
}

function record(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

function flag(value: unknown, otherwise: boolean): boolean {
  return typeof value === 'boolean' ? value : otherwise;
}
