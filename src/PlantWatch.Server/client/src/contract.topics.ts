import type { Iso, Measurand } from './contract';

// What is heard at the broker, as the server's TopicApi.cs writes it.
export interface HeardValue { record: string | null; unit: string | null; value: number | null; takenBy: string | null; guess: Measurand }
export interface HeardTopicView {
  topic: string; lastAt: Iso; count: number; everySeconds: number | null; retained: boolean; payload: string; bytes: number; format: 'number' | 'senml_json' | 'senml_cbor' | null;
  values: HeardValue[]; trouble: string | null;
}
export interface HeardView { broker: string; address: string; topics: HeardTopicView[]; forgotten: number }


// How the MQTT side stands, as the server's BrokerApi.cs writes it.
export interface BrokerTroubleView { what: string; now: boolean; text: string; todo: string; since: Iso; topics: string[] }
export interface SilentTopicView { topic: string; of: string; since: Iso }
export interface BrokerView { kind: 'embedded' | 'external'; well: boolean; text: string; since: Iso | null; encrypted: boolean; troubles: BrokerTroubleView[]; silent: SilentTopicView[] }
