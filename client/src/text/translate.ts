/** Turns a text for people into their language: `vscode.l10n.t`, or a double in tests. `{0}` stands for the first argument. */
export type Translate = (message: string, ...args: (string | number)[]) => string;
