declare const PROGRAM_VERSION: string;

/** The version of package.json, put in by the build. */
export const version: string = PROGRAM_VERSION;
