import type { rulesPage as shape } from '../en/rules';

/** Wörter der Seite der Regeln. */
export const rulesPage: typeof shape = {
  title: 'Regeln', lead: 'Jede Regel, die einen Alarm auslösen kann, in den Worten der projekteigenen Regelseite. Ein Rat ist nie eine Anweisung; örtliche Vorschriften und zugelassene Fachleute gehen vor.',
  find: 'Regel suchen', none: 'Keine Regel enthält diese Wörter.', out: 'Jetzt außer Betrieb', nothingOut: 'Nichts ist außer Betrieb.',
  cause: 'Übliche Ursache', consequence: 'Wenn nichts geschieht', action: 'Was zu tun ist', time: 'Zeit zum Handeln', onDelay: 'Muss bestehen für', offDelay: 'Muss vorbei sein für', deadband: 'Totband',
  suppressed: 'Unterdrückt', clears: 'Geht', again: 'Meldet erneut', againAfter: (hours: string) => `nach ${hours}\u00a0h, solange er ansteht`, never: 'nie', provenance: 'Bekannt aus',
  rang: (n: number) => (n === 0 ? 'kam in 30 Tagen nicht' : n === 1 ? 'kam in 30 Tagen einmal' : `kam in 30 Tagen ${n}-mal`), last: 'zuletzt', standing: (n: number) => n === 1 ? '1 steht jetzt an' : `${n} stehen jetzt an`,
  safety: 'Betrifft die Sicherheit von Menschen: lässt sich weder zurückstellen noch außer Betrieb nehmen.',
  eachItsOwn: 'Sie geht nicht außer Betrieb: jede Arbeit hat ihren eigenen Alarm. Diesen zurückstellen oder den Plan ändern.',
  take: 'Außer Betrieb nehmen', taking: (rule: string) => `Außer Betrieb nehmen: ${rule}`, what: 'Für', choose: 'wählen \u2026', why: 'Grund', until: 'Bis', untilHint: 'Nach der Uhr der Anlage. Danach geht sie von selbst wieder in Betrieb.',
  caution: 'Bis dahin ruft sie niemanden. Dafür sorgen, dass an ihrer Stelle jemand nachsieht.', needWhat: 'Wählen, worum es geht.', needUntil: 'Angeben, bis wann.', past: 'Diese Zeit ist schon vorbei.', giveBack: 'Wieder in Betrieb', back: 'Bemerkung',
  outBy: (who: string) => `durch ${who}`, outUntil: (at: string) => `bis ${at}`, open: 'bis eine Person sie wieder in Betrieb nimmt', nothingHere: 'Diese Anlage hat nichts, was sie überwacht.',
};
