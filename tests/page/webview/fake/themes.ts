/** Colours of an editor's four default themes, as far as the view reads them (from memory). */
export const themes = {
  'vscode-dark': {
    'editor-background': '#1f1f1f',
    'editor-foreground': '#cccccc',
    foreground: '#cccccc',
    focusBorder: '#0078d4',
    'textLink-foreground': '#4daafc',
    'editorWarning-foreground': '#cca700',
    'editorError-foreground': '#f85149',
    'testing-iconPassed': '#73c991',
  },
  'vscode-light': {
    'editor-background': '#ffffff',
    'editor-foreground': '#3b3b3b',
    foreground: '#3b3b3b',
    focusBorder: '#005fb8',
    'textLink-foreground': '#005fb8',
    'editorWarning-foreground': '#bf8803',
    'editorError-foreground': '#e51400',
    'testing-iconPassed': '#73c991',
  },
  'vscode-high-contrast': {
    'editor-background': '#000000',
    'editor-foreground': '#ffffff',
    foreground: '#ffffff',
    focusBorder: '#f38518',
    'textLink-foreground': '#21a6ff',
    'editorWarning-foreground': '#ffd370',
    'editorError-foreground': '#f48771',
    'testing-iconPassed': '#73c991',
  },
  'vscode-high-contrast-light': {
    'editor-background': '#ffffff',
    'editor-foreground': '#292929',
    foreground: '#292929',
    focusBorder: '#006bbd',
    'textLink-foreground': '#0f4a85',
    'editorWarning-foreground': '#895503',
    'editorError-foreground': '#b5200d',
    'testing-iconPassed': '#007100',
  },
} as const;

export type ThemeName = keyof typeof themes;
export const themeNames = Object.keys(themes) as ThemeName[];
