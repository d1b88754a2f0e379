/** What a person can set in the editor's settings file. */
export type Settings = Readonly<Record<string, unknown>>;

export type Theme = 'light' | 'dark' | 'high contrast' | 'high contrast light';

/** Their names in this version of the editor. */
const themes: Readonly<Record<Theme, string>> = {
  light: 'Light Modern',
  dark: 'Dark Modern',
  'high contrast': 'Default High Contrast',
  'high contrast light': 'Default High Contrast Light',
};

export function themeSettings(theme: Theme): Settings {
  return { 'workbench.colorTheme': themes[theme], 'window.autoDetectColorScheme': false };
}

/** A quiet editor: nothing opens by itself, nothing asks the network. */
export const quietSettings: Settings = {
  'workbench.startupEditor': 'none',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.enableExperiments': false,
  'workbench.tips.enabled': false,
  'chat.disableAIFeatures': true,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': 'off',
  'extensions.ignoreRecommendations': true,
  'github.gitAuthentication': false,
  'git.openRepositoryInParentFolders': 'never',
  'window.confirmBeforeClose': 'never',
  // In a browser texts would be saved by themselves.
  'files.autoSave': 'off',
};
