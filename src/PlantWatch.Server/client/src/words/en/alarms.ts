/** Words of the record that the plant was made safe. */
export const makeSafe = {
  open: 'Record what was done', legend: 'What was done', save: 'Record as made safe', first: 'It can be reset once it is recorded that the plant was made safe.',
  bathersOut: 'Bathers are out of the water', pumpsIsolated: 'Both dosing pumps are isolated', circulationHeld: 'The circulation is held until the lines are safe',
  roomLeft: 'Everybody left the room, and nobody went back in before the air was known to be clear', tankDealtWith: 'Whoever is competent dealt with what is in the tank',
  ofTank: { legend: 'What was done at this tank', pumpsIsolated: 'The pump of this tank is isolated' },
  all: 'Only when all three are done is it recorded.', done: (who: string) => `recorded as made safe by ${who}`,
};

/** Words of the alarm list: what asks for something, what is set aside and by whom. */
export const alarmList = {
  asks: 'Asks for something', aside: 'Set aside', nothingAsks: 'Nothing asks for anything now.',
  follow: (n: number) => (n === 1 ? 'and 1 that follows from it' : `and ${n} that follow from it`),
  latched: 'Latched: it stands until it is reset', suppressedBy: (what: string) => `suppressed by design: ${what}`,
  outOfService: (who: string) => `out of service, by ${who}`, outUntil: (at: string) => `until ${at}`, oneShot: 'until it is gone once', again: (n: number) => (n === 1 ? 'told again once' : `told again ${n} times`),
  several: 'Acknowledge several \u2026', severalTitle: 'Acknowledge several with one comment', severalLead: 'Those shown when this was opened. What is critical and what is folded under another is acknowledged by itself.',
  severalComment: 'Comment for all of them', needComment: 'Say what holds for all of them.', needOne: 'Choose at least one.', acknowledgeN: (n: number) => (n === 1 ? 'Acknowledge 1' : `Acknowledge ${n}`),
  notTaken: (n: number) => (n === 1 ? '1 was not taken:' : `${n} were not taken:`), silence: 'Silence this one', out: 'Return to service',
};

/** Words of the page of one alarm. */
export const alarmPage = {
  back: 'All alarms', gone: 'There is no such alarm.', over: 'This alarm is over. What stands here is what the record knows of it.', newer: 'It stands again: go to the newer one',
  kept: 'The server cannot be reached. What stands here is the last that arrived.',
  rule: 'The rule behind it', usual: 'Usual cause', clears: 'Clears', allRules: 'All rules', course: 'How it went', raisedHere: 'raised',
  cause: 'It follows from', consequences: 'What follows from it', history: 'What happened to it', noHistory: 'The record has nothing of it yet.',
  earlier: 'Earlier, in the 30 days before', noEarlier: 'It did not ring in the 30 days before.', onBehalf: 'by itself', since: 'since', line: 'the limit it went over', none: 'nothing of it is a curve',
  legend: '\u25bc what happened to the alarm',
};
