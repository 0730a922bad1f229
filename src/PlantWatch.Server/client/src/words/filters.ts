// Circulation and filters of a circuit, and the washing of them.
export const filters = {
  title: 'Circulation and filters', flow: 'Circulation', low: (limit: string) => `low under ${limit}`, isLow: 'low', noFlow: 'not measured',
  across: 'across it', clean: (text: string) => `clean ${text}`, rise: (now: string, due: string) => `risen by ${now}, a wash is due at ${due}`, noPressure: 'Pressure not measured.', noClean: 'clean pressure not known yet',
  washed: 'Washed', by: (name: string) => `by ${name}`, never: 'No wash noted yet.', every: (days: string) => `at the latest every ${days} days`, due: 'wash due',
  begin: 'Begin a backwash', note: 'Note a wash', done: 'It is washed', giveUp: 'End it without a wash', cancel: 'Leave it',
  under: (name: string) => `Being backwashed by ${name}`, until: (time: string) => `ends by itself at ${time}; until then flow, pressure and sample cells call nobody`,
  hint: 'Stop dosing first, keep bathers out, and follow the maker\u2019s instructions and your own rules. PlantWatch turns no valve: it only knows what you tell it.',
  noted: (name: string) => `The wash of ${name} is noted. Its clean pressure is taken from the half hour that follows.`,
  begun: (name: string) => `${name}: backwash begun.`, ended: (name: string) => `${name}: backwash ended.`,
};
