// Circulation and filters of a circuit, and the washing of them.
export const filters = {
  title: 'Circulation and filters', flow: 'Circulation', low: (limit: string) => `low under ${limit}`, isLow: 'low', noFlow: 'not measured',
  across: 'across it', clean: (text: string) => `clean ${text}`, rise: (now: string, due: string) => `risen by ${now}, a wash is due at ${due}`, noPressure: 'Pressure not measured.', noClean: 'clean pressure not known yet',
  washed: 'Washed', by: (name: string) => `by ${name}`, never: 'No wash noted yet.', every: (days: string) => `at the latest every ${days} days`, due: 'wash due',
  turnover: 'Turnover', takes: (hours: string, mean: string) => `${hours} at ${mean}, the mean of the last hour`, design: (hours: string, flow: string) => `designed for ${hours} at ${flow}`, short: 'falls short', noHour: 'no whole hour read yet',
  rate: (speed: string) => `${speed} through the beds`,
  drained: (m3: string) => `${m3} drained`, water: 'Water drained, m\u00b3', usual: (m3: string) => `Left empty, the usual ${m3} counts. It is dilution: fresh water takes its place.`, noUsual: 'Flow of the wash by its minutes, rinse included. It is dilution: fresh water takes its place.',
  needWater: 'Give the water as a number of cubic metres, or leave it empty.',
  emptied: 'Emptied', neverEmptied: 'No emptying noted yet.', emptyDue: 'to be emptied', noteEmptied: 'Note an emptying', emptyRise: (now: string, due: string) => `risen by ${now}, to be emptied at ${due}`,
  emptyHint: 'Stop the pump and shut its valves before the lid is opened, as its maker says; dosing must have stopped first.',
  emptyNoted: (name: string) => `The emptying of ${name} is noted.`,
  begin: 'Begin a backwash', note: 'Note a wash', done: 'It is washed', giveUp: 'End it without a wash', cancel: 'Leave it',
  under: (name: string) => `Being backwashed by ${name}`, until: (time: string) => `ends by itself at ${time}; until then flow, pressure and sample cells call nobody`,
  hint: 'Stop dosing first, keep bathers out, and follow the maker\u2019s instructions and your own rules. PlantWatch turns no valve: it only knows what you tell it.',
  noted: (name: string) => `The wash of ${name} is noted. Its clean pressure is taken from the half hour that follows.`,
  begun: (name: string) => `${name}: backwash begun.`, ended: (name: string) => `${name}: backwash ended.`,
};
