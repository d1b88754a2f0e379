/** Exit codes of the command line. */
export const done = 0;
/** `check` has findings at or above its limit, `format --check` a change, `results` a result that failed. */
export const found = 1;
/** Bad usage, an unreadable file, no match, an internal error. */
export const trouble = 2;

/** Ends a command with a message on standard error and exit code 2. */
export class Trouble extends Error {}

/** Trouble with what was typed: the message is followed by where help is. */
export class BadUsage extends Trouble {}
