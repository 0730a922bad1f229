/** Names of the pages in the navigation and of the groups they stand in. */
export const nav = {
  more: 'More', moreTitle: 'More pages',
  groups: { water: 'Water', alarms: 'Alarms and limits', plant: 'Plant', record: 'Record' },
  pages: {
    laboratory: 'Laboratory', reagents: 'Reagents', chemicals: 'Chemicals', limits: 'Limits', rules: 'Rules', exceptions: 'Exceptions', alarmHealth: 'Alarm health', whatIfLimits: 'What if, limits', telling: 'Telling people', jobs: 'Jobs', handover: 'Handover',
  },
};
