// How a number is known: where it comes from, how old it is, how sure, what it means, and by which source. The sources are those of docs/sources.md and docs/rules.md.
import type { Measurand } from '../../contract';
import type { IndexKey } from '../../contract.balance';

const means: Partial<Record<Measurand, string>> = {
  ph: 'How acid the water is. It decides how much of the free chlorine disinfects, what the water dissolves and deposits, and what eyes feel.',
  orp: 'How strongly the water oxidises, against this reference electrode. It follows the hypochlorous acid at this pool\u2019s own level; it is no mg/L, and no other pool\u2019s number compares with it.',
  temperature: 'Of the water in the sample cell or the pool. It moves every balance and what bathers bear.',
  free_chlorine: 'Hypochlorous acid and hypochlorite together, and what cyanuric acid holds, as Cl\u2082. Only the hypochlorous part disinfects quickly.',
  total_chlorine: 'Free and combined chlorine together, as Cl\u2082.',
  combined_chlorine: 'Chlorine bound to what bathers bring in. It disinfects little, and some of it stings eyes and smells.',
  bromine: 'All bromine that disinfects, as Br\u2082.',
  total_alkalinity: 'What holds the pH against acid, as CaCO\u2083. Cyanuric acid adds to it and is taken off where the balance is worked out.',
  calcium_hardness: 'Calcium, as CaCO\u2083: what can be deposited, and what water that lacks it takes from grout.',
  cyanuric_acid: 'Keeps chlorine from the sun, and holds most of it back from disinfecting.',
  dissolved_solids: 'Everything dissolved, by conductivity or weight.',
  conductivity: 'How well the water conducts; it grows with what is dissolved.',
  sample_flow: 'Whether water runs past the probes. Without it they tell of standing water.',
};

const sources: Record<IndexKey, string> = {
  speciated: 'Constants of the open database of USGS PHREEQC 3.8.9 (phreeqc.dat), published; held against 200 waters worked out with it.',
  handbook: '10 CRR-NY 6-1.30 with its worked example and its band of \u22120.5 to +0.5, published; Montana spa rule, table 7, for the constants 12.1 and 12.2, published.',
  closed_form: 'P. Roberge, corrosion-doctors.org, published with worked answers.',
  ionic_strength: 'In the style of Standard Methods 2330 B, from memory; pK2 and pKs as in the USGS databases.',
  precipitation: '35 Ill. Adm. Code 604.900, published; worked out with the constants of phreeqc.dat.',
  saturation_ph: 'Constants of phreeqc.dat (USGS), published.',
  ryznar: 'From memory. Shown, not acted on.', puckorius: 'From memory. Shown, not acted on.', larson_skold: 'From memory. Shown, not acted on.',
};

export const know = {
  ask: (of: string) => `How do we know? ${of}`, title: 'How do we know?',
  parts: { from: 'Where from', age: 'How old', sure: 'How sure', means: 'What it means', source: 'Source' },
  means,
  probe: {
    from: (name: string, origin: string) => `Read by \u201c${name}\u201d, ${origin}.`, asReceived: 'Shown as it is received.', common: 'In the common return of the circuit.',
    corrected: (kind: string, at: string, by: string) => `Corrected (${kind.toLowerCase()}) since ${at}, by ${by}.`,
    measured: (at: string) => `Measured ${at},`, every: (s: number) => `One is expected every ${s} s.`, silent: 'It is silent for longer than it should be.', notGood: 'This reading is not good: it is shown and not judged.',
    believed: (v: string, n: number) => `The water is believed to be at ${v} (k = 2) by ${n === 1 ? '1 check' : `${n} checks`}, the newest`, unjudged: 'No check has been compared with it yet: nobody knows how far off it is.',
    source: 'Standing by NAMUR NE 107 (published, second hand). Bias and its uncertainty out of the checks; uncertainties joined by the GUM (JCGM 100).',
  },
  basis: { probe: 'by probe', corrected: 'by probe, corrected', test: 'by test' },
  test: {
    from: (method: string) => `Tested by hand, ${method}.`, bound: 'Beyond the end of the method: a bound, no number.', sampled: (at: string) => `Sampled ${at},`,
    u: (u: string) => `\u00b1 ${u} (k = 2), for this method in usual hands.`, noU: 'Nobody knows how far off it may be.', suspect: 'In doubt: it stands alone against the rest, or is unlikely by itself. Repeat it.',
    source: 'Uncertainty of the method: common practice (docs/sources.md). A reagent that is old or a vial that is wet adds to it.',
    combined: 'Total less free chlorine of one sample.', combinedU: 'The doubts of both tests add up in it, so a small one cannot be told from none.', combinedSource: 'By definition; uncertainties joined by the GUM (JCGM 100).',
  },
  balance: {
    from: 'Worked out from', nothing: 'Nothing has been tested yet to work it out from.', oldest: 'The oldest of it is from', k2: 'Expanded, k = 2.', notActed: 'Shown, not acted on.', sources,
    share: 'Worked out from', shareU: 'It moves with the pH: a tenth of a pH is some points of it.', shareMeans: 'The part of the free chlorine that is hypochlorous acid, which disinfects quickly. It falls as the pH rises, and far more with cyanuric acid.',
    shareSource: 'pKa of hypochlorous acid by Morris (1966), from memory; agrees with 7.54 at 25 \u00b0C of O\u2019Brien, Morris and Butler (1974) as listed by US EPA, published.',
    cyanurateSource: 'Chlorine and cyanurate by O\u2019Brien, Morris and Butler (1974) as listed by US EPA, EPA/600/S-17/165, at 25 \u00b0C, published.',
  },
  trust: {
    from: 'What the probes, their signals and the tests of this pool say together, weighed against how often each of them is wrong.', sure: 'The odds stand beside the answer. Doubt never makes safe: what is unsafe stands until a repeat clears it.',
    means: 'Advice, never a command: who stands at the pool decides. Local rules and the plant\u2019s own instructions go first.', source: 'Bayes\u2019 rule over the explanations; what each sign weighs is a proposal of this program, checked against simulated plants (docs/decisions/0012).',
  },
  plan: {
    from: 'The newest tests, the limits and wishes of the plant file, the products at hand with their strength, and the volume.', sure: 'Each step says how far off it may be. After each the water is tested: what comes out goes before what was worked out.',
    means: 'A proposal, never a command: the cheapest or shortest way into every band in safe steps. The labels and the plant\u2019s own instructions go first.', source: 'Equilibrium by the constants of phreeqc.dat (USGS, published), the way by linear programs (docs/decisions/0008); safe steps and waits are common practice.',
  },
  dose: {
    from: 'The newest tests, the volume in the plant file, and the strength of the product by its label and age.', sure: (percent: string) => `\u00b1 ${percent} % of the amount, of volume, strength and tests together. A retest tells how it came out.`,
    means: 'Advice, never a command: the label, the safety data sheet and the plant\u2019s own instructions go first.', source: 'Mass balance in closed water, equilibrium constants of phreeqc.dat (USGS, published); safe steps and waits are common practice (docs/doses.md).',
  },
};
