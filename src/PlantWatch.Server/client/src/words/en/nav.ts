/** Names of the pages in the navigation and of the groups they stand in. */
export const nav = {
  habits: {
    title: 'On this device', language: 'Language', asBrowser: (name: string) => `As the browser (${name})`, units: 'Units', asSite: 'As the plant', metric: 'Metric', us: 'US', imperial: 'Imperial',
    hint: 'Figures are kept in SI; gallons and pounds only stand beside them. Commas and points are both taken where you type a number.',
  },
  more: 'More', moreTitle: 'More pages',
  groups: { water: 'Water', alarms: 'Alarms and limits', plant: 'Plant', record: 'Record' },
  pages: {
    plantRound: 'Plant round', instruments: 'Instruments', round: 'Round', laboratory: 'Laboratory', reagents: 'Reagents', chemicals: 'Chemicals', limits: 'Limits', rules: 'Rules', exceptions: 'Exceptions', alarmHealth: 'Alarm health', whatIfLimits: 'What if, limits', telling: 'Telling people', jobs: 'Jobs', handover: 'Handover', paper: 'Sheets', boards: 'Boards',
    plantFile: 'Settings of the plant',
  },
};
