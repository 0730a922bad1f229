import type { Measurand, TestMethod } from '../contract';

// How a test is made, step by step: keys of words, in the order of the hands. The steps are common practice; where the
// instructions of the kit say otherwise they hold, and the page says so.

export type Step =
  | 'rinse' | 'fill' | 'dry' | 'zero' | 'reagent' | 'crush' | 'lid_on' | 'align' | 'read' | 'against_light' | 'between' | 'meter_rinse' | 'meter_in' | 'meter_still'
  | 'same_cell' | 'stand' | 'count_sample' | 'count_one' | 'count_turn' | 'cya_mix' | 'cya_mark' | 'thermometer';
export type Trap = 'first_read' | 'wet_vial' | 'orientation' | 'phenol_not_dpd' | 'only_after_first' | 'bleaching' | 'residue' | 'cold_reagent' | 'count_half' | 'meter_buffer' | 'bubbles';

export interface Guide {
  steps: Step[];
  /** What spoils any test of this kind: it stands with the steps and is folded away with them. */
  care: Trap[];
  /** What leads this very test astray: always in sight. */
  traps: Trap[];
  /** Usual standing time in seconds before reading; null where there is nothing to wait for. The kit's own instructions hold. */
  stand: number | null;
  /** Seconds within which to read after that; null where the colour keeps. */
  window: number | null;
}

const cell: Step[] = ['rinse', 'fill', 'dry'];
const tablet: Step[] = ['reagent', 'crush', 'lid_on'];

const photometer = (more: Step[] = [], first: Step[] = [...cell, 'zero']): Step[] => [...first, ...tablet, ...more, 'align', 'read'];
const comparator = (more: Step[] = []): Step[] => [...cell, ...tablet, ...more, 'against_light', 'between'];

/** DPD 1 is read at once: within a minute combined chlorine adds little (colorimeter manuals, as Core/Chemistry/Methods/Dpd has it). Total chlorine stands two minutes (common practice). */
const once = 60, total = 120;

export function guideOf(m: Measurand, method: TestMethod): Guide {
  if (m === 'temperature') return { steps: ['thermometer', 'meter_still'], care: [], traps: [], stand: null, window: null };
  if (method === 'meter') return { steps: ['meter_rinse', 'meter_in', 'meter_still'], care: [], traps: m === 'ph' ? ['meter_buffer'] : ['bubbles'], stand: null, window: null };
  if (method === 'tablet_count' && (m === 'total_alkalinity' || m === 'calcium_hardness'))
    return { steps: ['count_sample', 'count_one', 'count_turn'], care: [], traps: ['count_half'], stand: null, window: null };
  const by = method === 'comparator' ? comparator : photometer;
  const care: Trap[] = method === 'comparator' ? ['wet_vial'] : ['wet_vial', 'orientation'];
  switch (m) {
    case 'free_chlorine': return { steps: by(), care: [...care, 'residue'], traps: ['first_read', 'bleaching'], stand: 0, window: once };
    case 'bromine': return { steps: by(), care: [...care, 'residue'], traps: ['bleaching'], stand: 0, window: once };
    case 'total_chlorine': return { steps: method === 'comparator' ? ['same_cell', ...tablet, 'stand', 'against_light', 'between'] : ['same_cell', ...tablet, 'stand', 'align', 'read'], care, traps: ['only_after_first'], stand: total, window: once };
    case 'ph': return { steps: by(), care, traps: ['phenol_not_dpd'], stand: null, window: null };
    case 'cyanuric_acid': return method === 'tablet_count' ? { steps: ['rinse', 'cya_mix', 'stand', 'cya_mark'], care: [], traps: ['cold_reagent'], stand: 120, window: null } : { steps: by(['stand']), care, traps: ['cold_reagent'], stand: 120, window: null };
    case 'calcium_hardness': return { steps: by(['stand']), care, traps: [], stand: 120, window: null };
    default: return { steps: by(['stand']), care, traps: [], stand: 60, window: null };
  }
}

/** Water that air is blown through: it drives off carbon dioxide, so a sample taken with the air on reads a pH that the pool has not (common practice). */
export const hasAir = (kind: string) => kind === 'spa' || kind === 'therapy' || kind === 'leisure';
