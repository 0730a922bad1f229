// Contamination incidents.

export const incident = {
  lead: 'Something came into the water? Everybody out first. Then declare it here: the pool counts as closed until a person closes the incident.',
  advice: 'A plan to work by, not an order. Local code and the health authority come first.',
  what: 'What happened?', kinds: {
    unknown: '', formed_stool: 'Formed stool', diarrhoeal_stool: 'Loose or diarrhoeal stool', vomit: 'Vomit', blood: 'Blood', deck_spill: 'Body fluid on the deck',
  },
  authority: 'Whose figures?', authorityHint: 'Authorities differ. Take the one that your local code names; they are never mixed.',
  when: 'When?', justNow: 'Just now', earlier: 'Earlier', whenHint: 'Tests from then on count.', note: 'Anything else', declare: 'Declare and close the pool', declareDeck: 'Declare',
  needKind: 'Say what happened', needAuthority: 'Choose whose figures', needWhen: 'Say when',
  closedTo: 'Closed to bathers', deckOpen: 'Keep people off the place', declaredBy: (who: string, at: string) => `declared by ${who}, ${at}`, happened: (at: string) => `happened ${at}`,
  word: {
    refused: 'No countdown', not_started: 'Not started', running: 'Counting', paused: 'Paused', test_missing: 'Held: test missing', reached: 'Hold reached',
  },
  left: 'Not proven yet', leftAt: (residual: string) => `at ${residual} mg/L`, done: 'Proven by tests', of: (done: string, all: string) => `${done} of ${all}`,
  contact: 'mg\u00b7min/L', minutes: 'min', hours: 'h', nextTest: 'Next test by', inTime: (span: string) => `in ${span}`, late: (span: string) => `${span} late`,
  earliest: 'Reached at the earliest', earliestHint: 'if a test then finds the residual still there. No promise.', started: 'Started', reachedAt: 'Proven at',
  enter: 'Enter a test', onlyTests: 'Only tests by hand move this clock, never a probe.',
  tests: 'Tests since it happened', noTests: 'No test yet.', table: { at: 'Sampled', place: 'Place', residual: 'Cl mg/L', ph: 'pH', celsius: '\u00b0C', gained: 'Adds' },
  lowest: 'Lowest point', counts: 'counts', places: { Pool: 'Pool', Cell: 'Sample cell', BalanceTank: 'Balance tank', Unknown: 'Place not stated', Outlet: 'Lowest point' } as Record<string, string>,
  strip: 'Residual over time', stripSaid: (n: number, share: string) => `${n} tests that count; ${share} per cent of the hold proven. The filled part is what counts.`,
  stripKey: '\u25c6 counts \u00b7 \u25c7 does not \u00b7 filled: counted \u00b7 \u2504 least residual',
  steps: 'What to do', byFigures: 'Counted by', others: 'What other authorities ask', allRows: 'All rows of this authority',
  row: {
    dilute: (c: string) => `Cyanuric acid above ${c}: dilute first, no countdown`, none: 'Nothing is held in the pool', hold: (level: string, time: string) => `${level} mg/L for ${time}`,
    contact: (ct: string) => `Contact time ${ct} mg\u00b7min/L`, water: (ph: string, celsius: string) => `pH ${ph}, ${celsius} \u00b0C or warmer`, upTo: (v: string) => `up to ${v}`,
    cyanurate: (range: string) => `cyanuric acid ${range} mg/L`, without: 'no cyanuric acid', start: (v: string) => `starts at ${v} mg/L through the pool`, notCounted: 'shown only, not counted by',
  },
  notes: 'Notes', noNotes: 'Nothing noted yet.', addNote: 'Note', noteWhat: 'What was done or seen', needText: 'Say what was done or seen',
  close: 'Close the incident', closeLead: 'Closing lets the pool be opened. PlantWatch decides nothing: you do. Look at these first.', why: 'Why it may be closed', needWhy: 'Say why',
  closeNow: 'Close it', notReached: 'The hold is not proven by tests. Close it now only if there was no incident, or the authority says so.',
  past: 'Closed incidents', noPast: 'None.', closedBy: (who: string, at: string) => `closed by ${who}, ${at}`, poolGone: 'its pool left the plant file', share: (v: string) => `${v} % of the hold proven`,
  more: 'Declare another', eachPool: 'Every pool of this water is held and tested by itself',
  inSharedWater: (name: string) => `This pool shares its water with ${name}, where an incident is open: it is closed too, and tested by itself.`, toIt: 'To the incident',
};
