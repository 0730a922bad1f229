// Wie eine Zahl bekannt ist: woher sie kommt, wie alt, wie sicher, was sie bedeutet und nach welcher Quelle. Die Quellen sind die von docs/sources.md und docs/rules.md.
import type { Measurand } from '../../contract';
import type { IndexKey } from '../../contract.balance';
import type { know as shape } from '../en/know';
import { inText } from './inText';

const means: Partial<Record<Measurand, string>> = {
  ph: 'Wie sauer das Wasser ist. Er entscheidet, wie viel vom freien Chlor desinfiziert, was das Wasser löst und abscheidet, und was Augen spüren.',
  orp: 'Wie stark das Wasser oxidiert, gegen diese Bezugselektrode. Sie folgt der hypochlorigen Säure auf der eigenen Höhe dieses Beckens; sie ist kein mg/L, und die Zahl keines anderen Beckens ist mit ihr vergleichbar.',
  temperature: 'Des Wassers in der Messzelle oder im Becken. Sie bewegt jedes Gleichgewicht und was Badegäste vertragen.',
  free_chlorine: 'Hypochlorige Säure und Hypochlorit zusammen, und was Cyanursäure hält, als Cl\u2082. Schnell desinfiziert nur der Anteil hypochloriger Säure.',
  total_chlorine: 'Freies und gebundenes Chlor zusammen, als Cl\u2082.',
  combined_chlorine: 'Chlor, gebunden an das, was Badegäste einbringen. Es desinfiziert wenig, und manches davon reizt die Augen und riecht.',
  bromine: 'Alles Brom, das desinfiziert, als Br\u2082.',
  total_alkalinity: 'Was den pH-Wert gegen Säure hält, als CaCO\u2083. Cyanursäure zählt darin mit und wird abgezogen, wo das Gleichgewicht berechnet wird.',
  calcium_hardness: 'Calcium, als CaCO\u2083: was sich abscheiden kann, und was Wasser, dem es fehlt, aus Fugen holt.',
  cyanuric_acid: 'Schützt Chlor vor der Sonne und hält das meiste davon vom Desinfizieren ab.',
  dissolved_solids: 'Alles Gelöste, nach Leitfähigkeit oder Gewicht.',
  conductivity: 'Wie gut das Wasser leitet; sie wächst mit dem Gelösten.',
  sample_flow: 'Ob Wasser an den Sonden vorbeifließt. Ohne das erzählen sie von stehendem Wasser.',
};

const sources: Record<IndexKey, string> = {
  speciated: 'Konstanten der offenen Datenbank von USGS PHREEQC 3.8.9 (phreeqc.dat), veröffentlicht; verglichen mit 200 damit berechneten Wässern.',
  handbook: '10 CRR-NY 6-1.30 mit seinem durchgerechneten Beispiel und seinem Band von \u22120,5 bis +0,5, veröffentlicht; Spa-Regel von Montana, Tabelle 7, für die Konstanten 12,1 und 12,2, veröffentlicht.',
  closed_form: 'P. Roberge, corrosion-doctors.org, veröffentlicht mit durchgerechneten Antworten.',
  ionic_strength: 'In der Art von Standard Methods 2330 B, aus dem Gedächtnis; pK2 und pKs wie in den Datenbanken des USGS.',
  precipitation: '35 Ill. Adm. Code 604.900, veröffentlicht; berechnet mit den Konstanten von phreeqc.dat.',
  saturation_ph: 'Konstanten von phreeqc.dat (USGS), veröffentlicht.',
  ryznar: 'Aus dem Gedächtnis. Gezeigt, nicht danach gehandelt.', puckorius: 'Aus dem Gedächtnis. Gezeigt, nicht danach gehandelt.', larson_skold: 'Aus dem Gedächtnis. Gezeigt, nicht danach gehandelt.',
};

export const know: typeof shape = {
  ask: (of: string) => `Woher wissen wir das? ${of}`, title: 'Woher wissen wir das?',
  parts: { from: 'Woher', age: 'Wie alt', sure: 'Wie sicher', means: 'Was es bedeutet', source: 'Quelle' },
  means,
  probe: {
    from: (name: string, origin: string) => `Gemessen von „${name}“, ${origin}.`, asReceived: 'Gezeigt, wie empfangen.', common: 'Im gemeinsamen Rücklauf des Kreislaufs.',
    corrected: (kind: string, at: string, by: string) => `Korrigiert (${inText(kind)}) seit ${at}, von ${by}.`,
    measured: (at: string) => `Gemessen ${at},`, every: (s: number) => `Erwartet wird alle ${s}\u00a0s einer.`, silent: 'Sie schweigt länger, als sie sollte.', notGood: 'Dieser Messwert ist nicht gut: er wird gezeigt und nicht beurteilt.',
    believed: (v: string, n: number) => `Bestwert des Wassers: ${v} (k = 2), nach ${n === 1 ? '1 Prüfung' : `${n} Prüfungen`}, die neueste`, unjudged: 'Noch keine Prüfung wurde damit verglichen: niemand weiß, wie weit sie danebenliegt.',
    source: 'Zustand nach NAMUR NE 107 (veröffentlicht, aus zweiter Hand). Abweichung und ihre Unsicherheit aus den Prüfungen; Unsicherheiten verbunden nach dem GUM (JCGM 100).',
  },
  basis: { probe: 'mit der Sonde', corrected: 'mit der Sonde, korrigiert', test: 'von Hand' },
  test: {
    from: (method: string) => `Von Hand gemessen, ${method}.`, bound: 'Jenseits des Messbereichs der Methode: eine Schranke, keine Zahl.', sampled: (at: string) => `Probe ${at},`,
    u: (u: string) => `\u00b1 ${u} (k = 2), für diese Methode in üblichen Händen.`, noU: 'Niemand weiß, wie weit es danebenliegen kann.', suspect: 'Zweifelhaft: es steht allein gegen das Übrige oder ist für sich unwahrscheinlich. Wiederholen.',
    source: 'Unsicherheit der Methode: gängige Praxis (docs/sources.md). Ein altes Reagenz oder eine nasse Küvette kommt hinzu.',
    combined: 'Gesamtchlor minus freies Chlor einer Probe.', combinedU: 'Die Unsicherheiten beider Messungen summieren sich darin, darum ist ein kleines nicht von keinem zu unterscheiden.', combinedSource: 'Nach Definition; Unsicherheiten verbunden nach dem GUM (JCGM 100).',
  },
  balance: {
    from: 'Berechnet aus', nothing: 'Noch ist nichts gemessen, woraus es sich berechnen ließe.', oldest: 'Das Älteste davon ist von', k2: 'Erweitert, k = 2.', notActed: 'Gezeigt, nicht danach gehandelt.', sources,
    share: 'Berechnet aus', shareU: 'Er bewegt sich mit dem pH-Wert: ein Zehntel pH macht einige Prozentpunkte.', shareMeans: 'Der Anteil des freien Chlors, der hypochlorige Säure ist und schnell desinfiziert. Er sinkt, wenn der pH-Wert steigt, und weit mehr mit Cyanursäure.',
    shareSource: 'pKs der hypochlorigen Säure nach Morris (1966), aus dem Gedächtnis; stimmt mit 7,54 bei 25\u00a0\u00b0C von O\u2019Brien, Morris und Butler (1974) überein, wie von der US EPA aufgeführt, veröffentlicht.',
    cyanurateSource: 'Chlor und Cyanurat nach O\u2019Brien, Morris und Butler (1974), wie von der US EPA aufgeführt, EPA/600/S-17/165, bei 25\u00a0\u00b0C, veröffentlicht.',
  },
  trust: {
    from: 'Was die Sonden, ihre Signale und die Handmessungen dieses Beckens zusammen sagen, gewichtet danach, wie oft jedes davon irrt.', sure: 'Die Chancen stehen neben der Antwort. Zweifel macht nie sicher: was unsicher ist, bleibt es, bis eine Wiederholung es klärt.',
    means: 'Ein Rat, nie eine Anweisung: es entscheidet, wer am Becken steht. Örtliche Regeln und die Anweisungen der Anlage gehen vor.', source: 'Satz von Bayes über die Erklärungen; was jedes Anzeichen wiegt, ist ein Vorschlag dieses Programms, geprüft an simulierten Anlagen (docs/decisions/0012).',
  },
  plan: {
    from: 'Die neuesten Messungen, Grenzwerte und Wünsche der Anlagendatei, die Produkte zur Hand mit ihrem Gehalt, und das Volumen.', sure: 'Jeder Schritt sagt, wie weit er danebenliegen kann. Nach jedem wird gemessen: was dabei herauskommt, geht vor dem Errechneten.',
    means: 'Ein Vorschlag, nie eine Anweisung: der billigste oder kürzeste Weg in alle Bereiche in sicheren Schritten. Die Etiketten und die Anweisungen der Anlage gehen vor.', source: 'Gleichgewicht mit den Konstanten von phreeqc.dat (USGS, veröffentlicht), der Weg durch lineare Programme (docs/decisions/0008); sichere Schritte und Wartezeiten sind gängige Praxis.',
  },
  dose: {
    from: 'Die neuesten Messungen, das Volumen der Anlagendatei und der Gehalt des Produkts nach Etikett und Alter.', sure: (percent: string) => `\u00b1 ${percent}\u00a0% der Menge, aus Volumen, Gehalt und Messungen zusammen. Eine Nachmessung zeigt, wie es ausging.`,
    means: 'Ein Rat, nie eine Anweisung: Etikett, Sicherheitsdatenblatt und die Anweisungen der Anlage gehen vor.', source: 'Massenbilanz ohne Austausch mit der Luft, Gleichgewichtskonstanten von phreeqc.dat (USGS, veröffentlicht); sichere Schritte und Wartezeiten sind gängige Praxis (docs/doses.md).',
  },
};
