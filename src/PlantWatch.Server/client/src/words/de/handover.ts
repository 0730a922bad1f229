import type { handover as shape } from '../en/handover';

/** Die Seite, die eine Schicht der nächsten gibt. */
export const handover: typeof shape = {
  title: 'Übergabe', lead: 'Was die nächste Schicht wissen muss, wie es jetzt steht. Zusammen lesen, an der Anlage.', last: (h: number) => h === 1 ? 'Die letzte Stunde' : `Die letzten ${h} Stunden`, span: 'Rückblick', hours: (h: number) => h === 1 ? '1 Stunde' : `${h} Stunden`,
  pools: 'Becken', run: 'betrieben:', alarms: 'Anstehende Alarme', noAlarms: 'Kein Alarm steht an.', aside: 'Beiseite: zurückgestellt, außer Betrieb, unterdrückt', noAside: 'Nichts steht beiseite.', until: 'bis',
  jobs: 'Nicht abgeschlossene Arbeiten', noJobs: 'Kein Auftrag ist offen.', due: 'Fällig', noDue: 'Bis morgen um diese Zeit ist keine Prüfung und keine geplante Arbeit fällig.', check: 'Prüfung', overdue: 'überfällig', dueAt: 'fällig',
  happened: 'Was geschah', quiet: 'In dieser Zeit wurde nichts eingetragen.', print: 'Drucken', incidents: 'Offene Vorfälle', kinds: { alarm: 'Alarm', check: 'Prüfung', job: 'Auftrag', pool: 'Becken' },
  tested: (by: string, what: string) => `${what}, von ${by}`,
  since: (from: string | null, to: string, at: string) => `Seit ${from ? `der Übergabe von ${from} an ${to}` : `der Übernahme durch ${to}`}, ${at}`, neverSigned: 'Noch keine Übergabe unterschrieben',
  moves: { new: 'neu', changed: 'geändert', gone: 'vorbei', same: '', none: '' }, nothingMoved: 'Was damals stand, steht noch so.', firstLead: 'Ab der ersten Unterschrift steht hier, was seither neu ist.',
  waits: (from: string) => `${from} hat eine Übergabe geschrieben, die niemand unterschrieben hat`, wrote: (at: string) => `Geschrieben ${at}`,
  leave: 'Wer geht, schreibt', leaveHint: 'Was kein Bildschirm weiß: was versucht wurde, wer angerufen wurde, worauf zu achten ist.', note: 'Was die nächste Schicht wissen muss', leaveName: 'Name: wer geht', saveNote: 'Übergabe schreiben', another: 'Eine andere wartet auf Unterschrift. Sie bleibt als nicht unterschrieben im Betriebsbuch.', wroteIt: 'Geschrieben. Sie wartet auf die Unterschrift der nächsten Schicht.',
  come: 'Wer kommt, unterschreibt', comeHint: 'Die Unterschrift sagt: gelesen, was steht, und übernommen. An der Anlage ändert sie nichts.', without: 'Niemand hat eine Übergabe geschrieben; es geht auch ohne, und das Betriebsbuch sagt es.', comeName: 'Name: wer kommt', remark: 'Ergänzung (kann leer bleiben)', signIt: 'Unterschreiben', signedIt: 'Unterschrieben.', readAgain: 'Neu lesen',
  lines: (n: number) => n === 1 ? 'Die eine Zeile, die unterschrieben wird' : `Die ${n} Zeilen, die unterschrieben werden`, noLines: 'Nichts steht an.', needNote: 'Schreiben, was die nächste Schicht wissen muss.',
  past: 'Frühere Übergaben', noPast: 'Noch keine.', unsigned: 'nie unterschrieben', waiting: 'wartet auf Unterschrift', signedBy: (to: string, at: string) => `unterschrieben von ${to}, ${at}`, noNote: 'ohne Text übernommen', altered: 'Die aufbewahrten Zeilen sind nicht die, die unterschrieben wurden.',
  states: { incident: 'Vorfall', due: 'fällig', overdue: 'überfällig', did_not_help: 'Half nicht' } as Record<string, string>, parts: { unknown: '', pool: 'Becken', alarm: 'Alarm', put_away: 'Beiseite', job: 'Auftrag', task: 'Geplante Arbeit', check: 'Prüfung' },
  sign: 'Name: wer geht; Name: wer kommt; Uhrzeit:',
};
