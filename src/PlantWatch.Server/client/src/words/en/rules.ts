/** Words of the page of rules. */
export const rulesPage = {
  title: 'Rules', lead: 'Every rule that can raise an alarm, in the words of the project\u2019s own page of rules. Advice is never a command; local code and licensed practice come first.',
  find: 'Find a rule', none: 'No rule has these words.', out: 'Out of service now', nothingOut: 'Nothing is out of service.',
  cause: 'Usual cause', consequence: 'If nothing is done', action: 'What to do', time: 'Time to respond', onDelay: 'Must hold for', offDelay: 'Must be gone for', deadband: 'Deadband',
  suppressed: 'Suppressed', clears: 'Clears', again: 'Speaks again', againAfter: (hours: string) => `after ${hours} h while it stands`, never: 'never', provenance: 'Known from',
  rang: (n: number) => (n === 0 ? 'did not ring in 30 days' : n === 1 ? 'rang once in 30 days' : `rang ${n} times in 30 days`), last: 'last', standing: (n: number) => `${n} standing now`,
  safety: 'About people\u2019s safety: it can neither be shelved nor taken out of service.',
  eachItsOwn: 'It does not leave service: every piece of work has an alarm of its own. Shelve that one, or change the plan.',
  take: 'Take out of service', taking: (rule: string) => `Take out of service: ${rule}`, what: 'For', choose: 'choose \u2026', why: 'Reason', until: 'Until', untilHint: 'On the site\u2019s clock. It returns to service by itself then.',
  caution: 'Until then nobody is called by it. See that somebody looks in its place.', needWhat: 'Choose what it is about.', needUntil: 'Say until when.', past: 'That time is past already.', giveBack: 'Return to service', back: 'Remark',
  outBy: (who: string) => `by ${who}`, outUntil: (at: string) => `until ${at}`, open: 'until a person returns it', nothingHere: 'This plant has nothing that it watches.',
};
