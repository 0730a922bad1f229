// What was written into the record, by whom and when.
import type { RecordGroup } from '../../contract.record';

export const entries = {
  title: 'What was written down', about: 'Show', span: 'Look back', days: (n: number) => (n === 1 ? '1 day' : `${n} days`), none: 'Nothing was written in this time.', more: 'There is more in this time than is shown: look back less far, or show one kind.',
  plant: 'by itself', later: (at: string) => `written ${at}`,
  groups: {
    all: 'Everything', exceptions: 'Exceptions', tests: 'Tests', doses: 'Doses', jobs: 'Jobs', filters: 'Filter washes', reagents: 'Reagents and instruments', probes: 'Probes', pools: 'Pools and incidents', limits: 'Limits and plant file', chemicals: 'Chemicals and bathers', rounds: 'Plant rounds', handovers: 'Handovers', notes: 'Notes on the strips',
  } as Record<RecordGroup, string>,
};
