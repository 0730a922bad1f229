/** Wait before try number n (from 0): doubles to five seconds, with jitter so that a hundred screens do not knock at once. */
export function wait(n: number, random: () => number = Math.random): number {
  const full = Math.min(5_000, 400 * 2 ** Math.min(n, 8));
  return Math.round(full / 2 + random() * full / 2);
}
