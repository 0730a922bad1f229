import type { PlantRoundAnswer, PlantRoundRequest } from '../contract.plantRound';
import { makeOutbox } from './make';

export const { box: rounds, kept: keptRounds, outcomes: roundOutcomes, flush: flushRounds, start: startRounds } =
  makeOutbox<PlantRoundRequest, PlantRoundAnswer>('plantwatch.rounds.', '/plant-rounds', answer => answer.id);
