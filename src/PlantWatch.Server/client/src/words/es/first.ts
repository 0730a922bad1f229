import type { FirstWords } from '..';
import { calibrate } from './calibrate';
import { frame } from './frame';
import { limits } from './limits';
import { nav } from './nav';
import { offline } from './offline';
import { know } from './know';
import { poolState } from './poolState';
import { reagents } from './reagents';
import { round } from './round';
import { sound } from './sound';
import { water } from './water';

const words: FirstWords = {
  ...frame, water, limits, calibrate, pageNames: nav, poolState, reagents, sound, offline, round, know,
};

export default words;
