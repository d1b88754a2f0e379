/** A message as a sentence: a capital in front where a word stands there, a full stop behind. */
export function sentence(message: string): string {
  const first = message.charAt(0);
  const body = /[a-z]/.test(first) ? first.toUpperCase() + message.slice(1) : message;
  return /[.?!]$/.test(body) ? body : `${body}.`;
}

/** `a`, `b` or `c`, each as code. */
export function choices(of: readonly string[], joint = 'or'): string {
  const quoted = of.map((word) => `\`${word}\``);
  return quoted.length < 2
    ? quoted.join('')
    : `${quoted.slice(0, -1).join(', ')} ${joint} ${quoted[quoted.length - 1]!}`;
}
