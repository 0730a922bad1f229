/** Words of the record that the plant was made safe. */
export const makeSafe = {
  open: 'Record what was done', legend: 'What was done', save: 'Record as made safe', first: 'It can be reset once it is recorded that the plant was made safe.',
  bathersOut: 'Bathers are out of the water', pumpsIsolated: 'Both dosing pumps are isolated', circulationHeld: 'The circulation is held until the lines are safe',
  all: 'Only when all three are done is it recorded.', done: (who: string) => `recorded as made safe by ${who}`,
};

/** Words of the alarm list: what asks for something, what is set aside and by whom. */
export const alarmList = {
  asks: 'Asks for something', aside: 'Set aside', nothingAsks: 'Nothing asks for anything now.',
  follow: (n: number) => (n === 1 ? 'and 1 that follows from it' : `and ${n} that follow from it`),
  latched: 'Latched: it stands until it is reset', suppressedBy: (what: string) => `suppressed by design: ${what}`,
  outOfService: (who: string) => `out of service, by ${who}`, oneShot: 'until it is gone once', again: (n: number) => (n === 1 ? 'told again once' : `told again ${n} times`),
};
