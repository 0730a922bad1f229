// Was ins Betriebsbuch geschrieben wurde, von wem und wann.
import type { RecordGroup } from '../../contract.record';
import type { entries as shape, storage as storageShape } from '../en/record';

export const entries: typeof shape = {
  title: 'Was aufgeschrieben wurde', about: 'Zeigen', span: 'Rückblick', days: (n: number) => (n === 1 ? '1 Tag' : `${n} Tage`), none: 'In dieser Zeit wurde nichts eingetragen.', more: 'In dieser Zeit gibt es mehr, als gezeigt wird: weniger weit zurückblicken oder nur eine Art zeigen.',
  plant: 'von selbst', later: (at: string) => `geschrieben ${at}`,
  groups: {
    all: 'Alles', exceptions: 'Abweichungen', tests: 'Handmessungen', doses: 'Zugaben', jobs: 'Aufträge', filters: 'Filterspülungen', reagents: 'Reagenzien und Messgeräte', probes: 'Sonden', pools: 'Becken und Vorfälle', limits: 'Grenzwerte und Anlagendatei', chemicals: 'Chemikalien und Badegäste', rounds: 'Technikrundgänge', handovers: 'Übergaben', notes: 'Notizen zu den Verläufen',
  } as Record<RecordGroup, string>,
};

export const storage: typeof storageShape = {
  title: 'Platz auf der Festplatte', waiting: 'Es wird gerade gemessen.', size: 'Größe des Betriebsbuchs', aDay: 'Wächst am Tag um', inAYear: 'In einem Jahr', free: 'Frei auf der Festplatte', lasts: 'Die Festplatte reicht', days: (n: string) => (n === '1' ? '1 Tag' : `${n} Tage`), long: 'mehr als zehn Jahre',
  kept: 'Einzelne Messwerte bleiben', forEver: 'für immer', gone: (circuit: string, day: string) => `${circuit}: Einzelne Messwerte vor dem ${day} wurden entfernt; Minuten und längere Mittel bleiben.`,
  little: 'Bei diesem Wachstum ist die Festplatte in weniger als 90 Tagen voll: Platz schaffen oder einzelne Messwerte nur begrenzt aufbewahren (PlantWatch:Retention).',
  kb: (n: string) => `${n}\u00a0kB`, mb: (n: string) => `${n}\u00a0MB`, gb: (n: string) => `${n}\u00a0GB`,
  backup: 'Neueste nächtliche Sicherung', noBackup: 'keine', measured: (at: string) => `Gemessen ${at}, berechnet aus den letzten sieben Tagen.`,
};
