// Chemikalien: was da ist, wie lange es reicht, was kam und was es kostete.
import type { StockAct, StockUnit } from '../../contract.stock';
import type { chemicals as shape } from '../en/chemicals';

const days = (a: string) => (a === '1' ? '1 Tag' : `${a} Tage`);

export const chemicals: typeof shape = {
  title: 'Chemikalien', none: 'Die Anlagendatei nennt keine Produkte (docs/plant-file.md, products).',
  units: { unknown: '', litre: 'L', kilogram: 'kg' } as Record<StockUnit, string>,
  acts: { unknown: '', delivered: 'Geliefert', refilled: 'Nachgefüllt', counted: 'Gezählt' } as Record<StockAct, string>,
  lasts: (a: string, b: string) => (a !== b ? `reicht ${a} bis ${days(b)}` : a === '0' ? 'reicht weniger als einen Tag' : `reicht ${days(a)}`), lastsLonger: (a: string) => (a === '0' ? 'reicht vielleicht weniger als einen Tag' : `reicht mindestens ${days(a)}`), overYear: 'reicht länger als ein Jahr', overYearShort: 'ein Jahr',
  lastsHint: (n: number, weekday: boolean) => `Trifft in vier von fünf Fällen; aus ${n} Verbrauchstagen${weekday ? ', nach Wochentagen getrennt' : ''}.`, usual: (a: string) => (a === '0' ? 'weniger als ein Tag bei üblichem Verbrauch' : `${days(a)} bei üblichem Verbrauch`),
  empty: 'aufgebraucht', perDay: (a: string) => `${a} am Tag`, use: 'Verbrauch', store: 'Lager', storeNever: 'nie gezählt', storeBelow: 'Das Buch zeigt weniger als null: es wurde mehr entnommen als aufgeschrieben. Lager zählen.',
  tankOf: (name: string) => `Behälter von ${name}`, noLevel: 'kein Füllstand, nach dem Buch nie gefüllt', strength: (p: string) => `heute ${p}\u00a0%`, batch: (b: string) => `Charge ${b}`, plan: (p: string) => `${p}\u00a0% laut Anlagendatei`,
  order: 'jetzt bestellen', orderHint: (a: string) => `Eine Bestellung dauert ${days(a)}.`, wrong: 'falsches Produkt', nobody: 'Gefüllt, und niemand hat aufgeschrieben, womit:',
  cost: (days: number) => `Kosten ${days === 1 ? 'des letzten Tages' : `der letzten ${days} Tage`}`, noPrice: 'kein Preis bekannt', unpriced: (a: string) => `Ohne Preis und nicht enthalten: ${a}.`,
  perBather: 'Je Badegast', perCubicMetre: 'Je m\u00b3 Wasser und Tag', noBathers: 'keine Badegäste gezählt', price: (a: string) => `${a} je Einheit`,
  bare: 'Nie gezählt', bareHint: 'Hiervon hat noch niemand etwas aufgeschrieben. Mit einer Zählung des Bestands beginnen.',
  plot: (name: string) => `${name}: Verbrauch je Tag`, plotTable: 'Als Tabelle', day: 'Tag', amount: 'Menge', costColumn: 'Kosten', part: 'teilweise bekannt', noUse: 'Noch ist kein Verbrauch bekannt: er beginnt mit einem Füllstand, der Leistung einer Pumpe oder einer aufgeschriebenen Zugabe.',
  tooClose: 'Zu nah beieinander gelagert', months: 'Verbrauch und Kosten je Monat', month: 'Monat', product: 'Produkt', noMonths: 'Noch nichts verbraucht.', soFar: 'bisher', total: 'Summe',
  write: 'Aufschreiben', open: { delivered: 'Lieferung', refilled: 'Nachfüllung', counted: 'Zählung', bathers: 'Badegäste' },
  heads: { unknown: '', delivered: 'Lieferung', refilled: 'Vom Lager in einen Behälter', counted: 'Zählung' } as Record<StockAct, string>,
  aloud: 'Zu zweit. Etikett und Namen am Behälter laut lesen und vergleichen, bevor etwas angeschlossen wird. Säure in Hypochlorit ergibt Chlorgas.',
  countHint: 'Was wirklich da ist. Das Buch wird um die Differenz berichtigt; nichts davor wird geändert.',
  productLabel: 'Produkt, laut Etikett', where: 'Wohin', whereCounted: 'Wo gezählt', inStore: 'Ins Lager', ofStore: 'Das Lager', tankFor: (name: string, product: string) => `Behälter von ${name} (für ${product})`,
  amountLabel: (unit: string) => `Menge, ${unit}`, containers: 'Gebinde', strengthLabel: 'Gehalt laut Etikett, %', batchLabel: 'Charge', madeOn: 'Hergestellt am', priceLabel: 'Preis insgesamt', more: 'Etikett und Preis', when: 'Wann',
  received: 'Angenommen von', filled: 'Gefüllt von', counted: 'Gezählt von', checked: 'Etikett und Behälter gelesen von', checkedHint: 'Eine andere Person.', note: 'Bemerkung', save: 'Aufschreiben', cancel: 'Nicht eintragen',
  stop: (product: string, tank: string, holds: string) => `STOPP. ${product} gehört nicht in den Behälter von ${tank}: dieser ist für ${holds}. Nichts anschließen. Ist noch nichts hineingelaufen, den richtigen Behälter wählen.`,
  wentIn: 'Es ist hineingelaufen. Vermerken und Alarm auslösen', wentInNeed: 'Den richtigen Behälter wählen oder angeben, dass es hineingelaufen ist.', wentInFirst: 'Zuerst den Raum verlassen. Alle warnen, den Rettungsdienst nach örtlichen Regeln rufen, nur von außen lüften, die Pumpe nicht starten. Aufschreiben geht von draußen.',
  needProduct: 'Produkt nach dem Etikett wählen.', needWhere: 'Wählen, wohin es geht.', needAmount: 'Eine Zahl, wie viel.', needNumber: 'Eine Zahl.', needWhole: 'Eine ganze Zahl.', needDay: 'Ein Tag.', needTime: 'Datum und Uhrzeit angeben.', needChecked: 'Angeben, wer Etikett und Behälter mitgelesen hat.', needOther: 'Eine andere Person als die, die angenommen hat.',
  kept: { unknown: '', delivered: 'Die Lieferung ist aufgeschrieben.', refilled: 'Die Nachfüllung ist aufgeschrieben.', counted: 'Die Zählung ist aufgeschrieben.' } as Record<StockAct, string>,
  moves: 'Lieferungen, Nachfüllungen, Zählungen', noMoves: 'Noch nichts aufgeschrieben. Mit einer Zählung des Bestands beginnen.', into: (place: string) => `in den Behälter von ${place}`, intoStore: 'ins Lager', inTank: (place: string) => `im Behälter von ${place}`, inStoreCount: 'im Lager',
  book: (a: string) => `das Buch sagte ${a}`, two: (a: string, b: string) => (b ? `${a}, gelesen mit ${b}` : a), corrected: 'durch eine spätere Zeile berichtigt', correction: (why: string) => `ersetzt eine frühere Zeile: ${why}`, containersSaid: (n: number) => (n === 1 ? '1 Gebinde' : `${n} Gebinde`),
  bathersHead: 'Badegäste eines Tages', bathersHint: 'Von der Kasse oder der Zählung am Eingang. Eine spätere Zeile für denselben Tag ersetzt diese.', pool: 'Becken', number: 'Wie viele', saidBy: 'Angegeben von', bathersKept: (n: number, pool: string) => (n === 1 ? `1 Badegast in ${pool} ist aufgeschrieben.` : `${n} Badegäste in ${pool} sind aufgeschrieben.`), bathersList: 'Badegäste', bathersNone: 'Noch kein Tag gezählt.',
  handover: 'Chemikalien, die zur Neige gehen', handoverNone: 'Nichts geht binnen einer Woche zur Neige.', handoverLeft: (a: string) => (a === '0' ? 'kann binnen eines Tages aufgebraucht sein' : a === '1' ? 'kann in 1 Tag aufgebraucht sein' : `kann in ${a} Tagen aufgebraucht sein`),
};
