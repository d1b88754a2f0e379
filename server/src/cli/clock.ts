/** The one clock of the command line: only a date that is not given is taken from it, and never a number. */
export interface Clock {
  /** The day where the user is, `2026-10-02`. */
  today(): string;
}

export const processClock: Clock = {
  today: () => {
    const now = new Date();
    const two = (n: number): string => String(n).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  },
};
