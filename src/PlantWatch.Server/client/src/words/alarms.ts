/** Words of the alarm list: what asks for something, what is set aside and by whom. */
export const alarmList = {
  asks: 'Asks for something', aside: 'Set aside', nothingAsks: 'Nothing asks for anything now.',
  follow: (n: number) => (n === 1 ? 'and 1 that follows from it' : `and ${n} that follow from it`),
  latched: 'Latched: it stands until it is reset', suppressedBy: (what: string) => `suppressed by design: ${what}`,
  outOfService: (who: string) => `out of service, by ${who}`, oneShot: 'until it is gone once', again: (n: number) => (n === 1 ? 'told again once' : `told again ${n} times`),
};
