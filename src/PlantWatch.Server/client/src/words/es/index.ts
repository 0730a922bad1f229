import type { Words } from '..';
import { alarmList, alarmPage, makeSafe } from './alarms';
import { calibrate } from './calibrate';
import { chemicals } from './chemicals';
import { circulation } from './circulation';
import { dose } from './dose';
import { frame } from './frame';
import { exceptions } from './exceptions';
import { filters } from './filters';
import { handover } from './handover';
import { incident } from './incident';
import { jobs } from './jobs';
import { alarmHealth, laboratory } from './laboratory';
import { limits } from './limits';
import { methods } from './methods';
import { instruments } from './instruments';
import { plantRound } from './plantRound';
import { nav } from './nav';
import { boards } from './boards';
import { offline } from './offline';
import { know } from './know';
import { stripTools } from './stripTools';
import { orp } from './orp';
import { plan } from './plan';
import { poolState } from './poolState';
import { probePage } from './probePage';
import { pumpPage } from './pumpPage';
import { reagents } from './reagents';
import { entries } from './record';
import { round } from './round';
import { rulesPage } from './rules';
import { sound } from './sound';
import { telling } from './telling';
import { trust } from './trust';
import { volume } from './volume';
import { water } from './water';
import { whatIf } from './whatIf';
import { whatIfLimits } from './whatIfLimits';

const spanish: Words = {
  ...frame, water, volume, whatIf, dose, plan, incident, limits, methods, orp, circulation, trust, probePage, calibrate, pageNames: nav, alarmList, laboratory, alarmHealth, telling, poolState, filters, whatIfLimits,
  entries, exceptions, jobs, handover, makeSafe, reagents, chemicals, alarmPage, rulesPage, sound, pumpPage, offline, round, plantRound, instruments, boards, know, stripTools,
};

export default spanish;
