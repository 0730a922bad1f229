import { calibrate } from './calibrate';
import { frame } from './frame';
import { know } from './know';
import { limits } from './limits';
import { nav } from './nav';
import { offline } from './offline';
import { poolState } from './poolState';
import { reagents } from './reagents';
import { round } from './round';
import { sound } from './sound';
import { water } from './water';

/** What is said before any page is asked for: the frame, the overview, and what stands on every page. */
const words = {
  ...frame, water, limits, calibrate, pageNames: nav, poolState, reagents, sound, offline, round, know,
};

export default words;
