// What was written into the record, by whom and when.
import type { RecordGroup } from '../../contract.record';

export const entries = {
  title: 'What was written down', about: 'Show', span: 'Look back', days: (n: number) => (n === 1 ? '1 day' : `${n} days`), none: 'Nothing was written in this time.', more: 'There is more in this time than is shown: look back less far, or show one kind.',
  plant: 'by itself', later: (at: string) => `written ${at}`,
  groups: {
    all: 'Everything', exceptions: 'Exceptions', tests: 'Tests', doses: 'Doses', jobs: 'Jobs', filters: 'Filter washes', reagents: 'Reagents and instruments', probes: 'Probes', pools: 'Pools and incidents', limits: 'Limits and plant file', chemicals: 'Chemicals and bathers', rounds: 'Plant rounds', handovers: 'Handovers', notes: 'Notes on the strips',
  } as Record<RecordGroup, string>,
};

export const storage = {
  title: 'Room on the disk', waiting: 'It is being measured.', size: 'Size of the record', aDay: 'Grows by a day', inAYear: 'In a year', free: 'Free on its disk', lasts: 'The disk lasts', days: (n: string) => (n === '1' ? '1 day' : `${n} days`), long: 'more than ten years',
  kept: 'Single readings are kept', forEver: 'for ever', gone: (circuit: string, day: string) => `${circuit}: single readings before ${day} were let go; minutes and longer means remain.`,
  little: 'At this pace the disk is full in less than 90 days: make room, or keep single readings for a limited time (PlantWatch:Retention).',
  kb: (n: string) => `${n} kB`, mb: (n: string) => `${n} MB`, gb: (n: string) => `${n} GB`,
  backup: 'Newest nightly backup', noBackup: 'none', measured: (at: string) => `Measured ${at}, reckoned from the last seven days.`,
};
