import { now } from './clock';
import { life } from './connection';

/** Nothing is heard: the connection is lost, or has not come about in three seconds. A page that has just been opened is connecting, not dead. */
export const isDead = (): boolean => life.value.state === 'lost' || (life.value.state === 'connecting' && now.value - life.value.since >= 3_000);
