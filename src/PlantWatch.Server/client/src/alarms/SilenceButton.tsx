import type { AlarmView } from '../contract';
import { isLoud, silence, soundState } from '../sound/sound';
import { words } from '../words';

/** Silences one alarm that is heard in this browser; it still waits to be acknowledged. */
export function SilenceButton({ alarm }: { alarm: AlarmView }) {
  const heard = soundState.value === 'on' || soundState.value === 'elsewhere';
  return heard && isLoud(alarm) ? <button type="button" data-testid="silence-one" onClick={() => silence(alarm)}>{words.alarmList.silence}</button> : null;
}
