// The words of the interface and its smallest shapes. Times are ISO 8601 in UTC.

export type Iso = string;
export type Measurand =
  | 'none' | 'ph' | 'orp' | 'temperature' | 'conductivity' | 'free_chlorine' | 'total_chlorine' | 'combined_chlorine'
  | 'total_alkalinity' | 'calcium_hardness' | 'cyanuric_acid' | 'dissolved_solids' | 'sample_flow' | 'circulation_flow' | 'filter_pressure' | 'turbidity' | 'bromine';
export type Standing = 'unknown' | 'good' | 'maintenance_required' | 'out_of_specification' | 'check_function' | 'failure';
export type Verdict = 'not_comparable' | 'agrees' | 'probe_drifts' | 'check_suspect' | 'learning';
export type PoolWord = 'unknown' | 'normal' | 'due' | 'attention' | 'alarm' | 'stop';
export type Priority = 'note' | 'low' | 'medium' | 'high' | 'critical';
export type AlarmState =
  | 'normal' | 'unacknowledged' | 'acknowledged' | 'returned_unacknowledged' | 'latched_unacknowledged' | 'latched_acknowledged'
  | 'shelved' | 'suppressed_by_design' | 'out_of_service';
export type AlarmChange =
  | 'none' | 'raised' | 'cleared' | 'acknowledged' | 'shelved' | 'unshelved' | 'suppressed' | 'released' | 'reset' | 'retired' | 'taken_out_of_service' | 'returned_to_service' | 're_alarmed' | 'made_safe';
export type PumpActivity = 'unknown' | 'stopped' | 'running' | 'fault';
export type JobState = 'open' | 'in_hand' | 'done' | 'waiting_for_parts';
export type JobEffect = 'unknown' | 'helped' | 'did_not_help' | 'cannot_tell';
export type TestMethod = 'unknown' | 'photometer' | 'comparator' | 'tablet_count' | 'meter';
export type Censoring = 'none' | 'below' | 'above';
export type CellLook = 'none' | 'pink_flash' | 'purple' | 'cloudy';
export type SamplePoint = 'unknown' | 'pool' | 'cell' | 'balance_tank' | 'outlet';
export type CalibrationKind = 'offset' | 'two_point' | 'panel_adjustment' | 'verification';
export type CalibrationStatus = 'proposed' | 'approved' | 'rejected' | 'adjusted';
export type Tier = 'raw' | 'minute' | 'quarter_hour' | 'hour' | 'day';

export interface Said { code: string; text: string }
export interface FieldSaid extends Said { field: string }
export interface WithU { value: number; u: number }
