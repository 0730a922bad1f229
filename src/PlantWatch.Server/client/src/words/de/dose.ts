import type { dose as shape } from '../en/dose';

// Einzelne Zugaben.

export const dose: typeof shape = {
  lead: 'Berechnet eine einzelne Zugabe eines Produkts. Ein Rat, nie eine Anweisung: es entscheiden die Leute der Anlage; örtliche Vorschriften und das Sicherheitsdatenblatt des Produkts gehen vor.',
  ask: 'Wofür', product: 'Produkt', choose: 'Wählen\u2026', noProducts: 'Die Anlagendatei nennt keine Produkte.', noUse: 'Für dieses Produkt berechnet PlantWatch keine Zugaben.',
  target: 'Was bewegt werden soll', raise: (name: string) => `${name} anheben`, lower: (name: string) => `${name} senken`, value: 'Auf', valueOf: (what: string) => `${what} auf`, now: (v: string) => `Gemessen: ${v}`, limits: (low: string, high: string) => `Grenzwerte ${low} bis ${high}`,
  notTested: 'Nicht gemessen', bathers: 'Ist das Wasser frei von Badegästen?', clear: 'Niemand ist drin', notClear: 'Jemand ist drin', byPump: 'Dieses Produkt geht über seine Dosierung ins Wasser.',
  closed: 'Das Becken ist geschlossen und bleibt es bis zur Nachmessung', notNumber: 'Keine Zahl. Ziffern mit einem Komma oder Punkt.',
  waiting: 'Produkt und Ziel wählen.', working: 'Wird berechnet\u2026', unreachable: 'Der Server ist nicht erreichbar, und ohne ihn wird keine Zugabe berechnet. Neuer Versuch folgt von selbst.',
  refusedTitle: 'Keine Zugabe', firstGo: 'Erste Gabe', allAtOnce: 'Alles in einer Gabe', of: (v: string) => `von ${v} insgesamt, mit Nachmessungen`, why: 'Warum nicht alles', also: 'das sind', u: (v: string) => `Die Wirkung ist auf etwa \u00b1 ${v}\u00a0% bekannt`,
  cost: (v: string) => `Kostet etwa ${v}`, strength: 'Gehalt heute', strengthOf: (v: string, chlorine: boolean) => `${v}\u00a0% nach Masse${chlorine ? ', als wirksames Chlor' : ''}`,
  age: (days: number) => days === 0 ? 'bekannt seit heute' : days === 1 ? 'bekannt seit 1 Tag' : `bekannt seit ${days} Tagen`, ageUnknown: 'Alter unbekannt', water: 'Wasser', firstWater: (v: string) => `erreicht zuerst ${v}`,
  retest: 'Nachmessung', retestAt: (hours: string, clock: string) => `nach ${hours}\u00a0h, nicht vor ${clock}`, after: 'Nach der ersten Gabe', nowColumn: 'Jetzt', atOnce: 'Sofort', spent: 'Wenn verbraucht',
  rows: { ph: 'pH-Wert', saturation: 'Sättigungsindex', freeChlorine: 'Freies Chlor', hypochlorousAcid: 'Hypochlorige Säure', alkalinity: 'Säurekapazität', calcium: 'Calciumhärte', cyanurate: 'Cyanursäure', solids: 'Gelöste Stoffe' },
  closedModel: 'Durchmischt und ohne Austausch mit der Luft. Die Nachmessung entscheidet.', side: 'Was es nebenbei bewirkt', how: 'Wo und in welcher Reihenfolge', equipment: 'Schutzausrüstung und Bereitzuhaltendes', precautions: 'Vorsicht', says: 'Zu wissen',
  given: 'Das habe ich zugegeben', givenLead: 'Aufschreiben, was hineinging, auch wenn es nicht das ist, was hier steht.', amount: 'Menge', unitChoice: 'Einheit', when: 'Wann', note: 'Bemerkung', by: 'Wer zugegeben hat', save: 'Ins Betriebsbuch', needBy: 'Wer hat zugegeben?',
  needAmount: 'Wie viel war es? Eine Zahl über 0.', needWhen: 'Wann war es?', needProduct: 'Zuerst das Produkt wählen.', kept: 'Im Betriebsbuch. Die Nachmessung wird damit verglichen.', keptHere: 'Auf diesem Gerät aufbewahrt; geht hinaus, sobald der Server erreichbar ist.',
  waitingHere: 'Auf diesem Gerät, noch nicht im Betriebsbuch', refusedHere: 'Abgelehnt', drop: 'Verwerfen', dropSure: 'Eingaben verwerfen?',
  list: 'Gegebene Zugaben', none: 'Für dieses Becken ist keine Zugabe eingetragen.', noRetest: 'Noch keine Nachmessung', retestFrom: (clock: string) => `Nachmessung aussagekräftig ab ${clock}`, corrected: 'Durch späteren Eintrag berichtigt', corrects: 'Berichtigt einen früheren Eintrag',
  correct: 'Berichtigen', correcting: (what: string) => `Berichtigen: ${what}`, reason: 'Grund der Berichtigung', needReason: 'Warum wird berichtigt?', words: { unknown: '', as_predicted: 'wie vorhergesagt', less: 'weniger als vorhergesagt', more: 'mehr als vorhergesagt', other_way: 'in Gegenrichtung', not_comparable: 'nicht vergleichbar' },
  hold: {
    open: 'In diesem Wasser ist ein Vorfall offen.', wants: (start: string, highest: string) => `Sein Plan will ${start}\u00a0mg/L freies Chlor im ganzen Becken, bevor seine Uhr läuft; bis ${highest}\u00a0mg/L wird hier eine Zugabe berechnet.`,
    notClosed: (names: string) => `Nicht geschlossen: ${names}. Zuerst jedes Becken dieses Wassers schließen.`, toIt: 'Zum Vorfall',
  },
  unfit: 'nicht für dieses Becken', remarks: (n: number) => n === 1 ? '1 Bemerkung' : `${n} Bemerkungen`,
};
