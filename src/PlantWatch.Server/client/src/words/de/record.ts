// Was ins Betriebsbuch geschrieben wurde, von wem und wann.
import type { RecordGroup } from '../../contract.record';
import type { entries as shape } from '../en/record';

export const entries: typeof shape = {
  title: 'Was aufgeschrieben wurde', about: 'Zeigen', span: 'Rückblick', days: (n: number) => (n === 1 ? '1 Tag' : `${n} Tage`), none: 'In dieser Zeit wurde nichts eingetragen.', more: 'In dieser Zeit gibt es mehr, als gezeigt wird: weniger weit zurückblicken oder nur eine Art zeigen.',
  plant: 'von selbst', later: (at: string) => `geschrieben ${at}`,
  groups: {
    all: 'Alles', exceptions: 'Abweichungen', tests: 'Handmessungen', doses: 'Zugaben', jobs: 'Aufträge', filters: 'Filterspülungen', reagents: 'Reagenzien und Messgeräte', probes: 'Sonden', pools: 'Becken und Vorfälle', limits: 'Grenzwerte und Anlagendatei', chemicals: 'Chemikalien und Badegäste', rounds: 'Technikrundgänge', handovers: 'Übergaben', notes: 'Notizen zu den Verläufen',
  } as Record<RecordGroup, string>,
};
